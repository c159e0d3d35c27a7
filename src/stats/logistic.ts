/**
 * Chance of a yes against a number: p = 1 / (1 + exp(-(intercept + slope x))), by greatest likelihood. Newton's steps,
 * which here are those of iteratively reweighted least squares (McCullagh & Nelder 1989, Generalized Linear Models, 2.5);
 * standard errors from the inverse of the information.
 */
import { inverseOf, times } from './inverse';
import { meanOf } from './intervals';

export interface Trial {
  readonly x: number;
  readonly yes: boolean;
}

export interface Logistic {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptError: number;
  readonly slopeError: number;
  /** Of the errors of the two: the variance at x is interceptError^2 + 2 x covariance + x^2 slopeError^2. */
  readonly covariance: number;
  readonly logLikelihood: number;
}

/**
 * Why there is no finite fit (Albert & Anderson 1984, Biometrika 71: 1-10).
 * one-answer: only yes, or only no. one-number: x never varies. separated: some x parts all yes from all no.
 */
export type NoLogistic = 'one-answer' | 'one-number' | 'separated';

/** In units of x scaled to mean 0 and spread 1. */
const SETTLED = 1e-12;
const MOST_STEPS = 100;

/** Greatest and least in one pass: a spread call of Math.max runs out of stack on a long list. */
function range(xs: readonly number[]): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const x of xs) {
    low = Math.min(low, x);
    high = Math.max(high, x);
  }
  return [low, high];
}

function whyNone(trials: readonly Trial[]): NoLogistic | null {
  const [lowYes, highYes] = range(trials.filter(({ yes }) => yes).map(({ x }) => x));
  const [lowNo, highNo] = range(trials.filter(({ yes }) => !yes).map(({ x }) => x));
  if (lowYes > highYes || lowNo > highNo) return 'one-answer';
  if (Math.min(lowYes, lowNo) === Math.max(highYes, highNo)) return 'one-number';
  return lowYes < highNo && lowNo < highYes ? null : 'separated';
}

/** log(1 + exp(z)) without overflow. */
function softPlus(z: number): number {
  return Math.max(z, 0) + Math.log1p(Math.exp(-Math.abs(z)));
}

function logLikelihood(trials: readonly Trial[], intercept: number, slope: number): number {
  return trials.reduce((sum, { x, yes }) => {
    const z = intercept + slope * x;
    return sum - softPlus(yes ? -z : z);
  }, 0);
}

function scoreAndInformation(trials: readonly Trial[], intercept: number, slope: number) {
  let [score0, score1, info00, info01, info11] = [0, 0, 0, 0, 0];
  for (const { x, yes } of trials) {
    const p = 1 / (1 + Math.exp(-(intercept + slope * x)));
    const off = (yes ? 1 : 0) - p;
    const weight = p * (1 - p);
    score0 += off;
    score1 += off * x;
    info00 += weight;
    info01 += weight * x;
    info11 += weight * x * x;
  }
  return {
    score: [score0, score1],
    information: [
      [info00, info01],
      [info01, info11],
    ],
  };
}

/** One number per trial; any order. */
export function logistic(trials: readonly Trial[]): Logistic | NoLogistic {
  const why = whyNone(trials);
  if (why !== null) return why;
  const centre = meanOf(trials.map(({ x }) => x)).mean;
  const spread = Math.sqrt(meanOf(trials.map(({ x }) => (x - centre) * (x - centre))).mean);
  const scaled = trials.map(({ x, yes }) => ({ x: (x - centre) / spread, yes }));
  let [a, b] = [0, 0];
  let best = logLikelihood(scaled, a, b);
  for (let step = 0; step < MOST_STEPS; step++) {
    const { score, information } = scoreAndInformation(scaled, a, b);
    const inverse = inverseOf(information);
    if (inverse === null) return 'separated'; // by so little that the doubles no longer tell
    const [da, db] = times(inverse, score);
    // A full step may overshoot where the chances are near 0 and 1; the likelihood is concave, so half of it will do.
    let share = 1;
    let next = logLikelihood(scaled, a + da, b + db);
    for (; next < best && share > SETTLED; next = logLikelihood(scaled, a + share * da, b + share * db))
      share /= 2;
    a += share * da;
    b += share * db;
    best = Math.max(best, next);
    if (Math.abs(da) + Math.abs(db) < SETTLED * (1 + Math.abs(a) + Math.abs(b))) break;
  }
  const inverse = inverseOf(scoreAndInformation(scaled, a, b).information);
  if (inverse === null) return 'separated';
  const [[v00, v01], [, v11]] = inverse;
  const shift = centre / spread;
  return {
    intercept: a - b * shift,
    slope: b / spread,
    interceptError: Math.sqrt(v00 - 2 * shift * v01 + shift * shift * v11),
    slopeError: Math.sqrt(v11) / spread,
    covariance: (v01 - shift * v11) / spread,
    logLikelihood: best,
  };
}

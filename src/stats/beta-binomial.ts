/**
 * A beta distribution behind shares that were counted: k of n, in each of several cases whose own chances differ.
 * Empirical Bayes: the distribution under which the counts together are likeliest (marginal likelihood; Skellam 1948,
 * J. R. Stat. Soc. B 10: 257-261; Gelman et al. 2013, Bayesian Data Analysis, 3rd edition, chapter 5).
 */
import { logGamma } from './beta';

export interface Counted {
  readonly k: number;
  readonly n: number;
}

export interface Beta {
  readonly a: number;
  readonly b: number;
}

/** What is taken for likely of the prior before there are counts. */
export interface Lean {
  /**
   * Of a + b, which is how many tries the prior is worth. Counts that scatter no more than coins would put it at
   * infinity, counts that are all or nothing at 0: the fit stops at these.
   */
  readonly worth: readonly [number, number];
  /** The likelihood is weighed by (a + b) to the power of minus this, so that few counts claim little. */
  readonly power: number;
}

const NO_LEAN: Lean = { worth: [0.1, 200], power: 0 };
/** Of the mean: a prior that holds a chance for impossible could not learn. */
const LEAST_MEAN = 1e-4;

function logBeta(a: number, b: number): number {
  return logGamma(a) + logGamma(b) - logGamma(a + b);
}

/** Log of the chance of the counts under the prior, less what does not hang on it. */
export function logMarginal(counts: readonly Counted[], { a, b }: Beta): number {
  return counts.reduce((sum, { k, n }) => sum + logBeta(a + k, b + n - k) - logBeta(a, b), 0);
}

/** The likeliest prior; null where fewer than two cases were tried, of which none can tell how cases differ. */
export function fittedBeta(counts: readonly Counted[], { worth, power }: Lean = NO_LEAN): Beta | null {
  const tried = together(counts.filter(({ n }) => n > 0));
  if (tried.reduce((cases, { times }) => cases + times, 0) < 2) return null;
  const value = (logitMean: number, logWorth: number): number => {
    const prior = priorOf(logitMean, logWorth);
    const empty = logBeta(prior.a, prior.b);
    return tried.reduce(
      (sum, { k, n, times }) => sum + times * (logBeta(prior.a + k, prior.b + n - k) - empty),
      -power * logWorth,
    );
  };
  const farthest = Math.log((1 - LEAST_MEAN) / LEAST_MEAN);
  const bestMean = (logWorth: number) => highest((mean) => value(mean, logWorth), -farthest, farthest);
  const logWorth = highest((at) => value(bestMean(at), at), Math.log(worth[0]), Math.log(worth[1]));
  return priorOf(bestMean(logWorth), logWorth);
}

function priorOf(logitMean: number, logWorth: number): Beta {
  const worth = Math.exp(logWorth);
  const mean = 1 / (1 + Math.exp(-logitMean));
  return { a: worth * mean, b: worth * (1 - mean) };
}

/** Equal counts once, with how often: a farm has hundreds of pairs tried once and failed. */
function together(counts: readonly Counted[]): (Counted & { readonly times: number })[] {
  const kinds = new Map<string, Counted & { times: number }>();
  for (const { k, n } of counts) {
    const kind = kinds.get(`${k} ${n}`) ?? { k, n, times: 0 };
    kind.times += 1;
    kinds.set(`${k} ${n}`, kind);
  }
  return [...kinds.values()];
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const ROUNDS = 40;

/** Where a function with one peak is highest, to 4e-9 of the range (golden section; Kiefer 1953). */
function highest(value: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atLeft, atRight] = [value(left), value(right)];
  for (let round = 0; round < ROUNDS; round++) {
    if (atLeft < atRight) {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = value(right);
    } else {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = value(left);
    }
  }
  return (low + high) / 2;
}

/**
 * Who is stronger: Bradley & Terry's model (1952, Biometrika 39: 324-345) with ties after Davidson (1970, J. Am. Stat.
 * Assoc. 65: 317-328). With strengths s = exp(ability) and the tie parameter nu, of i against j
 *   i wins : j wins : tie  =  si : sj : nu sqrt(si sj).
 * Greatest likelihood by Newton's steps over abilities and log nu, in which it is concave; without ties nu is 0.
 */
import { inverseOf, times } from './inverse';

/** What was seen between two items, by their numbers from 0 on; a pair may come in several rows. */
export interface Meetings {
  readonly a: number;
  readonly b: number;
  readonly aWins: number;
  readonly bWins: number;
  readonly ties: number;
}

export interface Strengths {
  /** Natural logarithms of the strengths; they sum to 0. */
  readonly abilities: readonly number[];
  /** Of the abilities: standard errors are roots of its diagonal, and a difference takes v[i][i] + v[j][j] - 2 v[i][j]. */
  readonly covariance: readonly (readonly number[])[];
  readonly tie: number;
}

const SETTLED = 1e-12;
const MOST_STEPS = 200;

/** Logarithms of the three weights; a tie's is -Infinity where there are none. */
function logWeights({ a, b }: Meetings, free: readonly number[], count: number): [number, number, number] {
  const [first, second] = [free[a], free[b]];
  return [first, second, free.length > count ? (first + second) / 2 + free[count] : -Infinity];
}

function logSum(weights: readonly number[]): number {
  const most = Math.max(...weights);
  return most + Math.log(weights.reduce((sum, weight) => sum + Math.exp(weight - most), 0));
}

/** `free`: the abilities, then log nu if there are ties. */
function logLikelihood(meetings: readonly Meetings[], free: readonly number[], count: number): number {
  return meetings.reduce((total, met) => {
    const [first, second, tie] = logWeights(met, free, count);
    const all = logSum([first, second, tie]);
    const tied = met.ties > 0 ? met.ties * (tie - all) : 0;
    return total + met.aWins * (first - all) + met.bWins * (second - all) + tied;
  }, 0);
}

/** Each outcome's logarithm is linear in what is free, so the information is the spread of those lines' coefficients. */
function scoreAndInformation(meetings: readonly Meetings[], free: readonly number[], count: number) {
  const score = free.map(() => 0);
  const information = free.map(() => free.map(() => 0));
  for (const met of meetings) {
    const weights = logWeights(met, free, count);
    const all = logSum(weights);
    const chances = weights.map((weight) => Math.exp(weight - all));
    const seen = [met.aWins, met.bWins, met.ties];
    const n = met.aWins + met.bWins + met.ties;
    const places = free.length > count ? [met.a, met.b, count] : [met.a, met.b];
    const lines = [
      [1, 0, 0],
      [0, 1, 0],
      [0.5, 0.5, 1],
    ];
    const means = places.map((_, at) => lines.reduce((sum, line, k) => sum + chances[k] * line[at], 0));
    places.forEach((row, i) => {
      score[row] += lines.reduce((sum, line, k) => sum + seen[k] * line[i], 0) - n * means[i];
      places.forEach((column, j) => {
        const both = lines.reduce((sum, line, k) => sum + chances[k] * line[i] * line[j], 0);
        information[row][column] += n * (both - means[i] * means[j]);
      });
    });
  }
  return { score, information };
}

/** The first ability stands at 0 while it is fitted: only differences are determined. */
function free(matrix: readonly (readonly number[])[]): number[][] {
  return matrix.slice(1).map((row) => row.slice(1));
}

/** About the mean ability in place of the first. `fixed` lacks the first item, and may go on to log nu. */
function aboutMean(fixed: readonly (readonly number[])[], count: number): number[][] {
  const at = (i: number, j: number) => (i === 0 || j === 0 ? 0 : fixed[i - 1][j - 1]);
  const items = Array.from({ length: count }, (_, i) => i);
  const rowMeans = items.map((i) => items.reduce((sum, j) => sum + at(i, j), 0) / count);
  const mean = rowMeans.reduce((sum, row) => sum + row, 0) / count;
  return items.map((i) => items.map((j) => at(i, j) - rowMeans[i] - rowMeans[j] + mean));
}

/**
 * Strengths of `count` items. Null where the greatest likelihood lies at infinity, which `whoCanBeOrdered`
 * (ordered.ts) tells and explains beforehand.
 */
export function strengths(count: number, meetings: readonly Meetings[]): Strengths | null {
  const ties = meetings.some((met) => met.ties > 0);
  let at = Array.from({ length: count + (ties ? 1 : 0) }, () => 0);
  let best = logLikelihood(meetings, at, count);
  for (let step = 0; step < MOST_STEPS; step++) {
    const { score, information } = scoreAndInformation(meetings, at, count);
    const inverse = inverseOf(free(information));
    if (inverse === null) return null;
    const move = [0, ...times(inverse, score.slice(1))];
    let share = 1;
    const moved = () => at.map((value, k) => value + share * move[k]);
    let next = moved();
    for (; logLikelihood(meetings, next, count) < best && share > SETTLED; next = moved()) share /= 2;
    at = next;
    best = Math.max(best, logLikelihood(meetings, at, count));
    if (move.every((by, k) => Math.abs(by) < SETTLED * (1 + Math.abs(at[k])))) break;
  }
  const inverse = inverseOf(free(scoreAndInformation(meetings, at, count).information));
  if (inverse === null) return null;
  const mean = at.slice(0, count).reduce((sum, ability) => sum + ability, 0) / count;
  return {
    abilities: at.slice(0, count).map((ability) => ability - mean),
    covariance: aboutMean(inverse, count),
    tie: ties ? Math.exp(at[count]) : 0,
  };
}

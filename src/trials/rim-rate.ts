/**
 * Rim rate of a group of colonies from the growth of their equivalent radius, r = sqrt(area / pi), in mm per month.
 *
 * Each two readings of one colony that follow each other give a rate: gain over months. A colony that lost part of
 * itself in between gains too little, or shrinks; nothing makes it gain too much. So rates lie about the rim rate with a
 * tail below it, of which a mean or a least squares line takes its share. What is taken in its place:
 *   start   mean of the shortest half of the sorted rates (Rousseeuw & Leroy 1987, Robust Regression and Outlier
 *           Detection, chapter 4: the shorth): the densest half is that of the undisturbed as long as these are the most
 *   spread  median distance of the rates above the estimate, over 0.6745: no loss can stand there (judgement)
 *   end     Tukey's biweight about that (Beaton & Tukey 1974, Technometrics 16: 147-185; tuning 4.685, 95 % efficient
 *           without losses): a rate more than 4.685 spreads off does not count, others the less the further off
 * Pairs count by their months: without losses the estimate is the whole gain over the whole time.
 * Interval: 95 %, Student's t, of the estimate's score summed by colony (Liang & Zeger 1986, Biometrika 73: 13-22), as
 * two pairs that share a reading are not independent; by pair where there is one colony, the wider of both where there
 * are two. Its degrees of freedom count each source by its greatest weight: with few, what was taken for a loss would
 * else make the range too narrow (on invented farms of three to seven gains it covered 85 %, and so 92 to 97 %).
 * Known bias: a loss that is small beside the spread cannot be told from it and pulls the rate down; where
 * most pairs lost something this is no longer the undisturbed rate. The upper quantile beside it is, but for noise.
 */
import { quantile } from '../stats/intervals';
import { student95 } from '../stats/student';
import { upperQuantile } from '../stats/upper-quantile';
import { grouped } from './grouped';

export interface RadiusReading {
  readonly colony: string;
  readonly group: string;
  readonly months: number;
  readonly radiusMm: number;
}

export interface RimRate {
  readonly group: string;
  /** Pairs of readings. */
  readonly n: number;
  readonly rimMmPerMonth: number;
  /** 95 % interval; null for one pair, which has no spread. */
  readonly low: number | null;
  readonly high: number | null;
  /** 0.98 quantile of the rates. */
  readonly q98MmPerYear: number;
}

/** Two readings of one colony that follow each other. */
export interface Growth {
  readonly colony: string;
  readonly months: number;
  /** mm per month. */
  readonly rate: number;
}

const TUNING = 4.685;
/** Median distance of normal values from their middle, in standard deviations. */
const NORMAL_MEDIAN = 0.6745;
const ROUNDS = 200;
/** Rates that differ by less, as a share, differ by the rounding of doubles. */
const ROUNDING = 1e-9;

/** One rate a group, in the order in which groups come; groups of which no colony was read twice are left out. */
export function rimRates(readings: readonly RadiusReading[]): RimRate[] {
  return [...grouped(readings, ({ group }) => group)].flatMap(([group, own]) => {
    const pairs = [...grouped(own, ({ colony }) => colony).values()].flatMap(pairsOf);
    return pairs.length === 0 ? [] : [{ group, ...robustRate(pairs) }];
  });
}

function pairsOf(readings: readonly RadiusReading[]): Growth[] {
  const inTime = [...readings].sort((a, b) => a.months - b.months);
  return inTime.slice(1).map(({ colony, months, radiusMm }, at) => {
    const before = inTime[at];
    const between = months - before.months;
    return { colony, months: between, rate: (radiusMm - before.radiusMm) / between };
  });
}

function shorth(rates: readonly number[]): number {
  const sorted = [...rates].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2) + 1;
  let from = 0;
  for (let at = 1; at + half <= sorted.length; at++) {
    // of two as short, the upper: losses lie below
    if (sorted[at + half - 1] - sorted[at] <= sorted[from + half - 1] - sorted[from]) from = at;
  }
  const shortest = sorted.slice(from, from + half);
  return shortest.reduce((sum, rate) => sum + rate, 0) / half;
}

/** Distances are scaled by the root of the months, so that short pairs, which are noisier, may lie further off. */
function off({ rate, months }: Growth, centre: number): number {
  return (rate - centre) * Math.sqrt(months);
}

function spreadAbove(pairs: readonly Growth[], centre: number): number {
  const above = pairs.filter(({ rate }) => rate >= centre).map((pair) => off(pair, centre));
  return above.length === 0 ? 0 : quantile(above, 0.5) / NORMAL_MEDIAN;
}

export function robustRate(pairs: readonly Growth[]): Omit<RimRate, 'group'> {
  const rates = pairs.map(({ rate }) => rate);
  let centre = shorth(rates);
  let spread = spreadAbove(pairs, centre);
  const least = leastOff(pairs);
  for (let round = 0; round < ROUNDS && spread > least; round++) {
    const weights = pairs.map((pair) => pair.months * biweight(off(pair, centre) / (TUNING * spread)));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const next = weights.reduce((sum, weight, at) => sum + weight * rates[at], 0) / total;
    const moved = Math.abs(next - centre);
    centre = next;
    spread = spreadAbove(pairs, centre);
    if (moved <= ROUNDING * Math.abs(centre)) break;
  }
  const half = pairs.length < 2 ? null : halfWidth(pairs, centre, Math.max(spread, least));
  return {
    n: pairs.length,
    rimMmPerMonth: centre,
    low: half === null ? null : centre - half,
    high: half === null ? null : centre + half,
    q98MmPerYear: 12 * upperQuantile(rates, 0.98),
  };
}

/** What each pair weighs beside its months: 1 at the rate, 0 for one that is taken for a loss. */
export function weightsAbout(pairs: readonly Growth[], centre: number): number[] {
  const spread = Math.max(spreadAbove(pairs, centre), leastOff(pairs));
  return pairs.map((pair) => (spread === 0 ? 1 : biweight(off(pair, centre) / (TUNING * spread))));
}

/** Pairs no further off than this lie on the rate. */
function leastOff(pairs: readonly Growth[]): number {
  return ROUNDING * pairs.reduce((most, pair) => Math.max(most, Math.abs(off(pair, 0))), 0);
}

function biweight(u: number): number {
  return Math.abs(u) < 1 ? (1 - u * u) * (1 - u * u) : 0;
}

/** Half the interval; null where the score does not fall at the estimate, so that it tells nothing of its error. */
function halfWidth(pairs: readonly Growth[], centre: number, spread: number): number | null {
  const parts = pairs.map((pair) => {
    const u = spread === 0 ? 0 : off(pair, centre) / (TUNING * spread);
    const weight = biweight(u);
    const fall = Math.abs(u) < 1 ? pair.months * (1 - u * u) * (1 - 5 * u * u) : 0;
    return { colony: pair.colony, weight, score: pair.months * weight * (pair.rate - centre), fall };
  });
  const fall = parts.reduce((sum, part) => sum + part.fall, 0);
  if (fall <= 0) return null;
  const byPair = rootOf(parts.map((part) => [part]));
  const byColony = [...grouped(parts, ({ colony }) => colony).values()];
  if (byColony.length === 1) return byPair / fall;
  return (byColony.length === 2 ? Math.max(byPair, rootOf(byColony)) : rootOf(byColony)) / fall;
}

/** Student's t times the error of the sum of the scores. What is taken for a loss is none that the error is told by. */
function rootOf(
  sources: readonly (readonly { readonly weight: number; readonly score: number }[])[],
): number {
  const squares = sources.reduce((sum, own) => sum + own.reduce((all, { score }) => all + score, 0) ** 2, 0);
  const counted = sources.reduce((sum, own) => sum + Math.max(...own.map(({ weight }) => weight)), 0);
  const degrees = Math.max(1, counted - 1);
  return student95(degrees) * Math.sqrt((squares * sources.length) / degrees);
}

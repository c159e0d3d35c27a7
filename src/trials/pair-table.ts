/**
 * What the log says of every pair: took of tried, and the chance that the next one takes.
 *
 * The chance is the posterior of took of tried under a beta prior fitted to the other pairs of its kind (empirical
 * Bayes, stats/beta-binomial.ts): pairs within one group, or pairs across groups. Only varieties of one species are
 * expected to fuse, so the kinds are kept apart. Each kind counts one pair more, that of the planning prior (one try
 * that nearly failed), and its prior is worth 1 to 50 tries, weighed by its worth to the power of minus a half, which is
 * Gelman et al.'s 2013 (Bayesian Data Analysis, 5.9) on the scale of mean and log worth; the bounds are judgement. A pair
 * shares in the prior that it is judged by, as in all empirical Bayes; its interval holds no doubt of the prior itself
 * (on invented farms, with 36 pairs of up to 5 tries in a group, it covered 92 %).
 */
import { DEFAULTS } from '../model/defaults';
import { betaQuantile } from '../stats/beta';
import { type Beta, fittedBeta, type Lean } from '../stats/beta-binomial';
import type { Interval } from '../stats/intervals';
import { kaplanMeier, medianDays } from '../stats/lifetimes';
import { grouped } from './grouped';
import type { Log, LogVariety } from './trial';
import { type PairVerdict, verdictsOf } from './verdicts';

export type PairKind = 'within' | 'across' | 'unsaid' | 'self';

export interface PairCell {
  readonly a: LogVariety;
  readonly b: LogVariety;
  readonly kind: PairKind;
  readonly verdicts: readonly PairVerdict[];
  /** Pairs with a verdict, and those of them that fused. */
  readonly tried: number;
  readonly took: number;
  readonly undecided: number;
  /** Times that a lay over b or killed it, and the other way round. */
  readonly aOver: number;
  readonly bOver: number;
  /** took / tried; null where none was tried. */
  readonly share: number | null;
  /** The share drawn towards others of its kind, with its 95 % interval. */
  readonly chance: number;
  readonly low: number;
  readonly high: number;
  /** Tries that the prior is worth beside those of the pair. */
  readonly priorWorth: number;
  /** The chance as a beta distribution. */
  readonly posterior: Beta;
  /** By Kaplan and Meier; null where less than half have settled. */
  readonly medianDays: number | null;
}

/** What is known of a kind of pair. */
export interface KindPrior {
  readonly prior: Beta;
  /** Pairs of the kind that were tried, their verdicts, and those that fused. */
  readonly pairs: number;
  readonly tried: number;
  readonly took: number;
}

export interface PairTable {
  readonly varieties: readonly LogVariety[];
  /** In whichever order the two are named: `a` is the one that is listed first. */
  readonly cell: (one: string, other: string) => PairCell;
  /** Cells with at least one tile, settled or not. */
  readonly noted: readonly PairCell[];
  readonly priorOf: (one: LogVariety, other: LogVariety) => KindPrior;
}

const LEAN: Lean = { worth: [1, 50], power: 0.5 };
const PLANNING: Beta = { a: DEFAULTS.priorTook.value, b: DEFAULTS.priorMissed.value };

export function pairTable(log: Log): PairTable {
  const place = new Map(log.varieties.map(({ id }, at) => [id, at]));
  const keyOf = (one: string, other: string): string =>
    (place.get(one) ?? 0) <= (place.get(other) ?? 0) ? `${one} ${other}` : `${other} ${one}`;
  const byPair = grouped(verdictsOf(log), ({ a, b }) => keyOf(a, b));
  const varietyOf = (id: string): LogVariety => {
    const variety = log.varieties[place.get(id) ?? -1];
    if (!variety) throw new Error(`the log has no variety ${id}`);
    return variety;
  };
  const counts = [...byPair.values()].map((verdicts) => {
    const [{ a, b }] = verdicts;
    return { kind: kindKey(varietyOf(a), varietyOf(b)), ...countsOf(verdicts) };
  });
  const kinds = new Map<string, KindPrior>();
  const priorOf = (one: LogVariety, other: LogVariety): KindPrior => {
    const key = kindKey(one, other);
    const known = kinds.get(key) ?? priorFrom(counts.filter(({ kind }) => kind === key));
    kinds.set(key, known);
    return known;
  };
  // hundreds of thousands of pairs never tried share a few posteriors
  const ranges = new Map<string, Interval>();
  const rangeOf = ({ a, b }: Beta): Interval => {
    const key = `${a} ${b}`;
    const range = ranges.get(key) ?? { low: betaQuantile(0.025, a, b), high: betaQuantile(0.975, a, b) };
    ranges.set(key, range);
    return range;
  };
  const cell = (one: string, other: string): PairCell => {
    const [a, b] = keyOf(one, other).split(' ').map(varietyOf);
    const verdicts = byPair.get(keyOf(one, other)) ?? [];
    const { k: took, n: tried } = countsOf(verdicts);
    const { prior } = kindOf(a, b) === 'self' ? SELF : priorOf(a, b);
    const posterior = { a: prior.a + took, b: prior.b + tried - took };
    return {
      a,
      b,
      kind: kindOf(a, b),
      verdicts,
      tried,
      took,
      undecided: verdicts.length - tried,
      aOver: verdicts.filter(({ over }) => over === a.id).length,
      bOver: verdicts.filter(({ over }) => over === b.id).length,
      share: tried === 0 ? null : took / tried,
      chance: posterior.a / (posterior.a + posterior.b),
      ...rangeOf(posterior),
      priorWorth: prior.a + prior.b,
      posterior,
      medianDays: medianDays(
        kaplanMeier(verdicts.map(({ days, isSettled }) => ({ days, settled: isSettled }))),
      ),
    };
  };
  const noted = [...byPair.keys()].map((key) => {
    const [one, other] = key.split(' ');
    return cell(one, other);
  });
  return { varieties: log.varieties, cell, noted, priorOf };
}

export function kindOf(one: LogVariety, other: LogVariety): PairKind {
  if (one.id === other.id) return 'self';
  if (one.group === '' || other.group === '') return 'unsaid';
  return one.group === other.group ? 'within' : 'across';
}

/** Pairs that share a prior: those of one group, all across groups, all of which a group is not said. */
function kindKey(one: LogVariety, other: LogVariety): string {
  const kind = kindOf(one, other);
  return kind === 'within' ? `within ${one.group}` : kind;
}

/** Pieces of one colony always fuse: a pair of a variety with itself is a control. */
const SELF: KindPrior = { prior: { a: 0.95, b: 0.05 }, pairs: 0, tried: 0, took: 0 };

function countsOf(verdicts: readonly PairVerdict[]): { readonly k: number; readonly n: number } {
  const settled = verdicts.filter(({ isSettled }) => isSettled);
  return { k: settled.filter(({ outcome }) => outcome === 'fused').length, n: settled.length };
}

function priorFrom(counts: readonly { readonly k: number; readonly n: number }[]): KindPrior {
  const tried = counts.filter(({ n }) => n > 0);
  const planned = { k: PLANNING.a, n: PLANNING.a + PLANNING.b };
  return {
    prior: fittedBeta([...tried, planned], LEAN) ?? PLANNING,
    pairs: tried.length,
    tried: tried.reduce((sum, { n }) => sum + n, 0),
    took: tried.reduce((sum, { k }) => sum + k, 0),
  };
}

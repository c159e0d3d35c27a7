/**
 * What became of each pair on each tile, from all of its readings. Here and nowhere else.
 *
 * A reading tells what most of the pair's seam was, by the shares noted; where two are as long, the one that is no
 * merge. One that could not be told says nothing, so the reading before it stands. The last reading that tells decides.
 * 'Not met' and 'can't tell' count as undecided. The day of the verdict is that of the first reading of the unbroken
 * run of equal ones that ends the log: the true day lies between it and the reading before.
 */
import { daysBetween, inTime, isOf, pairsOf } from './last-seen';
import type { Log, Saw, Seen, Trial } from './trial';

export type SettledOutcome = 'fused' | 'ridge' | 'lapped' | 'dead';
export type VerdictOutcome = SettledOutcome | 'undecided';

export interface PairVerdict {
  readonly trial: Trial;
  readonly a: string;
  readonly b: string;
  readonly outcome: VerdictOutcome;
  /** Of a lapped or dead seam, the variety above, where it was noted. */
  readonly over: string | null;
  /** Since the tile was set: to the verdict, or to the last look where there is none. */
  readonly days: number;
  readonly isSettled: boolean;
  /** Of the seam, as last told; null where nothing was told. */
  readonly fusedShare: number | null;
  /** What it had settled to before it turned; null where it never did. */
  readonly turnedFrom: SettledOutcome | null;
}

interface Told {
  readonly day: number;
  readonly outcome: VerdictOutcome;
  readonly over: string | null;
  readonly fusedShare: number;
}

/** One for every two varieties of every tile. */
export function verdictsOf({ trials }: Log): PairVerdict[] {
  return trials.flatMap((trial) => pairsOf(trial.varieties).map(([a, b]) => verdictOf(trial, a, b)));
}

export function verdictOf(trial: Trial, a: string, b: string): PairVerdict {
  const looks = inTime(trial.readings).flatMap(({ on, seen }) => {
    const rows = seen.filter((row) => isOf(row, a, b));
    return rows.length === 0 ? [] : [{ day: daysBetween(trial.setOn, on), rows }];
  });
  const told = looks.flatMap(({ day, rows }): Told[] => {
    const main = mostOf(rows);
    return main === null ? [] : [{ day, ...main }];
  });
  const last = told.at(-1);
  if (last === undefined || !isSettled(last.outcome)) {
    return {
      trial,
      a,
      b,
      outcome: 'undecided',
      over: null,
      days: looks.at(-1)?.day ?? 0,
      isSettled: false,
      fusedShare: last?.fusedShare ?? null,
      turnedFrom: turnedFrom(told, 'undecided'),
    };
  }
  const { outcome, over, fusedShare } = last;
  let first = told.length - 1;
  while (first > 0 && told[first - 1].outcome === outcome) first--;
  return {
    trial,
    a,
    b,
    outcome,
    over,
    days: told[first].day,
    isSettled: true,
    fusedShare,
    turnedFrom: turnedFrom(told, outcome),
  };
}

function isSettled(outcome: VerdictOutcome): outcome is SettledOutcome {
  return outcome !== 'undecided';
}

function turnedFrom(told: readonly Told[], outcome: VerdictOutcome): SettledOutcome | null {
  const before = told.findLast((one) => one.outcome !== outcome && isSettled(one.outcome));
  return before && isSettled(before.outcome) ? before.outcome : null;
}

/** Merges come last: of two that are as long, the other counts. */
const BY_DOUBT: readonly VerdictOutcome[] = ['ridge', 'lapped', 'dead', 'undecided', 'fused'];

/** What most of the seam was; null where no part of it could be told. */
function mostOf(rows: readonly Seen[]): Omit<Told, 'day'> | null {
  const parts = rows.filter(({ saw }) => saw !== 'cant-tell');
  if (parts.length === 0) return null;
  const even = 1 / rows.length;
  const shareOf = (outcome: VerdictOutcome) =>
    parts.filter(({ saw }) => outcomeOf(saw) === outcome).reduce((sum, { share = even }) => sum + share, 0);
  if (parts.every(({ share = even }) => share === 0)) return null;
  const outcome = BY_DOUBT.reduce((best, next) => (shareOf(next) > shareOf(best) ? next : best));
  const over = parts.find(({ saw, over: above }) => saw === outcome && above !== undefined)?.over ?? null;
  return { outcome, over, fusedShare: shareOf('fused') };
}

function outcomeOf(saw: Saw): VerdictOutcome {
  return saw === 'not-met' || saw === 'cant-tell' ? 'undecided' : saw;
}

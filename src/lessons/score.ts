/** The score of a test: how many were right, which mistakes were made, and what was called what. */
import { kappaOf, type Agreement } from '../stats/agreement';
import type { Called, Calls } from './calls';
import { type Call, CALLS, isRightCall, SEAM_KINDS, type Seen } from './seam-kinds';

export interface Mistake extends Seen {
  readonly call: Call;
  readonly times: number;
}

/** Seams of one kind, those that no eye could tell yet apart. */
export interface Row extends Seen {
  /** How often they were called the i-th call. */
  readonly times: readonly number[];
}

export interface Score {
  readonly right: number;
  readonly of: number;
  /** Most often made first. */
  readonly mistakes: readonly Mistake[];
  readonly rows: readonly Row[];
}

export function scoreOf(called: readonly Called[]): Score {
  const rows = SEAM_KINDS.flatMap((is) => [false, true].map((isEarly) => ({ is, isEarly }))).flatMap(
    (seen) => {
      const own = called.filter((one) => one.is === seen.is && (one.isEarly ?? false) === seen.isEarly);
      const times = CALLS.map((call) => own.filter((one) => one.call === call).length);
      return own.length > 0 ? [{ ...seen, times }] : [];
    },
  );
  const mistakes = rows.flatMap(({ times, ...seen }) =>
    CALLS.map((call, at) => ({ ...seen, call, times: times[at] })).filter(
      (one) => one.times > 0 && !isRightCall(seen, one.call),
    ),
  );
  return {
    right: called.filter((one) => isRightCall(one, one.call)).length,
    of: called.length,
    mistakes: mistakes.sort((one, other) => other.times - one.times),
    rows,
  };
}

export interface Comparison {
  /** Seams that both have called. */
  readonly both: number;
  /** Null where nothing can be said: both always called the same one thing. */
  readonly agreement: Agreement | null;
  /** `table[i][j]`: how often the first said the i-th call and the second the j-th. */
  readonly table: readonly (readonly number[])[];
}

/** Two people's calls on the same seams; null where the tiles are not the same. */
export function compared(first: Calls, second: Calls): Comparison | null {
  if (first.set !== second.set || first.tiles !== second.tiles) return null;
  const table = CALLS.map(() => CALLS.map(() => 0));
  let both = 0;
  for (const { tile, seam, call } of first.called) {
    const other = second.called.find((one) => one.tile === tile && one.seam === seam);
    if (!other) continue;
    table[CALLS.indexOf(call)][CALLS.indexOf(other.call)]++;
    both++;
  }
  return { both, agreement: kappaOf(table), table };
}

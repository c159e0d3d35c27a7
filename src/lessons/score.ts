/** The score of a test: how many were right, which mistakes were made, and what was called what. */
import { kappaOf, type Agreement } from '../stats/agreement';
import type { Called, Calls } from './calls';
import { type Call, CALLS, isRightCall, SEAM_KINDS, type SeamKind } from './seam-kinds';

export interface Mistake {
  readonly is: SeamKind;
  readonly call: Call;
  readonly times: number;
}

export interface Score {
  readonly right: number;
  readonly of: number;
  /** Most often made first. */
  readonly mistakes: readonly Mistake[];
  /** `table[i][j]`: how often a seam of the i-th kind was called the j-th call. */
  readonly table: readonly (readonly number[])[];
}

export function scoreOf(called: readonly Called[]): Score {
  const times = (is: SeamKind, call: Call): number =>
    called.filter((one) => one.is === is && one.call === call).length;
  const mistakes = SEAM_KINDS.flatMap((is) =>
    CALLS.filter((call) => !isRightCall(is, call)).map((call) => ({ is, call, times: times(is, call) })),
  );
  return {
    right: called.filter(({ is, call }) => isRightCall(is, call)).length,
    of: called.length,
    mistakes: mistakes.filter((one) => one.times > 0).sort((one, other) => other.times - one.times),
    table: SEAM_KINDS.map((is) => CALLS.map((call) => times(is, call))),
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

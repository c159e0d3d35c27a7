/** Who must hear of it when a cell changes. */
import { refile } from './calendar';
import { push } from './cell-list';
import { bringDue, isLoneDiagonal, NEAREST, parentOf, polypOf } from './front';
import { BARE, FLAG, type State } from './state';

/** An empty cell with tissue beside it must be worked out anew. */
export function markStale(state: State, cell: number): void {
  state.flags[cell] |= FLAG.stale | FLAG.edge;
  push(state.growing.stale, cell);
}

/** The empty cells around `cell`, which is not empty itself: their due day may have changed. */
export function markStaleAround(state: State, cell: number): void {
  const { variety, flags, ring } = state;
  for (let k = 0; k < 8; k++) {
    const i = cell + ring[k];
    if (variety[i] === 0 && (flags[i] & (FLAG.inside | FLAG.stale)) === FLAG.inside) markStale(state, i);
  }
}

/**
 * A cell was filled in the last sub-step: its empty neighbours hear what it brings. One that was to be reached by a lone
 * diagonal step of another origin is worked out anew, since a stranger may bar that step; so is one reached long ago.
 */
export function bringAround(state: State, cell: number, cellDays: Float64Array, leastCellDays: number): void {
  const { variety, flags, growing, ring, due, via, origin, day, polyps } = state;
  if (variety[cell] === BARE) return;
  const own = origin[cell];
  const since = state.arrival[cell];
  for (let k = 0; k < 8; k++) {
    const i = cell + ring[k];
    if (variety[i] !== 0 || (flags[i] & (FLAG.inside | FLAG.stale)) !== FLAG.inside) continue;
    const old = due[i];
    if (old === Infinity) {
      flags[i] |= FLAG.edge;
    } else if (isLoneDiagonal(via[i]) && origin[parentOf(state, i)] !== own) {
      markStale(state, i);
      continue;
    } else if (Math.fround(since + NEAREST * leastCellDays * polyps.slowness[polypOf(state, i)]) > old) {
      continue;
    }
    bringDue(state, i, (k + 4) & 7, cellDays);
    const now = due[i];
    if (now === old) continue;
    if (now < day - 1) markStale(state, i);
    else refile(growing, i, old, now, day);
  }
}

/** Who must hear of it when a cell changes. */
import { refile } from './calendar';
import { push } from './cell-list';
import {
  BETWEEN,
  DIAGONAL,
  isLoneDiagonal,
  NEAREST,
  NEAREST_DIAGONAL,
  offer,
  parentOf,
  pinched,
  polypOf,
  SIDE,
} from './front';
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
 * Cells were filled in the last sub-step: their empty neighbours hear what they bring. One that was to be reached by a
 * lone diagonal step of another origin is worked out anew, since a stranger may bar that step; so is one reached long
 * ago. Together with what the others brought this comes to workOutDue, bit for bit, as long as none of them has changed.
 *
 * Most of a run's time goes by here, hence one long function: nothing is looked up twice, and what cannot be the
 * earliest is passed over before its root is taken.
 */
export function bringAround(
  state: State,
  cells: Int32Array,
  count: number,
  cellDays: Float64Array,
  leastCellDays: number,
): void {
  const { variety, flags, growing, ring, due, via, origin, colony, arrival, polyp, day } = state;
  const { slowness } = state.polyps;
  for (let c = 0; c < count; c++) {
    const cell = cells[c];
    const v = variety[cell];
    if (v === BARE) continue;
    const own = origin[cell];
    const since = arrival[cell];
    for (let k = 0; k < 8; k++) {
      const i = cell + ring[k];
      if (variety[i] !== 0 || (flags[i] & (FLAG.inside | FLAG.stale)) !== FLAG.inside) continue;
      const old = due[i];
      if (old === Infinity) {
        flags[i] |= FLAG.edge;
      } else if (isLoneDiagonal(via[i]) && origin[parentOf(state, i)] !== own) {
        markStale(state, i);
        continue;
      }
      const p = polyp[i];
      const slow = slowness[p > 0 ? p - 1 : polypOf(state, i)];
      const isAxis = (k & 1) === 0;
      if (Math.fround(since + (isAxis ? NEAREST : NEAREST_DIAGONAL) * slow * leastCellDays) > old) continue;
      const from = (k + 4) & 7;
      let s = slow * cellDays[v];
      const alone = Math.fround(since + (isAxis ? s : s * Math.SQRT2));
      if (alone <= old && (isAxis || !pinched(state, cell, i + ring[from - 1], i + ring[(from + 1) & 7])))
        offer(state, i, alone, isAxis ? from >> 1 : ((from - 1) >> 1) | DIAGONAL, cell);
      for (let side = 0; side <= SIDE; side += SIDE) {
        const other = i + ring[(from + (isAxis === (side === 0) ? 1 : 7)) & 7];
        const e = isAxis ? since - arrival[other] : arrival[other] - since;
        if (!(e > 0)) continue;
        const w = variety[other];
        if (!isAxis) s = slow * cellDays[w];
        if (!(e < s * Math.SQRT1_2) || w === 0 || w === BARE) continue;
        const back = Math.sqrt(s * s - e * e);
        const then = Math.fround((isAxis ? since : arrival[other]) + back);
        if (then > due[i]) continue;
        const theirs = origin[other];
        if (theirs !== own && colony[theirs] !== colony[own]) continue;
        const isDiagonal = 2 * e > back;
        const axis = (isAxis ? from : side === 0 ? from - 1 : (from + 1) & 7) >> 1;
        offer(
          state,
          i,
          then,
          axis | side | (isDiagonal ? DIAGONAL : 0) | BETWEEN,
          isDiagonal === isAxis ? other : cell,
        );
      }
      const now = due[i];
      if (now === old) continue;
      if (now < day - 1) markStale(state, i);
      else refile(growing, i, old, now, day);
    }
  }
}

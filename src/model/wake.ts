/** Marks what must be worked out again when a cell changes. */
import { push } from './cell-list';
import { parentOf } from './front';
import { FLAG, type State } from './state';

/** The empty cells around `cell`: their due day may have changed. */
export function markStaleAround(state: State, cell: number): void {
  const { variety, flags, growing } = state;
  const { columns } = state.layout;
  for (let dy = -columns; dy <= columns; dy += columns) {
    for (let dx = -1; dx <= 1; dx++) {
      const i = cell + dy + dx;
      if (variety[i] !== 0 || (flags[i] & (FLAG.inside | FLAG.stale)) !== FLAG.inside) continue;
      flags[i] |= FLAG.stale | FLAG.edge;
      push(growing.stale, i);
    }
  }
}

/**
 * The same for a cell that has just been filled, less those that it cannot bring forward: through it no cell is reached
 * before its arrival + s/sqrt2. Only beside its own origin, since a stranger may also bar a way that was open.
 * `leastCellDays`: days per cell of the fastest variety.
 */
export function markReachable(state: State, cell: number, leastCellDays: number): void {
  const { variety, flags, growing, ring, due, arrival, origin, polyp, polyps } = state;
  const own = origin[cell];
  const since = arrival[cell];
  for (let k = 0; k < 8; k++) {
    const i = cell + ring[k];
    if (variety[i] !== 0 || (flags[i] & (FLAG.inside | FLAG.stale)) !== FLAG.inside) continue;
    // 0.7 and not 1/sqrt2: a due day is rounded to 32 bits
    if (
      due[i] < Infinity &&
      due[i] < since + 0.7 * leastCellDays * polyps.slowness[polyp[i] - 1] &&
      origin[parentOf(state, i)] === own
    )
      continue;
    flags[i] |= FLAG.stale | FLAG.edge;
    push(growing.stale, i);
  }
}

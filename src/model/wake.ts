/** Marks what must be worked out again when a cell changes. */
import { push } from './cell-list';
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

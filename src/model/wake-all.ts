/** Who must hear of it when a step has changed the tile. */
import { reconsider } from './lap';
import { BARE, FLAG, type State } from './state';
import { markStale } from './wake';

/** After a step every empty cell beside tissue is worked out anew, and every living cell that may be lapped. */
export function wakeAll(state: State): void {
  const { variety, flags, growing, due, ring } = state;
  growing.stale.count = 0;
  growing.taken.count = 0;
  for (let i = 0; i < variety.length; i++) {
    flags[i] &= ~(FLAG.stale | FLAG.edge | FLAG.taken);
    due[i] = Infinity;
    if (variety[i] !== 0 || (flags[i] & FLAG.inside) === 0) continue;
    for (let k = 0; k < 8; k++) {
      const beside = variety[i + ring[k]];
      if (beside === 0 || beside === BARE) continue;
      markStale(state, i);
      break;
    }
  }
  if (state.lapPairs.size > 0) for (let i = 0; i < variety.length; i++) reconsider(state, i, 0);
}

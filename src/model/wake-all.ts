/** Who must hear of it when a step has changed the tile. */
import { reconsider } from './lap';
import { BARE, FLAG, type State } from './state';
import { markStale } from './wake';

/** Every empty cell beside tissue is worked out anew, and what may be lapped among the changed cells. */
export function wakeAll(state: State, isChanged: Uint8Array): void {
  const { variety, flags, growing, due, ring } = state;
  growing.stale.count = 0;
  growing.taken.count = 0;
  for (let i = 0; i < variety.length; i++) {
    flags[i] &= ~(FLAG.stale | FLAG.edge | FLAG.taken);
    if (variety[i] !== 0) {
      if (isChanged[i] === 1) due[i] = Infinity;
      continue;
    }
    due[i] = Infinity;
    if ((flags[i] & FLAG.inside) === 0) continue;
    for (const step of ring)
      if (variety[i + step] !== 0 && variety[i + step] !== BARE) {
        markStale(state, i);
        break;
      }
  }
  for (let i = 0; i < variety.length; i++) if (isChanged[i] === 1) reconsider(state, i, 1);
}

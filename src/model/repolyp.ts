/** The polyps after a step: a polyp belongs to the tissue nearest to its site, and one without tissue is unborn again. */
import { polypOf, toSite } from './front';
import { isLiving } from './clear';
import { slownessOf } from './polyps';
import type { State } from './state';

/** `isChanged` marks cells that were cleared, filled or given another number. */
export function repolyp(state: State, isChanged: Uint8Array): void {
  const { polyps, variety, origin } = state;
  const touched = new Uint8Array(polyps.variety.length);
  for (let i = 0; i < isChanged.length; i++) if (isChanged[i] === 1) touched[polypOf(state, i)] = 1;
  const { claim } = polyps;
  for (let i = 0; i < variety.length; i++) {
    if (!isLiving(state, i)) continue;
    const p = polypOf(state, i);
    if (touched[p] === 0) continue;
    const holder = claim[p] - 1;
    if (holder < 0 || toSite(state, i, p) < toSite(state, holder, p)) claim[p] = i + 1;
  }
  for (let p = 0; p < touched.length; p++) {
    if (touched[p] === 0) continue;
    const cell = claim[p] - 1;
    claim[p] = 0;
    if (cell >= 0) {
      polyps.variety[p] = variety[cell];
      polyps.origin[p] = origin[cell];
    } else if (polyps.variety[p] !== 0) {
      polyps.variety[p] = 0;
      polyps.origin[p] = 0;
      // what grows here next is another polyp: it draws its own rate and its own way
      polyps.generation[p]++;
      polyps.slowness[p] = slownessOf(polyps.site[p], polyps.generation[p], state.layout, state.keys);
    }
  }
}

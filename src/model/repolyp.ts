/** Which tissue a polyp belongs to where pieces are set or a step has changed the tile. */
import { polypOf, toSite } from './front';
import { isLiving } from './clear';
import { slownessOf } from './polyps';
import type { State } from './state';

/** Of the polyps that these cells lie in each takes the piece and colour of the cell nearest to its site. */
export function settlePolyps(state: State, cells: readonly number[]): void {
  const { polyps, variety, origin } = state;
  const { claim } = polyps;
  for (const i of cells) {
    const p = polypOf(state, i);
    const holder = claim[p] - 1;
    if (holder < 0 || toSite(state, i, p) < toSite(state, holder, p)) claim[p] = i + 1;
  }
  for (const i of cells) {
    const p = polypOf(state, i);
    if (claim[p] !== i + 1) continue;
    claim[p] = 0;
    polyps.variety[p] = variety[i];
    polyps.origin[p] = origin[i];
  }
}

/**
 * After a step: `isChanged` marks cells that were cleared, filled or given another number. Their polyps are settled
 * anew, and one without tissue is unborn again.
 */
export function repolyp(state: State, isChanged: Uint8Array): void {
  const { polyps } = state;
  const open = new Uint8Array(polyps.variety.length);
  for (let i = 0; i < isChanged.length; i++) if (isChanged[i] === 1) open[polypOf(state, i)] = 1;
  const cells: number[] = [];
  const held = new Uint8Array(open.length);
  for (let i = 0; i < isChanged.length; i++) {
    if (!isLiving(state, i)) continue;
    const p = polypOf(state, i);
    if (open[p] === 0) continue;
    cells.push(i);
    held[p] = 1;
  }
  settlePolyps(state, cells);
  for (let p = 0; p < open.length; p++) {
    if (open[p] === 0 || held[p] === 1 || polyps.variety[p] === 0) continue;
    polyps.variety[p] = 0;
    polyps.origin[p] = 0;
    // what grows here next is another polyp: it draws its own rate and its own way
    polyps.generation[p]++;
    polyps.slowness[p] = slownessOf(polyps.site[p], polyps.generation[p], state.layout, state.keys);
  }
}

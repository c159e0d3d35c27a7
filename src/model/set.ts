/** Day 0: the pieces as they are set. */
import type { Layout } from './layout';
import { meet } from './contact';
import { polypOf, toSite } from './front';
import { createState, FLAG, type State } from './state';
import { markStaleAround } from './wake';

export function setPieces(layout: Layout, seed: string): State {
  const state = createState(layout, seed);
  const { arrival, origin, variety, flags, polyps } = state;
  const cells: number[] = [];
  for (let i = 0; i < origin.length; i++) {
    const piece = layout.piece[i];
    if (piece === 0) continue;
    origin[i] = piece;
    variety[i] = state.pieces.variety[piece];
    arrival[i] = layout.startDay[i];
    flags[i] |= FLAG.set;
    cells.push(i);
    // a polyp on a cut belongs to the piece with the cell nearest to its site
    const p = polypOf(state, i);
    const holder = polyps.claim[p] - 1;
    if (holder < 0 || toSite(state, i, p) < toSite(state, holder, p)) polyps.claim[p] = i + 1;
  }
  for (const i of cells) {
    const p = polypOf(state, i);
    if (polyps.claim[p] !== i + 1) continue;
    polyps.variety[p] = variety[i];
    polyps.origin[p] = origin[i];
  }
  polyps.claim.fill(0);
  for (const i of cells) markStaleAround(state, i);
  meet(state, Int32Array.from(cells), cells.length);
  return state;
}

/** Pieces set on the tile: those of day 0, and what is added later. */
import type { Fresh } from './cuts';
import type { Layout } from './layout';
import { meet } from './contact';
import { knit } from './knit';
import { settlePolyps } from './repolyp';
import { createState, FLAG, newPiece, type State } from './state';
import { markStaleAround } from './wake';
import type { Work } from './works';

export function setPieces(layout: Layout, seed: string): State {
  const state = createState(layout, seed);
  const { arrival, origin, variety, flags } = state;
  const cells: number[] = [];
  for (let i = 0; i < origin.length; i++) {
    const piece = layout.piece[i];
    if (piece === 0) continue;
    origin[i] = piece;
    variety[i] = state.pieces.variety[piece];
    arrival[i] = layout.startDay[i];
    flags[i] |= FLAG.set;
    cells.push(i);
  }
  settlePolyps(state, cells);
  for (const i of cells) markStaleAround(state, i);
  meet(state, Int32Array.from(cells), cells.length);
  if (layout.pieces.graft.some((graft) => graft !== 0)) knit(state, layout.pieces.graft, layout.seams, 0);
  return state;
}

/**
 * Adds tissue at the start of day `now`, on bare ground only: what would lie on other tissue is lost. Returns by piece
 * the graft that it belongs to, 0 for none.
 */
export function setFresh(state: State, fresh: readonly Fresh[], now: number, work: Work): Uint16Array {
  const { arrival, origin, variety, flags } = state;
  const graft: number[] = [];
  for (const { cells, startDays, ...piece } of fresh) {
    const number = newPiece(state, {
      variety: piece.variety,
      healedDay: now + piece.healingDays,
      freshUntilDay: now + piece.healingDays + piece.freshDays,
      name: piece.name,
      parent: 0,
      stock: 0,
    });
    state.colonyVarieties[number] = 1 << piece.variety;
    graft[number] = piece.graft;
    cells.forEach((cell, k) => {
      if ((flags[cell] & FLAG.inside) === 0) return;
      if (variety[cell] !== 0) {
        work.lostCells[piece.variety]++;
        return;
      }
      origin[cell] = number;
      variety[cell] = piece.variety;
      arrival[cell] = now + startDays[k];
      flags[cell] |= FLAG.set;
    });
  }
  return Uint16Array.from({ length: state.pieces.count + 1 }, (_, o) => graft[o] ?? 0);
}

/** Setting a piece on the tile, by hand or by key: kept if it can be, else the reason is shown where it was tried. */
import { setPiece } from '../../plan/edit';
import { MAX_PIECES, type Piece, type Xy } from '../../plan/plan';
import type { Desk } from '../desk.svelte';
import type { Hold } from './hold.svelte';
import { outlinePiece, stampPiece } from './stamp';

export const TILE_IS_FULL = `A tile holds at most ${MAX_PIECES} pieces: delete some first.`;

function setDown(desk: Desk, hold: Hold, piece: Piece): void {
  if (desk.plan.pieces.length >= MAX_PIECES) {
    hold.refuse(TILE_IS_FULL, piece.at);
    return;
  }
  const refusals = desk.do(setPiece(desk.plan, piece));
  if (refusals.length > 0) {
    hold.refuse(`${refusals[0].cure}.`, piece.at);
    return;
  }
  hold.refused = null;
  hold.said = `Piece ${piece.id} is set.`;
  desk.select([piece.id]);
}

export function setStamp(desk: Desk, hold: Hold, at: Xy): void {
  if (desk.stamp.variety !== '') setDown(desk, hold, stampPiece(desk.plan, desk.stamp, at));
}

/** Closes the outline that is being drawn. */
export function closeSketch(desk: Desk, hold: Hold): void {
  const piece = outlinePiece(desk.plan, desk.stamp.variety, hold.sketch);
  hold.sketch = [];
  if (piece) setDown(desk, hold, piece);
  else hold.said = 'The outline was too small for a piece.';
}

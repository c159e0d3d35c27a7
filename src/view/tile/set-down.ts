/** Setting a piece on the tile, by hand or by key: kept if it can be, else the reason is shown where it was tried. */
import { setPiece } from '../../plan/edit';
import type { Piece, Xy } from '../../plan/plan';
import type { Desk } from '../desk.svelte';
import type { Hold } from './hold.svelte';
import { outlinePiece, stampPiece } from './stamp';

function setDown(desk: Desk, hold: Hold, piece: Piece): void {
  const refusals = desk.do(setPiece(desk.plan, piece));
  if (refusals.length > 0) {
    hold.refused = { words: `${refusals[0].cure}.`, at: piece.at };
    hold.said = hold.refused.words;
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

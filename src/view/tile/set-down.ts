/** Setting a piece on the tile, by hand or by key: kept if it can be, else the reason is shown where it was tried. */
import { setPiece } from '../../plan/edit';
import { capital, pieceName } from '../../plan/piece-name';
import { MAX_PIECES, type Piece, type Xy } from '../../plan/plan';
import type { Desk } from '../desk.svelte';
import type { Hold } from './hold.svelte';
import { cornersOf, outlineFault, outlinePiece, stampPiece } from './stamp';

export const TILE_IS_FULL = `A tile holds at most ${MAX_PIECES} pieces: delete some first`;
const FULL = { cure: TILE_IS_FULL };

/** True if the piece stands on the tile now. */
function setDown(desk: Desk, hold: Hold, piece: Piece): boolean {
  const [refusal] = desk.plan.pieces.length < MAX_PIECES ? desk.do(setPiece(desk.plan, piece)) : [FULL];
  if (!refusal) {
    desk.select([piece.id]);
    return true;
  }
  // It was never made, so nobody would find it by its size and place.
  const name = `${capital(pieceName(desk.plan, piece))},`;
  hold.refuse(`${refusal.cure.replace(name, 'The new piece')}.`, piece.at);
  return false;
}

export function setStamp(desk: Desk, hold: Hold, at: Xy): void {
  if (desk.stamp.variety !== '') setDown(desk, hold, stampPiece(desk.plan, desk.stamp, at));
}

const FAULT_WORDS = {
  crosses: 'The outline crosses itself: take back its last corners and draw on without crossing the line.',
  small: 'The outline is too small for a piece: draw on, or clear it.',
};

/** Closes the outline that is being drawn; one that makes no piece keeps its corners, to be mended. */
export function closeSketch(desk: Desk, hold: Hold): void {
  const corners = cornersOf(hold.sketch);
  const fault = outlineFault(corners);
  if (fault) hold.refuse(FAULT_WORDS[fault], corners[corners.length - 1]);
  else if (setDown(desk, hold, outlinePiece(desk.plan, desk.stamp.variety, corners))) {
    hold.sketch = [];
    return;
  }
  hold.sketch = corners;
}

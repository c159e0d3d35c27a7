import { outlineOf, pieceBox } from '../../plan/outline';
import type { Piece, Plan, Xy } from '../../plan/plan';
import { isInside, signedDistance } from '../../units/polygon';

/** The topmost piece at a place; a finger may miss by a little. */
export function pieceAt(plan: Plan, at: Xy, reachMm: number): Piece | null {
  let near: Piece | null = null;
  let least = reachMm;
  for (const piece of plan.pieces.toReversed()) {
    const box = pieceBox(piece);
    if (at[0] < box.minX - reachMm || at[0] > box.maxX + reachMm) continue;
    if (at[1] < box.minY - reachMm || at[1] > box.maxY + reachMm) continue;
    const outline = outlineOf(piece);
    if (isInside(outline, at)) return piece;
    const off = signedDistance(outline, at);
    if (off < least) [near, least] = [piece, off];
  }
  return near;
}

/** Gaps between pieces: the shortest line across one, and moving pieces so that one is as wide as wanted. */
import { movePieces } from '../../plan/edit';
import { gapMm, outlineOf, pieceBox } from '../../plan/outline';
import type { Piece, Plan, Xy } from '../../plan/plan';
import type { Polygon } from '../../units/polygon';

type DiscPiece = Extract<Piece, { disc: unknown }>;

export interface GapLine {
  readonly from: Xy;
  readonly to: Xy;
  readonly gapMm: number;
}

/** The shortest line between two pieces' edges; its length is that of gapMm, which is exact for discs. */
export function gapLine(a: Piece, b: Piece): GapLine {
  const gap = gapMm(a, b);
  if ('disc' in a && 'disc' in b) return discLine(a, b, gap);
  const [one, other] = [nearest(outlineOf(a), outlineOf(b)), nearest(outlineOf(b), outlineOf(a))];
  return one.apart <= other.apart
    ? { from: one.corner, to: one.foot, gapMm: gap }
    : { from: other.foot, to: other.corner, gapMm: gap };
}

function discLine(a: DiscPiece, b: DiscPiece, gap: number): GapLine {
  const apart = Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1]) || 1;
  const [ux, uy] = [(b.at[0] - a.at[0]) / apart, (b.at[1] - a.at[1]) / apart];
  const radius = a.disc.diameterMm / 2;
  const from: Xy = [a.at[0] + ux * radius, a.at[1] + uy * radius];
  return { from, to: [from[0] + ux * gap, from[1] + uy * gap], gapMm: gap };
}

/** Corner of one polygon nearest to the sides of the other. */
function nearest(corners: Polygon, sides: Polygon): { corner: Xy; foot: Xy; apart: number } {
  let best = { corner: corners[0], foot: sides[0], apart: Infinity };
  for (const corner of corners) {
    let last = sides[sides.length - 1];
    for (const next of sides) {
      const foot = footOn(corner, last, next);
      const apart = Math.hypot(foot[0] - corner[0], foot[1] - corner[1]);
      if (apart < best.apart) best = { corner, foot, apart };
      last = next;
    }
  }
  return best;
}

function footOn(point: Xy, from: Xy, to: Xy): Xy {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((point[0] - from[0]) * dx + (point[1] - from[1]) * dy) / square;
  const t = Math.min(1, Math.max(0, along));
  return [from[0] + t * dx, from[1] + t * dy];
}

interface Neighbours {
  readonly piece: Piece;
  readonly other: Piece;
  readonly gapMm: number;
}

/** The moved piece and the standing one that are nearest to each other, if any are within reach. */
function nearestPair(plan: Plan, moved: ReadonlySet<string>, reachMm: number): Neighbours | null {
  let best: Neighbours | null = null;
  const standing = plan.pieces.filter((piece) => !moved.has(piece.id));
  for (const piece of plan.pieces) {
    if (!moved.has(piece.id)) continue;
    const box = pieceBox(piece);
    for (const other of standing) {
      const far = pieceBox(other);
      const apartX = Math.max(far.minX - box.maxX, box.minX - far.maxX);
      const apartY = Math.max(far.minY - box.maxY, box.minY - far.maxY);
      if (Math.max(apartX, apartY) > reachMm) continue;
      const gap = gapMm(piece, other);
      if (gap <= reachMm && (best === null || gap < best.gapMm)) best = { piece, other, gapMm: gap };
    }
  }
  return best;
}

export interface Snapped {
  readonly dxMm: number;
  readonly dyMm: number;
  /** The gap that was snapped to, for its label; null when nothing was near enough. */
  readonly line: GapLine | null;
}

const STEPS = 12;

/**
 * The shift nearest to the asked one at which the least gap to a standing piece is `wantMm`,
 * if the gap is within `reachMm` of that; else the asked shift.
 */
export function snapToGap(
  plan: Plan,
  ids: readonly string[],
  dxMm: number,
  dyMm: number,
  wantMm: number,
  reachMm: number,
): Snapped {
  const moved = new Set(ids);
  let [dx, dy] = [dxMm, dyMm];
  let found: Neighbours | null = null;
  for (let step = 0; step < STEPS; step++) {
    const now = movePieces(plan, ids, dx, dy).plan;
    found = nearestPair(now, moved, wantMm + reachMm);
    if (found === null) break;
    const wrong = wantMm - found.gapMm;
    if (Math.abs(wrong) < 0.002) break;
    const [ux, uy] = away(found);
    // Overlapping pieces have no gap to measure: walk out in steps of the reach's share.
    const by = found.gapMm > 0 ? wrong : Math.max(wrong, reachMm / 4);
    dx += ux * by;
    dy += uy * by;
  }
  const off = Math.hypot(dx - dxMm, dy - dyMm);
  if (found === null || off > reachMm || Math.abs(found.gapMm - wantMm) > 0.02) {
    return { dxMm, dyMm, line: null };
  }
  return { dxMm: dx, dyMm: dy, line: gapLine(found.piece, found.other) };
}

/** Unit vector that takes the piece away from the other. */
function away({ piece, other, gapMm: gap }: Neighbours): Xy {
  const line = gap > 1e-6 ? gapLine(other, piece) : null;
  const [x, y] = line
    ? [line.to[0] - line.from[0], line.to[1] - line.from[1]]
    : [piece.at[0] - other.at[0], piece.at[1] - other.at[1]];
  const length = Math.hypot(x, y);
  return length === 0 ? [1, 0] : [x / length, y / length];
}

/**
 * Where a piece lies on its tile: outline, bounding box, area, gaps and overlaps, in tile mm.
 * Between discs all of it is exact; a disc becomes a polygon of equal area only where it meets an outline.
 */
import {
  area,
  boxOf,
  convexHull,
  distanceBetween,
  isParted,
  signedDistance,
  turnedAndShifted,
  type Box,
  type Polygon,
} from '../units/polygon';
import { overlapArea } from '../units/overlap';
import type { PlainPiece, Piece, Tile } from './plan';

/** Most that the polygon of a disc leaves the circle, mm. */
const CHORD_ERROR_MM = 0.005;

/** Corners up to which looking for a parting side is cheaper than measuring the overlap. */
const PARTING_CORNERS = 64;

// Plans share the pieces that did not change, so an outline is worked out once for each piece ever made.
const outlines = new WeakMap<Piece, Polygon>();
const boxes = new WeakMap<Piece, Box>();

const parts = new WeakMap<Piece, readonly PlainPiece[]>();

/** The patches of a graft as pieces of one variety each; a plain piece is its own only part. */
export function partsOf(piece: Piece): readonly PlainPiece[] {
  if (!('patches' in piece)) return [piece];
  const known = parts.get(piece);
  if (known) return known;
  const { id, at, turnDeg, edge } = piece;
  const made = piece.patches.map(({ variety, outline }) => ({ id, at, turnDeg, edge, variety, outline }));
  parts.set(piece, made);
  return made;
}

/** Varieties that a piece brings, each once. */
export function varietiesOf(piece: Piece): string[] {
  return [...new Set(partsOf(piece).map(({ variety }) => variety))];
}

/** Corners in the piece's own frame; of a graft those of the hull about its patches. */
export function ownOutline(piece: Piece): Polygon {
  if ('disc' in piece) return discPolygon(piece.disc.diameterMm / 2);
  if ('outline' in piece) return piece.outline;
  return convexHull(piece.patches.flatMap(({ outline }) => outline));
}

export function outlineOf(piece: Piece): Polygon {
  const known = outlines.get(piece);
  if (known) return known;
  const own = ownOutline(piece);
  const outline = turnedAndShifted(own, 'disc' in piece ? 0 : piece.turnDeg, piece.at);
  outlines.set(piece, outline);
  return outline;
}

function discPolygon(radiusMm: number): Polygon {
  const sides = Math.max(24, Math.ceil(Math.PI / Math.acos(1 - CHORD_ERROR_MM / radiusMm)));
  const step = (2 * Math.PI) / sides;
  const equalAreaMm = radiusMm * Math.sqrt(step / Math.sin(step));
  return Array.from({ length: sides }, (_, index) => [
    equalAreaMm * Math.cos(index * step),
    equalAreaMm * Math.sin(index * step),
  ]);
}

export function pieceBox(piece: Piece): Box {
  const known = boxes.get(piece);
  if (known) return known;
  const [x, y] = piece.at;
  const radiusMm = 'disc' in piece ? piece.disc.diameterMm / 2 : 0;
  const box =
    'disc' in piece
      ? { minX: x - radiusMm, minY: y - radiusMm, maxX: x + radiusMm, maxY: y + radiusMm }
      : boxOf(outlineOf(piece));
  boxes.set(piece, box);
  return box;
}

export function pieceAreaMm2(piece: Piece): number {
  if ('disc' in piece) return (Math.PI * piece.disc.diameterMm ** 2) / 4;
  if ('outline' in piece) return area(piece.outline);
  return piece.patches.reduce((sum, { outline }) => sum + area(outline), 0);
}

/** Least distance between the edges of two pieces; 0 where they touch or overlap. */
export function gapMm(a: Piece, b: Piece): number {
  return Math.min(...partsOf(a).flatMap((one) => partsOf(b).map((other) => partGapMm(one, other))));
}

function partGapMm(a: PlainPiece, b: PlainPiece): number {
  if ('disc' in a && 'disc' in b) {
    const apartMm = Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
    return Math.max(0, apartMm - (a.disc.diameterMm + b.disc.diameterMm) / 2);
  }
  if ('disc' in a) return Math.max(0, signedDistance(outlineOf(b), a.at) - a.disc.diameterMm / 2);
  if ('disc' in b) return partGapMm(b, a);
  return distanceBetween(outlineOf(a), outlineOf(b));
}

/** Area that two pieces have in common. */
export function overlapMm2(a: Piece, b: Piece): number {
  const [boxA, boxB] = [pieceBox(a), pieceBox(b)];
  if (boxA.maxX <= boxB.minX || boxB.maxX <= boxA.minX) return 0;
  if (boxA.maxY <= boxB.minY || boxB.maxY <= boxA.minY) return 0;
  let sum = 0;
  for (const one of partsOf(a)) for (const other of partsOf(b)) sum += partOverlapMm2(one, other);
  return sum;
}

function partOverlapMm2(a: PlainPiece, b: PlainPiece): number {
  if ('disc' in a && 'disc' in b) {
    const apartMm = Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
    return lensMm2(a.disc.diameterMm / 2, b.disc.diameterMm / 2, apartMm);
  }
  const [outlineA, outlineB] = [outlineOf(a), outlineOf(b)];
  if (outlineA.length + outlineB.length <= PARTING_CORNERS && isParted(outlineA, outlineB)) return 0;
  return overlapArea(outlineA, outlineB);
}

/** Area common to two circles: two sectors less the kite between the centres and the crossings. */
function lensMm2(radiusA: number, radiusB: number, apart: number): number {
  if (apart >= radiusA + radiusB) return 0;
  if (apart <= Math.abs(radiusA - radiusB)) return Math.PI * Math.min(radiusA, radiusB) ** 2;
  const alongA = (apart * apart + radiusA * radiusA - radiusB * radiusB) / (2 * apart);
  const half = Math.sqrt(Math.max(0, radiusA * radiusA - alongA * alongA));
  const sectors =
    radiusA * radiusA * Math.atan2(half, alongA) + radiusB * radiusB * Math.atan2(half, apart - alongA);
  return sectors - apart * half;
}

/** The tile's edge; of a disc a polygon about it, which leaves it by CHORD_ERROR_MM at most. */
export function tileOutline(tile: Tile): Polygon {
  const half = tile.sizeMm / 2;
  if (tile.shape === 'square') {
    return [
      [-half, -half],
      [half, -half],
      [half, half],
      [-half, half],
    ];
  }
  const sides = Math.ceil(Math.PI / Math.acos(1 - CHORD_ERROR_MM / half));
  const reach = half / Math.cos(Math.PI / sides);
  return turnedAndShifted(
    Array.from({ length: sides }, (_, k) => {
      const angle = (2 * Math.PI * k) / sides;
      return [reach * Math.cos(angle), reach * Math.sin(angle)] as const;
    }),
    0,
    [0, 0],
  );
}

/** New pieces: the stamp's shape at a place, and an outline drawn by hand. */
import { nextPieceId } from '../../plan/edit';
import type { Piece, Plan, Xy } from '../../plan/plan';
import { area, isSimple } from '../../units/polygon';
import { simplifyOutline } from '../../units/simplify';
import type { Stamp } from '../desk.svelte';

const STRIP_LENGTHS = 4;
const MOST_CORNERS = 60;
const TOLERANCE_MM = 0.1;
/** Outlines smaller than this are slips of the hand. */
const LEAST_AREA_MM2 = 1;

/** To 0.01 mm, finer than any saw. */
function tidy(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

export function stampPiece(plan: Plan, stamp: Stamp, at: Xy): Piece {
  const placed = {
    id: nextPieceId(plan),
    variety: stamp.variety,
    at: [tidy(at[0]), tidy(at[1])] as const,
    turnDeg: 0,
  };
  if (stamp.shape === 'disc') return { ...placed, disc: { diameterMm: stamp.sizeMm } };
  const half = stamp.sizeMm / 2;
  const halfLong = stamp.shape === 'strip' ? half * STRIP_LENGTHS : half;
  const outline: Xy[] = [
    [-half, -halfLong],
    [half, -halfLong],
    [half, halfLong],
    [-half, halfLong],
  ];
  return { ...placed, outline };
}

/** The corners of a drawn line that tell its form. */
export function cornersOf(drawn: readonly Xy[]): Xy[] {
  return drawn.length < 3 ? [...drawn] : simplifyOutline(drawn, MOST_CORNERS, TOLERANCE_MM);
}

/** Why corners make no piece: a line that crosses itself has no area to speak of, so that is asked first. */
export function outlineFault(corners: readonly Xy[]): 'crosses' | 'small' | null {
  if (corners.length > 3 && !isSimple(corners)) return 'crosses';
  return corners.length < 3 || Math.abs(area(corners)) < LEAST_AREA_MM2 ? 'small' : null;
}

/** A piece of three corners or more, its own frame about the middle of its box. */
export function outlinePiece(plan: Plan, variety: string, corners: readonly Xy[]): Piece {
  const middle = [0, 1].map((axis) => {
    const along = corners.map((corner) => corner[axis]);
    return tidy((Math.min(...along) + Math.max(...along)) / 2);
  });
  const [x, y] = middle;
  const outline = corners.map((corner): Xy => [tidy(corner[0] - x), tidy(corner[1] - y)]);
  return { id: nextPieceId(plan), variety, at: [x, y], turnDeg: 0, outline };
}

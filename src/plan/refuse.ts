/**
 * Why a plan of the right shape still cannot be: what the schema cannot say. Place, found and allowed speak of the
 * file; the cure is a sentence for who sees the tile and never the file.
 * Quick enough to judge every move of a drag: boxes are swept from left to right, outlines are worked out once.
 */
import { isSimple, type Polygon } from '../units/polygon';
import { outlineOf, overlapMm2, pieceAreaMm2, pieceBox } from './outline';
import { pairRefusals, placeInFile } from './pair-faults';
import { capital, pieceName } from './piece-name';
import type { Piece, Plan, Refusal, Tile } from './plan';

/** Overlap that rounding and a drawn line may cause, mm2. */
const OVERLAP_MM2 = 0.05;
/** Rounding of places to 0.001 mm may carry an edge this far over the tile's. */
const BEYOND_MM = 0.01;
const LEAST_AREA_MM2 = 0.1;
/** Of piles of pieces, so many are told. */
const MOST_OVERLAPS = 100;
const LARGEST_TILE_MM = 300;

export function refuse(plan: Plan): Refusal[] {
  return [
    ...repeatedIds('varieties', plan.varieties, ({ name }) => `the variety ${name}`),
    ...repeatedIds('pieces', plan.pieces, (piece) => pieceName(plan, piece)),
    ...plan.pairs.flatMap((_, index) => pairRefusals(plan, index)),
    ...plan.pieces.flatMap((_, index) => pieceRefusals(plan, index)),
    ...overlaps(plan),
  ];
}

/** Millimetres for reading: one decimal, two where that would be nothing. */
function mm(value: number): string {
  return `${value.toFixed(value < 0.1 ? 2 : 1)} mm`;
}

function repeatedIds<T extends { readonly id: string }>(
  list: string,
  things: readonly T[],
  nameOf: (thing: T) => string,
): Refusal[] {
  const first = new Map<string, number>();
  return things.flatMap((thing, index) => {
    const { id } = thing;
    const before = first.get(id);
    if (before === undefined) {
      first.set(id, index);
      return [];
    }
    const both = `${capital(nameOf(things[before]))}, and ${nameOf(thing)}`;
    return {
      where: placeInFile(list, index, id),
      found: `the id ${id} again, as in ${list}[${before}]`,
      allowed: 'each id once',
      cure: `${both}, have the same id ${id} in the file: give one of them another`,
    };
  });
}

function pieceRefusals(plan: Plan, index: number): Refusal[] {
  const piece = plan.pieces[index];
  const where = placeInFile('pieces', index, piece.id);
  const refusals: Refusal[] = [];
  if (!plan.varieties.some((variety) => variety.id === piece.variety)) {
    const known = plan.varieties.map((variety) => variety.id).join(', ');
    refusals.push({
      where,
      found: `the variety ${piece.variety}, which is not there`,
      allowed: `one of ${known}`,
      cure: `${capital(pieceName(plan, piece))}, is of a variety “${piece.variety}” that is not there: add it, or give the piece one of ${known}`,
    });
  }
  if ('outline' in piece && !isSimpleOnce(piece.outline)) {
    refusals.push({
      where,
      found: 'an outline that crosses or touches itself',
      allowed: 'an outline that goes once round the piece',
      cure: `The outline of ${pieceName(plan, piece)}, crosses or touches itself: draw the piece again without crossing the line`,
    });
  } else if (pieceAreaMm2(piece) < LEAST_AREA_MM2) {
    refusals.push({
      where,
      found: `an area of ${pieceAreaMm2(piece).toFixed(3)} mm2`,
      allowed: `at least ${LEAST_AREA_MM2} mm2`,
      cure: `${capital(pieceName(plan, piece))}, has next to no area: make it larger or remove it`,
    });
  }
  return [...refusals, ...beyondTile(piece, plan, where)];
}

const simple = new WeakMap<Polygon, boolean>();

/** Moved and turned pieces share their outline, so it is judged once. */
function isSimpleOnce(outline: Polygon): boolean {
  const known = simple.get(outline) ?? isSimple(outline);
  simple.set(outline, known);
  return known;
}

function beyondTile(piece: Piece, plan: Plan, where: string): Refusal[] {
  const { tile } = plan;
  const sizeMm = 2 * reachMm(piece, tile.shape);
  const beyondMm = (sizeMm - tile.sizeMm) / 2;
  if (beyondMm <= BEYOND_MM) return [];
  const enoughMm = Math.ceil(sizeMm - BEYOND_MM);
  const other =
    enoughMm <= LARGEST_TILE_MM ? `choose a tile of at least ${enoughMm} mm` : 'make the piece smaller';
  return [
    {
      where,
      found: `an edge ${mm(beyondMm)} beyond the tile`,
      allowed: `a piece wholly on the ${tile.shape === 'square' ? 'square' : 'disc'} of ${tile.sizeMm} mm`,
      cure: `${capital(pieceName(plan, piece))}, reaches ${mm(beyondMm)} beyond the tile: move it in or ${other}`,
    },
  ];
}

/** How far the piece reaches from the tile's centre, as the tile's shape measures it. */
function reachMm(piece: Piece, shape: Tile['shape']): number {
  if (shape === 'square') {
    const box = pieceBox(piece);
    return Math.max(-box.minX, -box.minY, box.maxX, box.maxY);
  }
  if ('disc' in piece) return Math.hypot(piece.at[0], piece.at[1]) + piece.disc.diameterMm / 2;
  return outlineOf(piece).reduce((farthest, [x, y]) => Math.max(farthest, Math.hypot(x, y)), 0);
}

function overlaps(plan: Plan): Refusal[] {
  const order = plan.pieces
    .map((piece, index) => ({ piece, index, box: pieceBox(piece) }))
    .sort((a, b) => a.box.minX - b.box.minX || a.index - b.index);
  const refusals: Refusal[] = [];
  let open: typeof order = [];
  for (const now of order) {
    open = open.filter((other) => other.box.maxX > now.box.minX);
    for (const other of open) {
      if (other.box.maxY <= now.box.minY || other.box.minY >= now.box.maxY) continue;
      const commonMm2 = overlapMm2(other.piece, now.piece);
      if (commonMm2 <= OVERLAP_MM2) continue;
      refusals.push(overlapRefusal(plan, now, other, commonMm2));
      if (refusals.length >= MOST_OVERLAPS) return refusals;
    }
    open.push(now);
  }
  return refusals;
}

type Numbered = { readonly piece: Piece; readonly index: number };

function overlapRefusal(plan: Plan, one: Numbered, other: Numbered, commonMm2: number): Refusal {
  const [first, second] = one.index < other.index ? [one, other] : [other, one];
  const [under, over] = [pieceName(plan, first.piece), pieceName(plan, second.piece)];
  return {
    where: placeInFile('pieces', second.index, second.piece.id),
    found: `${commonMm2.toFixed(commonMm2 < 10 ? 1 : 0)} mm2 on top of ${placeInFile('pieces', first.index, first.piece.id)}`,
    allowed: 'pieces that touch or stand apart',
    cure: `${capital(over)}, lies on ${under}: move or turn one of them, or make it smaller`,
  };
}

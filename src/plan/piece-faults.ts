/** Why a piece cannot be, wherever in the plan it stands: its variety, its form, its place on the tile. */
import { isSimple, type Polygon } from '../units/polygon';
import { outlineOf, partsOf, pieceAreaMm2, pieceBox, varietiesOf } from './outline';
import { capital, pieceName } from './piece-name';
import { LARGEST_TILE_MM, type Piece, type Plan, type Refusal, type Tile } from './plan';

/** Rounding of places to 0.001 mm may carry an edge this far over the tile's. */
const BEYOND_MM = 0.01;
const LEAST_AREA_MM2 = 0.1;

/** Millimetres for reading: one decimal, two where that would be nothing. */
function mm(value: number): string {
  return `${value.toFixed(value < 0.1 ? 2 : 1)} mm`;
}

/** What is wrong with a piece by itself, wherever in the file it stands. */
export function pieceRefusals(plan: Plan, piece: Piece, where: string): Refusal[] {
  const refusals: Refusal[] = [];
  for (const id of varietiesOf(piece)) {
    if (plan.varieties.some((variety) => variety.id === id)) continue;
    const known = plan.varieties.map((variety) => variety.id).join(', ');
    refusals.push({
      where,
      found: `the variety ${id}, which is not there`,
      allowed: `one of ${known}`,
      cure: `${capital(pieceName(plan, piece))}, is of a variety “${id}” that is not there: add it, or give the piece one of ${known}`,
    });
  }
  refusals.push(...overRefusals(plan, piece, where));
  const outlines = partsOf(piece).flatMap((part) => ('outline' in part ? [part.outline] : []));
  if (!outlines.every(isSimpleOnce)) {
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

/** Only of a lapped seam one side lies over the other, and it is of the piece. */
function overRefusals(plan: Plan, piece: Piece, where: string): Refusal[] {
  if (!('patches' in piece)) return [];
  const own = varietiesOf(piece);
  return (piece.seams ?? []).flatMap(({ is, over }, k) =>
    over === undefined || (is === 'lapped' && own.includes(over))
      ? []
      : [
          {
            where,
            found: `“over” ${over} of the seam ${k + 1}, which is ${is}`,
            allowed: `“over” of lapped seams only, and there one of ${own.join(', ')}`,
            cure: `${capital(pieceName(plan, piece))}, says of its seam ${k + 1} that “${over}” lies over the other side: that can be of a lapped seam only, and of a variety of the piece. Draw or cut the piece again`,
          },
        ],
  );
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

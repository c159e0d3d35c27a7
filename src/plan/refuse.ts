/**
 * Why a plan of the right shape still cannot be: what the schema cannot say, each with piece, place and cure.
 * Quick enough to judge every move of a drag: boxes are swept from left to right, outlines are worked out once.
 */
import { isSimple, type Polygon } from '../units/polygon';
import { outlineOf, overlapMm2, pieceAreaMm2, pieceBox } from './outline';
import type { Pair, Piece, Plan, Refusal, Tile } from './plan';

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
    ...repeatedIds('varieties', plan.varieties),
    ...repeatedIds('pieces', plan.pieces),
    ...plan.pairs.flatMap((_, index) => pairRefusals(plan, index)),
    ...plan.pieces.flatMap((_, index) => pieceRefusals(plan, index)),
    ...overlaps(plan.pieces),
  ];
}

function place(list: string, index: number, id: string): string {
  return `${list}[${index}] (${id})`;
}

/** Millimetres for reading: one decimal, two where that would be nothing. */
function mm(value: number): string {
  return `${value.toFixed(value < 0.1 ? 2 : 1)} mm`;
}

function repeatedIds(list: string, things: readonly { readonly id: string }[]): Refusal[] {
  const first = new Map<string, number>();
  return things.flatMap(({ id }, index) => {
    const before = first.get(id);
    if (before === undefined) {
      first.set(id, index);
      return [];
    }
    return {
      where: place(list, index, id),
      found: `the id ${id} again, as in ${list}[${before}]`,
      allowed: 'each id once',
      cure: `Give ${list}[${index}] another id than ${id}`,
    };
  });
}

function pairRefusals(plan: Plan, index: number): Refusal[] {
  const pair = plan.pairs[index];
  const where = place('pairs', index, `${pair.a} with ${pair.b}`);
  const refusals = strangers(plan, pair, where);
  const isSame = (other: Pair) =>
    (other.a === pair.a && other.b === pair.b) || (other.a === pair.b && other.b === pair.a);
  if (pair.a === pair.b) {
    refusals.push({
      where,
      found: `the variety ${pair.a} paired with itself`,
      allowed: 'two different varieties: pieces of one variety always fuse',
      cure: `Remove ${where} or name another variety in it`,
    });
  } else if (plan.pairs.findIndex(isSame) < index) {
    refusals.push({
      where,
      found: `${pair.a} with ${pair.b} a second time`,
      allowed: 'each pair once, in either order',
      cure: `Remove ${where} or join it with the first`,
    });
  }
  return [...refusals, ...acceptanceRefusals(pair, where)];
}

function strangers(plan: Plan, pair: Pair, where: string): Refusal[] {
  const known = plan.varieties.map((variety) => variety.id);
  return [...new Set([pair.a, pair.b])]
    .filter((id) => !known.includes(id))
    .map((id) => ({
      where,
      found: `the variety ${id}, which is not there`,
      allowed: `one of ${known.join(', ')}`,
      cure: `Add a variety ${id}, or name one that is there in ${where}`,
    }));
}

function acceptanceRefusals(pair: Pair, where: string): Refusal[] {
  const refusals: Refusal[] = [];
  if (pair.acceptance !== undefined && pair.related !== undefined) {
    refusals.push({
      where,
      found: 'both acceptance and related',
      allowed: 'one of the two: related stands in place of acceptance',
      cure: `Remove acceptance or related from ${where}`,
    });
  }
  if (typeof pair.acceptance === 'object' && pair.acceptance.took > pair.acceptance.tried) {
    const { took, tried } = pair.acceptance;
    refusals.push({
      where: `${where}.acceptance`,
      found: `${took} took of ${tried} tried`,
      allowed: 'took no greater than tried',
      cure: `Lower took to ${tried} or raise tried to ${took}`,
    });
  }
  return refusals;
}

function pieceRefusals(plan: Plan, index: number): Refusal[] {
  const piece = plan.pieces[index];
  const where = place('pieces', index, piece.id);
  const refusals: Refusal[] = [];
  if (!plan.varieties.some((variety) => variety.id === piece.variety)) {
    const known = plan.varieties.map((variety) => variety.id).join(', ');
    refusals.push({
      where,
      found: `the variety ${piece.variety}, which is not there`,
      allowed: `one of ${known}`,
      cure: `Give piece ${piece.id} one of the varieties ${known}, or add a variety ${piece.variety}`,
    });
  }
  if ('outline' in piece && !isSimpleOnce(piece.outline)) {
    refusals.push({
      where,
      found: 'an outline that crosses or touches itself',
      allowed: 'an outline that goes once round the piece',
      cure: `Draw piece ${piece.id} again without crossing your own line`,
    });
  } else if (pieceAreaMm2(piece) < LEAST_AREA_MM2) {
    refusals.push({
      where,
      found: `an area of ${pieceAreaMm2(piece).toFixed(3)} mm2`,
      allowed: `at least ${LEAST_AREA_MM2} mm2`,
      cure: `Make piece ${piece.id} larger or remove it`,
    });
  }
  return [...refusals, ...beyondTile(piece, plan.tile, where)];
}

const simple = new WeakMap<Polygon, boolean>();

/** Moved and turned pieces share their outline, so it is judged once. */
function isSimpleOnce(outline: Polygon): boolean {
  const known = simple.get(outline) ?? isSimple(outline);
  simple.set(outline, known);
  return known;
}

function beyondTile(piece: Piece, tile: Tile, where: string): Refusal[] {
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
      cure: `Piece ${piece.id} reaches ${mm(beyondMm)} beyond the tile: move it in or ${other}`,
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

function overlaps(pieces: readonly Piece[]): Refusal[] {
  const order = pieces
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
      refusals.push(overlapRefusal(now, other, commonMm2));
      if (refusals.length >= MOST_OVERLAPS) return refusals;
    }
    open.push(now);
  }
  return refusals;
}

type Numbered = { readonly piece: Piece; readonly index: number };

function overlapRefusal(one: Numbered, other: Numbered, commonMm2: number): Refusal {
  const [first, second] = one.index < other.index ? [one, other] : [other, one];
  const { id } = second.piece;
  return {
    where: place('pieces', second.index, id),
    found: `${commonMm2.toFixed(commonMm2 < 10 ? 1 : 0)} mm2 on top of ${place('pieces', first.index, first.piece.id)}`,
    allowed: 'pieces that touch or stand apart',
    cure: `Piece ${id} lies on piece ${first.piece.id}: move or turn one of them, or make it smaller`,
  };
}

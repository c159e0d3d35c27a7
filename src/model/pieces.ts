/**
 * The pieces whose rims grow, by number (State.origin); 0 is none. Pieces set on day 0 come first; what a step cuts,
 * moves or adds comes after them, each number made from an older one or from stock. Numbers are never used again.
 */
import { doubleColumns } from './cell-list';
import type { PieceTable } from './layout';

export interface Pieces {
  count: number;
  variety: Uint8Array;
  /** Day on which the cut edges have healed; 0 for a grown rim. */
  healedDay: Float64Array;
  /** Day until which the edges count as freshly cut; -Infinity for a grown rim. */
  freshUntilDay: Float64Array;
  /** Number of the name that this piece got when it was made, 0 for none: see plan/steps.ts. */
  name: Uint16Array;
  /** The piece it was cut or moved from, 0 for none; always a smaller number. */
  parent: Uint16Array;
  /** Pieces of one stock were one colony when a step parted them: they rejoin without a coin. 0 before any step. */
  stock: Uint16Array;
}

const MOST = 65_535;

export function createPieces(table: PieceTable): Pieces {
  return {
    count: table.count,
    variety: table.variety.slice(),
    healedDay: table.healedDay.slice(),
    freshUntilDay: table.freshUntilDay.slice(),
    name: table.name.slice(),
    parent: new Uint16Array(table.count + 1),
    stock: new Uint16Array(table.count + 1),
  };
}

/** Its number. */
export function addPiece(pieces: Pieces, like: NewPiece): number {
  const number = pieces.count + 1;
  if (number > MOST) throw new Error(`more than ${MOST} pieces were cut on one tile`);
  if (number >= pieces.variety.length) doubleColumns(pieces);
  pieces.count = number;
  pieces.variety[number] = like.variety;
  pieces.healedDay[number] = like.healedDay;
  pieces.freshUntilDay[number] = like.freshUntilDay;
  pieces.name[number] = like.name;
  pieces.parent[number] = like.parent;
  pieces.stock[number] = like.stock;
  return number;
}

/** One row of Pieces. */
export interface NewPiece {
  readonly variety: number;
  readonly healedDay: number;
  readonly freshUntilDay: number;
  readonly name: number;
  readonly parent: number;
  readonly stock: number;
}

/** By piece number: 1 where the piece, or one it was cut or moved from, has this name. */
export function named(pieces: Pieces, name: number): Uint8Array {
  const is = new Uint8Array(pieces.count + 1);
  for (let o = 1; o <= pieces.count; o++) is[o] = pieces.name[o] === name ? 1 : is[pieces.parent[o]];
  return is;
}

/** Whether two pieces rejoin without a coin: one colony, parted by a step. */
export function isKin({ stock, parent }: Pieces, a: number, b: number): boolean {
  return stock[a] !== 0 && stock[a] === stock[b] && (parent[a] !== 0 || parent[b] !== 0);
}

/**
 * Before a step parts colonies: the pieces of each become one stock, together with what they were parted from before.
 * `colony` gives the root by piece.
 */
export function takeStock(pieces: Pieces, colony: Uint16Array): void {
  const { count, stock } = pieces;
  for (let o = 1; o <= count; o++) {
    const [own, root] = [stock[o], colony[o]];
    const other = stock[root];
    if (own === other && own !== 0) continue;
    const keep = Math.min(own || root, other || root);
    if (own !== 0 || other !== 0)
      for (let k = 1; k <= count; k++) {
        if (stock[k] !== 0 && (stock[k] === own || stock[k] === other)) stock[k] = keep;
      }
    stock[o] = keep;
    stock[root] = keep;
  }
}

/**
 * The pieces whose rims grow, by number (State.origin); 0 is none. Pieces set on day 0 come first; what a step cuts,
 * moves or adds comes after them, each number made from an older one or from stock. Numbers are never used again.
 */
import { doubled } from './cell-list';
import type { PieceTable } from './layout';

export interface Pieces {
  count: number;
  variety: Uint8Array;
  /** Day on which the cut edges have healed; 0 for a grown rim. */
  healedDay: Float64Array;
  /** Day until which the edges count as freshly cut; -Infinity for a grown rim. */
  freshUntilDay: Float64Array;
  /** Number of the name that this piece got when it was made, 0 for none: see Layout.names. */
  name: Uint16Array;
  /** The piece it was cut or moved from, 0 for none; always a smaller number. */
  parent: Uint16Array;
  /** Pieces of one stock were one colony once: they rejoin without a coin. The smallest number among them. */
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
    stock: table.stock.slice(),
  };
}

/** Its number. */
export function addPiece(pieces: Pieces, like: NewPiece): number {
  const number = pieces.count + 1;
  if (number > MOST) throw new Error(`more than ${MOST} pieces were cut on one tile`);
  if (number >= pieces.variety.length) {
    pieces.variety = doubled(pieces.variety);
    pieces.healedDay = doubled(pieces.healedDay);
    pieces.freshUntilDay = doubled(pieces.freshUntilDay);
    pieces.name = doubled(pieces.name);
    pieces.parent = doubled(pieces.parent);
    pieces.stock = doubled(pieces.stock);
  }
  pieces.count = number;
  pieces.variety[number] = like.variety;
  pieces.healedDay[number] = like.healedDay;
  pieces.freshUntilDay[number] = like.freshUntilDay;
  pieces.name[number] = like.name;
  pieces.parent[number] = like.parent;
  pieces.stock[number] = like.stock ?? number;
  return number;
}

/** One row of Pieces; without a stock it is a stock of its own. */
export interface NewPiece {
  readonly variety: number;
  readonly healedDay: number;
  readonly freshUntilDay: number;
  readonly name: number;
  readonly parent: number;
  readonly stock?: number;
}

/** By piece number: 1 where the piece, or one it was cut or moved from, has this name. */
export function named(pieces: Pieces, name: number): Uint8Array {
  const is = new Uint8Array(pieces.count + 1);
  for (let o = 1; o <= pieces.count; o++) is[o] = pieces.name[o] === name ? 1 : is[pieces.parent[o]];
  return is;
}

/** Two stocks become one, as their colonies have. */
export function joinStocks({ stock, count }: Pieces, a: number, b: number): void {
  const [keep, drop] = [Math.min(stock[a], stock[b]), Math.max(stock[a], stock[b])];
  if (keep === drop) return;
  for (let o = 1; o <= count; o++) if (stock[o] === drop) stock[o] = keep;
}

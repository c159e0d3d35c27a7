/**
 * A grown tile cut anew: squares of its tissue, dealt out in another order onto the same places. Each patch of one
 * colour in a square becomes a piece of its own, since a piece of the engine has one colour; together they are the graft.
 */
import type { Layout, PieceTable } from '../model/layout';
import { draw } from '../model/noise';
import { BARE, type State } from '../model/state';

/** First cells of the squares that hold nothing but tissue: the rim falls off. */
function wholeSquares(state: State, side: number): number[] {
  const { columns, rows } = state.layout;
  const squares: number[] = [];
  for (let r = 1; r + side < rows; r += side)
    for (let c = 1; c + side < columns; c += side) {
      const first = r * columns + c;
      if (cellsOf(first, side, columns).every((i) => isTissue(state.variety[i]))) squares.push(first);
    }
  return squares;
}

function isTissue(variety: number): boolean {
  return variety !== 0 && variety !== BARE;
}

function cellsOf(first: number, side: number, columns: number): number[] {
  return Array.from({ length: side * side }, (_, k) => first + Math.floor(k / side) * columns + (k % side));
}

/** The numbers 0 to n - 1 in an order drawn by `key`. */
function shuffled(n: number, key: number): number[] {
  return Array.from({ length: n }, (_, k) => k).sort((a, b) => draw(key, a, 0) - draw(key, b, 0));
}

export function recut(
  layout: Layout,
  state: State,
  squareMm: number,
  key: number,
  healingDays: number,
): Layout {
  const { columns, cellMm } = layout;
  const side = Math.round(squareMm / cellMm);
  const squares = wholeSquares(state, side);
  const order = shuffled(squares.length, key);
  const dealt = new Uint8Array(state.variety.length);
  squares.forEach((to, k) => {
    const from = cellsOf(squares[order[k]], side, columns);
    cellsOf(to, side, columns).forEach((cell, at) => (dealt[cell] = state.variety[from[at]]));
  });
  const piece = new Uint16Array(dealt.length);
  const varieties = [0];
  for (const first of squares) {
    const inSquare = new Set(cellsOf(first, side, columns));
    for (const cell of inSquare) {
      if (piece[cell] !== 0) continue;
      varieties.push(dealt[cell]);
      fill(piece, dealt, cell, varieties.length - 1, inSquare, columns);
    }
  }
  const count = varieties.length - 1;
  const pieces: PieceTable = {
    count,
    variety: Uint8Array.from(varieties),
    healedDay: new Float64Array(count + 1).fill(healingDays),
    freshUntilDay: new Float64Array(count + 1).fill(healingDays + 30),
    name: Uint16Array.from({ length: count + 1 }, (_, k) => k),
    graft: new Uint16Array(count + 1),
  };
  return { ...layout, piece, pieces, startDay: new Float32Array(dealt.length).fill(healingDays) };
}

/** Numbers one patch of one colour within a square. */
function fill(
  piece: Uint16Array,
  dealt: Uint8Array,
  start: number,
  number: number,
  inSquare: ReadonlySet<number>,
  columns: number,
): void {
  const waiting = [start];
  piece[start] = number;
  for (let cell = waiting.pop(); cell !== undefined; cell = waiting.pop())
    for (const next of [cell - 1, cell + 1, cell - columns, cell + columns]) {
      if (!inSquare.has(next) || piece[next] !== 0 || dealt[next] !== dealt[start]) continue;
      piece[next] = number;
      waiting.push(next);
    }
}

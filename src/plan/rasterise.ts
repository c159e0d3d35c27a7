/**
 * A piece as cells: those whose centres lie inside its outline, each with the day at which its rim stands there.
 * Distances are worked out within HEART_MM of the outline only; what lies deeper is as old as if it lay there.
 */
import type { Layout } from '../model/layout';
import { crossingsAt, partBetween } from '../units/scanline';
import { outlineOf, pieceBox } from './outline';
import type { PlainPiece, Xy } from './plan';

/** How deep inside a piece the distance to its outline is told apart, mm. */
const HEART_MM = 3;

/** What of a tile a piece is laid on. */
export type Grid = Pick<Layout, 'columns' | 'cellMm' | 'inside'>;

/** The part of the grid that a piece's box covers. */
interface Window {
  readonly left: number;
  readonly top: number;
  readonly columns: number;
  readonly rows: number;
}

/** Cells of a piece in rising order, each with its depth behind the outline in mm, HEART_MM at most. */
export interface PieceCells {
  readonly cells: Int32Array;
  readonly depthMm: Float64Array;
}

export function rasterise(grid: Grid, piece: PlainPiece): PieceCells {
  const { columns, cellMm, inside } = grid;
  const window = windowOf(grid, piece);
  const depthMm =
    'disc' in piece
      ? discDepths(grid, window, piece.at, piece.disc.diameterMm / 2)
      : outlineDepths(grid, window, outlineOf(piece));
  const cells: number[] = [];
  const depths: number[] = [];
  for (let k = 0; k < depthMm.length; k++) {
    const c = window.left + (k % window.columns);
    const r = window.top + Math.floor(k / window.columns);
    const i = r * columns + c;
    if (!(depthMm[k] >= 0) || inside[i] === 0) continue;
    cells.push(i);
    depths.push(depthMm[k]);
  }
  if (cells.length === 0) {
    // too small to hold a cell's centre: it takes the cell that it lies on
    const box = pieceBox(piece);
    const c = Math.round((box.minX + box.maxX) / 2 / cellMm + (columns - 1) / 2);
    const r = Math.round((box.minY + box.maxY) / 2 / cellMm + (columns - 1) / 2);
    const i = r * columns + c;
    if (inside[i] === 1) {
      cells.push(i);
      depths.push(0);
    }
  }
  return { cells: Int32Array.from(cells), depthMm: Float64Array.from(depths) };
}

function windowOf(grid: Grid, piece: PlainPiece): Window {
  const { columns, cellMm } = grid;
  const middle = (columns - 1) / 2;
  const box = pieceBox(piece);
  const first = (mm: number): number => Math.max(1, Math.floor(mm / cellMm + middle));
  const last = (mm: number): number => Math.min(columns - 2, Math.ceil(mm / cellMm + middle));
  const [left, top] = [first(box.minX), first(box.minY)];
  return { left, top, columns: last(box.maxX) - left + 1, rows: last(box.maxY) - top + 1 };
}

/** Depth of each cell of the window inside a disc, mm; negative outside. */
function discDepths(grid: Grid, window: Window, at: Xy, radiusMm: number): Float64Array {
  const { cellMm } = grid;
  const middle = (grid.columns - 1) / 2;
  const depth = new Float64Array(window.columns * window.rows);
  for (let k = 0; k < depth.length; k++) {
    const dx = (window.left + (k % window.columns) - middle) * cellMm - at[0];
    const dy = (window.top + Math.floor(k / window.columns) - middle) * cellMm - at[1];
    depth[k] = Math.min(HEART_MM, radiusMm - Math.sqrt(dx * dx + dy * dy));
  }
  return depth;
}

/** Depth of each cell of the window inside an outline, mm; negative outside. */
function outlineDepths(grid: Grid, window: Window, outline: readonly Xy[]): Float64Array {
  const { cellMm } = grid;
  const middle = (grid.columns - 1) / 2;
  const depth = new Float64Array(window.columns * window.rows).fill(-1);
  for (let row = 0; row < window.rows; row++) {
    const y = (window.top + row - middle) * cellMm;
    const crossings = crossingsAt([outline], y);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const from = Math.max(0, Math.ceil(crossings[k] / cellMm + middle) - window.left);
      const to = Math.min(window.columns - 1, Math.floor(crossings[k + 1] / cellMm + middle) - window.left);
      for (let column = from; column <= to; column++) depth[row * window.columns + column] = HEART_MM;
    }
  }
  outline.forEach((corner, k) => {
    const next = outline[(k + 1) % outline.length];
    shallower(depth, grid, window, corner, next);
  });
  return depth;
}

/** Brings the inner cells within HEART_MM of a side to their distance from it. */
function shallower(depth: Float64Array, grid: Grid, window: Window, from: Xy, to: Xy): void {
  const { cellMm } = grid;
  const middle = (grid.columns - 1) / 2;
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const length2 = dx * dx + dy * dy;
  const rowOf = (mm: number): number => mm / cellMm + middle - window.top;
  const columnOf = (mm: number): number => mm / cellMm + middle - window.left;
  const top = Math.max(0, Math.ceil(rowOf(Math.min(from[1], to[1]) - HEART_MM)));
  const bottom = Math.min(window.rows - 1, Math.floor(rowOf(Math.max(from[1], to[1]) + HEART_MM)));
  for (let row = top; row <= bottom; row++) {
    const y = (window.top + row - middle) * cellMm;
    // the part of the side that lies within reach of this row bounds the columns to look at
    const [a, b] = partBetween(from, to, y - HEART_MM, y + HEART_MM);
    const left = Math.max(0, Math.ceil(columnOf(Math.min(a, b) - HEART_MM)));
    const right = Math.min(window.columns - 1, Math.floor(columnOf(Math.max(a, b) + HEART_MM)));
    for (let column = left; column <= right; column++) {
      const k = row * window.columns + column;
      if (depth[k] < 0) continue;
      const px = (window.left + column - middle) * cellMm - from[0];
      const py = y - from[1];
      const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / length2));
      const ex = px - along * dx;
      const ey = py - along * dy;
      depth[k] = Math.min(depth[k], Math.sqrt(ex * ex + ey * ey));
    }
  }
}

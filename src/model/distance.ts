/** Distances on the grid, in cells. */
import { crossingsAt, partBetween } from '../units/scanline';
import { forMarked } from './cell-list';
import type { GridPath } from './cuts';

/**
 * Distance of every cell's centre to the nearest source's centre, exact; +Infinity without sources. Two passes, linear
 * in the number of cells (Meijster, Roerdink & Hesselink 2000, A general algorithm for computing distance transforms
 * in linear time, in: Mathematical Morphology and its Applications to Image and Signal Processing: 331-340).
 */
export function distances(source: Uint8Array, columns: number, rows: number): Float32Array {
  const far = columns + rows;
  const column = new Int32Array(source.length);
  // line by line and not column by column, for the caches
  for (let i = 0; i < source.length; i++)
    column[i] = source[i] === 1 ? 0 : i < columns ? far : Math.min(far, column[i - columns] + 1);
  for (let i = source.length - columns - 1; i >= 0; i--)
    column[i] = Math.min(column[i], column[i + columns] + 1);
  const out = new Float32Array(source.length);
  const from = new Int32Array(columns);
  const begins = new Int32Array(columns);
  for (let row = 0; row < rows; row++) {
    const base = row * columns;
    const to2 = (x: number, at: number): number =>
      (x - at) * (x - at) + column[base + at] * column[base + at];
    let q = 0;
    from[0] = 0;
    begins[0] = 0;
    for (let x = 1; x < columns; x++) {
      while (q >= 0 && to2(begins[q], from[q]) > to2(begins[q], x)) q--;
      if (q < 0) {
        q = 0;
        from[0] = x;
        begins[0] = 0;
        continue;
      }
      const at = from[q];
      const [a, b] = [column[base + at], column[base + x]];
      const meets = Math.floor((x * x - at * at + b * b - a * a) / (2 * (x - at))) + 1;
      if (meets < columns) {
        q++;
        from[q] = x;
        begins[q] = Math.max(0, meets);
      }
    }
    for (let x = columns - 1; x >= 0; x--) {
      const d2 = to2(x, from[q]);
      out[base + x] = d2 >= far * far ? Infinity : Math.sqrt(d2);
      if (x === begins[q] && q > 0) q--;
    }
  }
  return out;
}

/** The same as far as `reach`, and +Infinity beyond: for few sources and a short reach. No source on the outermost cells. */
export function distancesWithin(source: Uint8Array, reach: number, columns: number): Float32Array {
  const out = new Float32Array(source.length).fill(Infinity);
  const whole = Math.floor(reach);
  const steps: { readonly step: number; readonly d: number }[] = [];
  for (let dy = -whole; dy <= whole; dy++)
    for (let dx = -whole; dx <= whole; dx++) {
      const d = Math.sqrt(dx * dx + dy * dy);
      if (d <= reach) steps.push({ step: dy * columns + dx, d });
    }
  forMarked(source, 1, (i) => {
    for (const { step, d } of steps) if (d < out[i + step]) out[i + step] = d;
  });
  return out;
}

/** Lowers `field` to the distance from an open path wherever that is less than `reach`. */
export function lowerAlong(
  field: Float32Array,
  path: GridPath,
  reach: number,
  columns: number,
  rows: number,
): void {
  for (let k = 0; k === 0 || k + 1 < path.length; k++) {
    const from = path[k];
    const to = path[Math.min(k + 1, path.length - 1)];
    const [[x1, y1], [x2, y2]] = [from, to];
    const [dx, dy] = [x2 - x1, y2 - y1];
    const length2 = dx * dx + dy * dy;
    const top = Math.max(0, Math.ceil(Math.min(y1, y2) - reach));
    const bottom = Math.min(rows - 1, Math.floor(Math.max(y1, y2) + reach));
    for (let y = top; y <= bottom; y++) {
      // the part of the segment within reach of this line of cells bounds the columns to look at
      const [a, b] = partBetween(from, to, y - reach, y + reach);
      const left = Math.max(0, Math.ceil(Math.min(a, b) - reach));
      const right = Math.min(columns - 1, Math.floor(Math.max(a, b) + reach));
      for (let x = left; x <= right; x++) {
        const [px, py] = [x - x1, y - y1];
        const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / length2));
        const [ex, ey] = [px - along * dx, py - along * dy];
        const d = Math.sqrt(ex * ex + ey * ey);
        const i = y * columns + x;
        if (d <= reach && d < field[i]) field[i] = d;
      }
    }
  }
}

/** Calls `visit` with each run of cells whose centres lie inside the rings, by the even-odd rule. */
export function forRunsInside(
  rings: readonly GridPath[],
  columns: number,
  rows: number,
  visit: (row: number, first: number, last: number) => void,
): void {
  let [low, high] = [Infinity, -Infinity];
  for (const ring of rings)
    for (const [, y] of ring) {
      low = Math.min(low, y);
      high = Math.max(high, y);
    }
  for (let row = Math.max(0, Math.ceil(low)); row <= Math.min(rows - 1, Math.floor(high)); row++) {
    const crossings = crossingsAt(rings, row);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const first = Math.max(0, Math.ceil(crossings[k]));
      const last = Math.min(columns - 1, Math.ceil(crossings[k + 1]) - 1);
      if (first <= last) visit(row, first, last);
    }
  }
}

/** 1 for each cell whose centre lies inside the rings. */
export function cellsInside(rings: readonly GridPath[], columns: number, rows: number): Uint8Array {
  const inside = new Uint8Array(columns * rows);
  forRunsInside(rings, columns, rows, (row, first, last) => {
    inside.fill(1, row * columns + first, row * columns + last + 1);
  });
  return inside;
}

import type { Tile } from '../plan/plan';

/**
 * Cells beside the tile and the cell on it whose values they borrow, so that smoothing does not eat the tissue
 * at the tile's edge. Pairs in a flat array: cell, source, cell, source.
 */
export function borrowedCells(columns: number, rows: number, cellMm: number, tile: Tile): Int32Array {
  const half = tile.sizeMm / 2 - cellMm;
  const pairs: number[] = [];
  for (let row = 0; row < rows; row++) {
    const y = (row - (rows - 1) / 2) * cellMm;
    for (let column = 0; column < columns; column++) {
      const x = (column - (columns - 1) / 2) * cellMm;
      let scaleX = 1;
      let scaleY = 1;
      if (tile.shape === 'disc') {
        const r = Math.hypot(x, y);
        if (r <= half) continue;
        scaleX = scaleY = half / r;
      } else {
        if (Math.abs(x) <= half && Math.abs(y) <= half) continue;
        scaleX = Math.abs(x) > half ? half / Math.abs(x) : 1;
        scaleY = Math.abs(y) > half ? half / Math.abs(y) : 1;
      }
      const c = Math.round((x * scaleX) / cellMm + (columns - 1) / 2);
      const r = Math.round((y * scaleY) / cellMm + (rows - 1) / 2);
      pairs.push(row * columns + column, r * columns + c);
    }
  }
  return Int32Array.from(pairs);
}

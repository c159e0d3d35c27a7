/** Blurs over a row-major grid; edges repeat their last value. Scratch is the caller's, so nothing allocates per frame. */

/** Mean over a square of 2*radius+1 cells, in place; two calls in a row give a near-Gaussian of sd 0.82*radius. */
export function boxBlur(
  grid: Float32Array,
  columns: number,
  rows: number,
  radius: number,
  scratch: Float32Array,
): void {
  if (radius < 1) return;
  const share = 1 / (2 * radius + 1);
  for (let row = 0; row < rows; row++) {
    const start = row * columns;
    const end = start + columns - 1;
    let sum = grid[start] * (radius + 1);
    for (let k = 1; k <= radius; k++) sum += grid[Math.min(start + k, end)];
    for (let c = 0; c < columns; c++) {
      scratch[start + c] = sum * share;
      sum += grid[Math.min(start + c + radius + 1, end)] - grid[Math.max(start + c - radius, start)];
    }
  }
  // Down the columns all at once, row by row, so that memory is read in order.
  const sums = new Float32Array(columns);
  for (let k = -radius; k <= radius; k++) {
    const from = Math.min(Math.max(k, 0), rows - 1) * columns;
    for (let c = 0; c < columns; c++) sums[c] += scratch[from + c];
  }
  for (let row = 0; row < rows; row++) {
    const at = row * columns;
    const add = Math.min(row + radius + 1, rows - 1) * columns;
    const drop = Math.max(row - radius, 0) * columns;
    for (let c = 0; c < columns; c++) {
      grid[at + c] = sums[c] * share;
      sums[c] += scratch[add + c] - scratch[drop + c];
    }
  }
}

/** One pass of the kernel 1 2 1 / 4 along both axes, in place: sd 0.71 cells. */
export function softenGrid(grid: Float32Array, columns: number, rows: number, scratch: Float32Array): void {
  for (let row = 0; row < rows; row++) {
    const start = row * columns;
    const last = start + columns - 1;
    scratch[start] = (3 * grid[start] + grid[start + 1]) * 0.25;
    for (let i = start + 1; i < last; i++) scratch[i] = (grid[i - 1] + 2 * grid[i] + grid[i + 1]) * 0.25;
    scratch[last] = (3 * grid[last] + grid[last - 1]) * 0.25;
  }
  const size = columns * rows;
  for (let row = 0; row < rows; row++) {
    const start = row * columns;
    const up = row > 0 ? -columns : 0;
    const down = row < rows - 1 ? columns : 0;
    for (let i = start; i < start + columns && i < size; i++) {
      grid[i] = (scratch[i + up] + 2 * scratch[i] + scratch[i + down]) * 0.25;
    }
  }
}

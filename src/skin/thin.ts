/** Thins a band of cells to a line one cell wide (Guo and Hall 1989, Commun. ACM 32: 359-373, from memory). */

/** Neighbours in order round the cell: up, up right, right, and so on. */
export function ring(columns: number): readonly number[] {
  return [-columns, 1 - columns, 1, 1 + columns, columns, columns - 1, -1, -1 - columns];
}

/** Clears cells of `mask` until lines remain; `cells` are those set. Border cells must be clear. Returns what is left. */
export function thin(mask: Uint8Array, cells: readonly number[], columns: number): number[] {
  const around = ring(columns);
  let left = [...cells];
  for (let changed = true; changed;) {
    changed = false;
    for (const even of [true, false]) {
      const gone = left.filter((i) => removable(mask, i, around, even));
      for (const i of gone) mask[i] = 0;
      if (gone.length > 0) {
        changed = true;
        left = left.filter((i) => mask[i] !== 0);
      }
    }
  }
  // Corners of stairs: a cell whose two side neighbours touch each other anyway.
  for (const i of left) if (isCorner(mask, i, around)) mask[i] = 0;
  return left.filter((i) => mask[i] !== 0);
}

function removable(mask: Uint8Array, i: number, around: readonly number[], even: boolean): boolean {
  const [n, ne, e, se, s, sw, w, nw] = around.map((step) => mask[i + step]);
  const parts = (~n & (ne | e) & 1) + (~e & (se | s) & 1) + (~s & (sw | w) & 1) + (~w & (nw | n) & 1);
  if (parts !== 1) return false;
  const pairs = Math.min(
    (nw | n) + (ne | e) + (se | s) + (sw | w),
    (n | ne) + (e | se) + (s | sw) + (w | nw),
  );
  if (pairs < 2 || pairs > 3) return false;
  return even ? ((s | sw | (nw ^ 1)) & w) === 0 : ((n | ne | (se ^ 1)) & e) === 0;
}

/** A corner that can go: two side neighbours meet at it, and all its neighbours stay linked without it (Yokoi 1975). */
function isCorner(mask: Uint8Array, i: number, around: readonly number[]): boolean {
  let corner = false;
  let parts = 0;
  for (let k = 0; k < 8; k += 2) {
    const [side, slant, next] = [k, k + 1, k + 2].map((m) => mask[i + around[m % 8]]);
    if (side !== 0 && next !== 0) corner = true;
    if (side === 0 && (slant !== 0 || next !== 0)) parts++;
  }
  return corner && parts === 1;
}

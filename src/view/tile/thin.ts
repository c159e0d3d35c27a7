/** Thins a band of cells to a line one cell wide (Zhang and Suen 1984, Commun. ACM 27: 236-239, from memory). */

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
  let count = 0;
  let rises = 0;
  for (let k = 0; k < 8; k++) {
    const here = mask[i + around[k]];
    count += here;
    if (here === 0 && mask[i + around[(k + 1) % 8]] !== 0) rises++;
  }
  if (count < 2 || count > 6 || rises !== 1) return false;
  const [up, right, down, left] = [0, 2, 4, 6].map((k) => mask[i + around[k]]);
  return even
    ? up * right * down === 0 && right * down * left === 0
    : up * right * left === 0 && up * down * left === 0;
}

function isCorner(mask: Uint8Array, i: number, around: readonly number[]): boolean {
  for (let k = 0; k < 8; k += 2) {
    const [one, other] = [mask[i + around[k]], mask[i + around[(k + 2) % 8]]];
    if (one === 0 || other === 0) continue;
    // The far side must be clear, else the cell holds a junction together.
    const far = [k + 3, k + 4, k + 5, k + 6, k + 7].some((m) => mask[i + around[m % 8]] !== 0);
    if (!far) return true;
  }
  return false;
}

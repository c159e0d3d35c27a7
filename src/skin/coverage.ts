/**
 * Soft shares of each label around a cell, so that a border between labels can be drawn as a smooth line:
 * labels are names and cannot be blurred, but how much of each lies near can. Kernel 1 4 6 4 1 along both
 * axes (sd one cell); at a coarse cell 1 2 1.
 */
const KERNEL_FINE = [1, 4, 6, 4, 1];
const KERNEL_COARSE = [1, 2, 1];
const BARE = 255;
/** Slots of the shares: 0 empty, 1..8 varieties, 9 bare. */
const SLOTS = 10;

export interface Shares {
  /** Varieties 1 to 4, RGBA. */
  readonly first: Uint8Array<ArrayBuffer>;
  /** Varieties 5 to 8, RGBA. */
  readonly second: Uint8Array<ArrayBuffer>;
  /** Empty in R and bare in G; B and A belong to the surface. */
  readonly surface: Uint8Array<ArrayBuffer>;
}

function slotOf(label: number): number {
  return label === BARE ? SLOTS - 1 : label;
}

export function fillShares(
  label: Uint8Array,
  columns: number,
  rows: number,
  cellMm: number,
  out: Shares,
): void {
  fillPlain(label, out);
  const kernel = cellMm > 0.35 ? KERNEL_COARSE : KERNEL_FINE;
  const reach = (kernel.length - 1) / 2;
  const mixed = mixedCells(label, columns, rows, reach);
  const total = kernel.reduce((a, b) => a + b, 0);
  const scale = 255 / (total * total);
  const sums = new Float32Array(SLOTS);
  for (let row = 0, i = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++, i++) {
      if (mixed[i] === 0) continue;
      sums.fill(0);
      for (let dy = -reach; dy <= reach; dy++) {
        const r = Math.min(Math.max(row + dy, 0), rows - 1) * columns;
        const weightY = kernel[dy + reach] * scale;
        for (let dx = -reach; dx <= reach; dx++) {
          const c = Math.min(Math.max(column + dx, 0), columns - 1);
          sums[slotOf(label[r + c])] += weightY * kernel[dx + reach];
        }
      }
      write(sums, i * 4, out.first, out.second, out.surface);
    }
  }
}

/** Four bytes of a texture at a cell amid its own label, by slot, for first, second and surface; in the machine's order. */
const PLAIN = [0, 1, 2].map((which) => new Uint32Array(Uint8Array.from(plainBytes(which)).buffer));

function plainBytes(which: number): number[] {
  const bytes = new Array<number>(SLOTS * 4).fill(0);
  if (which === 2) bytes[0] = bytes[(SLOTS - 1) * 4 + 1] = 255;
  else for (let k = 0; k < 4; k++) bytes[(1 + which * 4 + k) * 4 + k] = 255;
  return bytes;
}

/** Every cell as if its surroundings were like it: four bytes at once, for most cells need no more. */
function fillPlain(label: Uint8Array, { first, second, surface }: Shares): void {
  const [inFirst, inSecond, inSurface] = PLAIN;
  const [ofFirst, ofSecond, ofSurface] = [first, second, surface].map(
    ({ buffer }) => new Uint32Array(buffer),
  );
  for (let i = 0; i < label.length; i++) {
    const slot = slotOf(label[i]);
    ofFirst[i] = inFirst[slot];
    ofSecond[i] = inSecond[slot];
    ofSurface[i] = inSurface[slot];
  }
}

function write(
  sums: Float32Array,
  at: number,
  first: Uint8Array,
  second: Uint8Array,
  surface: Uint8Array,
): void {
  surface[at] = sums[0] + 0.5;
  surface[at + 1] = sums[SLOTS - 1] + 0.5;
  for (let k = 0; k < 4; k++) {
    first[at + k] = sums[1 + k] + 0.5;
    second[at + k] = sums[5 + k] + 0.5;
  }
}

/** 1 where another label lies within `reach` cells along either axis; a few more are no harm. */
function mixedCells(label: Uint8Array, columns: number, rows: number, reach: number): Uint8Array {
  const across = new Uint8Array(label.length);
  for (let row = 0; row < rows; row++) {
    const start = row * columns;
    for (let i = start; i < start + columns; i++) {
      const unlikeRight = i + 1 < start + columns && label[i] !== label[i + 1];
      const unlikeBelow = i + columns < label.length && label[i] !== label[i + columns];
      if (unlikeRight || unlikeBelow) {
        for (let k = i - reach; k <= i + reach + 1; k++) if (k >= 0 && k < label.length) across[k] = 1;
      }
    }
  }
  const mixed = new Uint8Array(label.length);
  for (let i = 0; i < label.length; i++) {
    if (across[i] === 0) continue;
    for (let k = -reach; k <= reach + 1; k++) {
      const j = i + k * columns;
      if (j >= 0 && j < label.length) mixed[j] = 1;
    }
  }
  return mixed;
}

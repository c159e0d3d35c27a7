/**
 * The look-alike from above: where a ridge is veiled, colours seem to run together as on a fused seam. In truth none
 * crosses, so it is done to the picture alone: near a veiled seam a cell shows the colour of a place a little way off,
 * by a smooth wobble at the scale of polyps that dies out to both sides.
 */
import type { Frame } from '../model/frame';
import { VEILED } from '../model/seam-table';

/** How far from the seam colours are moved, how far they are moved there, and the scale of the wobble, mm. */
const REACH_MM = 2.4;
const MOVE_MM = 2.2;
const SCALE_MM = 1.3;
const BARE = 255;

/** `label` is the frame read at every `step`-th cell; it is changed in place. */
export function runTogether(
  label: Uint8Array,
  frame: Frame,
  step: number,
  columns: number,
  rows: number,
): void {
  const cellMm = frame.cellMm * step;
  const reach = Math.ceil(REACH_MM / cellMm);
  // squared distance to the nearest veiled cell, in cells
  let near: Map<number, number> | null = null;
  for (let row = 0; row < rows; row++) {
    let from = (row * step + step - 1) * frame.columns + step - 1;
    for (let column = 0; column < columns; column++, from += step) {
      if ((frame.seam[from] & 7) !== VEILED) continue;
      near ??= new Map();
      for (let dy = -reach; dy <= reach; dy++)
        for (let dx = -reach; dx <= reach; dx++) {
          const [c, r] = [column + dx, row + dy];
          if (c < 0 || c >= columns || r < 0 || r >= rows) continue;
          const off = dx * dx + dy * dy;
          const i = r * columns + c;
          if (off < (near.get(i) ?? Infinity)) near.set(i, off);
        }
    }
  }
  if (near === null) return;
  const before = label.slice();
  for (const [i, off] of near) {
    const share = 1 - Math.sqrt(off) / reach;
    if (share <= 0 || !isLiving(before[i])) continue;
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const by = (salt: number): number =>
      Math.round(
        ((MOVE_MM * share) / cellMm) * wobble((column * cellMm) / SCALE_MM, (row * cellMm) / SCALE_MM, salt),
      );
    const c = Math.min(columns - 1, Math.max(0, column + by(1)));
    const r = Math.min(rows - 1, Math.max(0, row + by(2)));
    const shown = before[r * columns + c];
    if (isLiving(shown)) label[i] = shown;
  }
}

function isLiving(label: number): boolean {
  return label !== 0 && label !== BARE;
}

/** Smooth noise from -1 to 1 with knots at whole numbers. */
function wobble(x: number, y: number, salt: number): number {
  const [c, r] = [Math.floor(x), Math.floor(y)];
  const [u, v] = [smooth(x - c), smooth(y - r)];
  const top = knot(c, r, salt) * (1 - u) + knot(c + 1, r, salt) * u;
  const bottom = knot(c, r + 1, salt) * (1 - u) + knot(c + 1, r + 1, salt) * u;
  return top * (1 - v) + bottom * v;
}

function smooth(share: number): number {
  return share * share * (3 - 2 * share);
}

function knot(column: number, row: number, salt: number): number {
  let h =
    Math.imul(column + 8192, 0x9e3779b1) ^ Math.imul(row + 8192, 0x85ebca6b) ^ Math.imul(salt, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return ((h ^ (h >>> 15)) >>> 0) / 2147483648 - 1;
}

/**
 * Polyps: sites on a jittered square lattice anchored at the tile's centre, about a millimetre apart.
 * They carry identity, noise and colour, and do not depend on the cell size, so that a preview and the exact run
 * share their pattern and nothing finer than a polyp is invented.
 */
import type { Rules } from './layout';
import { draw, type Keys } from './noise';

export interface Polyps {
  /** Lattice boxes, row-major; polyp number = row * columns + column. */
  readonly columns: number;
  readonly rows: number;
  readonly spacingMm: number;
  /** Millimetres from the tile's centre of the corner of box (0, 0), both ways. */
  readonly cornerMm: number;
  /** Place from the tile's centre, mm. */
  readonly xMm: Float32Array;
  readonly yMm: Float32Array;
  /** What the hash of a polyp starts from: its lattice index counted from the tile's centre. */
  readonly site: Int32Array;
  /** Slowness over the mean, 1 in the mean. */
  readonly slowness: Float32Array;
  /** 0 unborn, 1..8. */
  readonly variety: Uint8Array;
  /** Origin whose rim bore it. */
  readonly origin: Uint16Array;
  /** How often the polyp's place was cleared: each time another polyp is born there. */
  readonly generation: Uint16Array;
  /** Scratch: 1 + the cell that claims an unborn polyp, 0 for none. */
  readonly claim: Int32Array;
}

/** sqrt(12): makes a uniform draw's standard deviation 1. */
const SQRT12 = Math.sqrt(12);

export function createPolyps(layout: Rules, keys: Keys): Polyps {
  const { polypMm, polypJitter } = layout.rates;
  const halfTileMm = ((Math.max(layout.columns, layout.rows) - 2) * layout.cellMm) / 2;
  // two boxes of margin: none at the lattice's edge ever holds a cell, so no neighbour wraps to the next row
  const half = Math.ceil(halfTileMm / polypMm) + 2;
  const columns = 2 * half;
  const count = columns * columns;
  const xMm = new Float32Array(count);
  const yMm = new Float32Array(count);
  const site = new Int32Array(count);
  const slowness = new Float32Array(count);
  for (let j = 0, p = 0; j < columns; j++) {
    for (let i = 0; i < columns; i++, p++) {
      const s = ((j - half + 2048) << 12) | (i - half + 2048);
      site[p] = s;
      xMm[p] = (i - half + 0.5 + polypJitter * (2 * draw(keys.siteX, s, 0) - 1)) * polypMm;
      yMm[p] = (j - half + 0.5 + polypJitter * (2 * draw(keys.siteY, s, 0) - 1)) * polypMm;
      slowness[p] = slownessOf(s, 0, layout, keys);
    }
  }
  return {
    columns,
    rows: columns,
    spacingMm: polypMm,
    cornerMm: -half * polypMm,
    xMm,
    yMm,
    site,
    slowness,
    variety: new Uint8Array(count),
    origin: new Uint16Array(count),
    generation: new Uint16Array(count),
    claim: new Int32Array(count),
  };
}

/** Slowness of the polyp at a site, over the mean. */
export function slownessOf(site: number, generation: number, { rates }: Rules, keys: Keys): number {
  return 1 + rates.roughness * SQRT12 * (draw(keys.slowness, site, generation) - 0.5);
}

/** Scratch: the nine sites around a box. */
const nearX = new Float64Array(9);
const nearY = new Float64Array(9);
const nearPolyp = new Int32Array(9);

/**
 * Writes 1 + the nearest polyp of every cell that lies in the lattice box of `cell`: the nearest site among the nine
 * boxes around it. `cell` lies on the grid, row-major, its middle the tile's.
 */
export function fillBox(
  polyps: Polyps,
  out: Int32Array,
  columns: number,
  rows: number,
  cellMm: number,
  cell: number,
): void {
  const { xMm, yMm, cornerMm, spacingMm } = polyps;
  const x0 = ((cell % columns) - (columns - 1) / 2) * cellMm;
  const y0 = (Math.floor(cell / columns) - (rows - 1) / 2) * cellMm;
  const i = Math.floor((x0 - cornerMm) / spacingMm);
  const j = Math.floor((y0 - cornerMm) / spacingMm);
  for (let k = 0; k < 9; k++) {
    const p = (j - 1 + Math.floor(k / 3)) * polyps.columns + i - 1 + (k % 3);
    nearPolyp[k] = p;
    nearX[k] = xMm[p];
    nearY[k] = yMm[p];
  }
  const column = cell % columns;
  const line = (cell - column) / columns;
  const perBox = { cellMm, cornerMm, spacingMm };
  const left = endOfBox(column, -1, columns, i, perBox);
  const right = endOfBox(column, 1, columns, i, perBox);
  const top = endOfBox(line, -1, rows, j, perBox);
  const bottom = endOfBox(line, 1, rows, j, perBox);
  for (let r = top; r <= bottom; r++) {
    const y = (r - (rows - 1) / 2) * cellMm;
    for (let c = left; c <= right; c++) {
      const x = (c - (columns - 1) / 2) * cellMm;
      let best = 0;
      let least = Infinity;
      for (let k = 0; k < 9; k++) {
        const dx = nearX[k] - x;
        const dy = nearY[k] - y;
        const d = dx * dx + dy * dy;
        if (d < least) {
          least = d;
          best = k;
        }
      }
      out[r * columns + c] = nearPolyp[best] + 1;
    }
  }
}

/** The last column (or row) that lies in `box` with `at`, one way; which box a cell lies in is asked as fillBox asks it. */
function endOfBox(
  at: number,
  step: number,
  cells: number,
  box: number,
  { cellMm, cornerMm, spacingMm }: { cellMm: number; cornerMm: number; spacingMm: number },
): number {
  let end = at;
  for (let next = at + step; next >= 0 && next < cells; next += step) {
    if (Math.floor(((next - (cells - 1) / 2) * cellMm - cornerMm) / spacingMm) !== box) break;
    end = next;
  }
  return end;
}

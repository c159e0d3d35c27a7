/** The tables of seam cells and of verdicts. Rows and nuclei are never renumbered. */

import { doubleColumns } from './cell-list';

/** What a stretch of seam is. The numbers are those of Frame.seam and of the seam table. */
export const FATE = { none: 0, undecided: 1, fused: 2, ridge: 3, lapped: 4, dead: 5 } as const;

/** In Frame.seam in place of `ridge`: one that still looks fused from above. Never in the seam table. */
export const VEILED = 6;

/**
 * One row per seam cell: a cell with a 4-neighbour of a piece of another variety.
 * Rows are numbered from 1; State.row names a cell's row. A row that is no longer on a seam has cell -1.
 */
export interface SeamTable {
  /** Rows made so far, row 0 included. */
  count: number;
  cell: Int32Array;
  /** The cell across: least arrival, then least index, at first contact. */
  partner: Int32Array;
  /** Origin on this side and across, as they were at first contact. */
  own: Uint16Array;
  other: Uint16Array;
  /** Day of contact: the later arrival of the two cells, never before both cut edges have healed. */
  touched: Float32Array;
  /** Day of the verdict; +Infinity while undecided. */
  settled: Float32Array;
  fate: Uint8Array;
  /** Index in the nucleus table, -1 while undecided. */
  nucleus: Int32Array;
}

/** Points at which a verdict fell; the seam around took it by zip. */
export interface NucleusTable {
  count: number;
  day: Float32Array;
  fate: Uint8Array;
  /** Origins on the two sides, smaller first. */
  originA: Uint16Array;
  originB: Uint16Array;
  /** Day until which a ridge looks fused from above, 0 for one that shows from the start: see ridge.ts. */
  veiledUntil: Float32Array;
  /** Of a lapped seam that came so: the variety known to lie over the other. 0: the more aggressive one does. */
  over: Uint8Array;
}

export function createSeam(): SeamTable {
  const size = 1024;
  return {
    count: 1,
    cell: new Int32Array(size).fill(-1),
    partner: new Int32Array(size),
    own: new Uint16Array(size),
    other: new Uint16Array(size),
    touched: new Float32Array(size),
    settled: new Float32Array(size),
    fate: new Uint8Array(size),
    nucleus: new Int32Array(size),
  };
}

export function createNuclei(): NucleusTable {
  const size = 256;
  return {
    count: 0,
    day: new Float32Array(size),
    fate: new Uint8Array(size),
    originA: new Uint16Array(size),
    originB: new Uint16Array(size),
    veiledUntil: new Float32Array(size),
    over: new Uint8Array(size),
  };
}

/** A new undecided row; its number. */
export function addRow(
  seam: SeamTable,
  cell: number,
  partner: number,
  own: number,
  other: number,
  touched: number,
): number {
  if (seam.count === seam.cell.length) doubleColumns(seam);
  const r = seam.count++;
  seam.cell[r] = cell;
  seam.partner[r] = partner;
  seam.own[r] = own;
  seam.other[r] = other;
  seam.touched[r] = touched;
  seam.settled[r] = Infinity;
  seam.fate[r] = FATE.undecided;
  seam.nucleus[r] = -1;
  return r;
}

/** A new nucleus; its number. */
export function addNucleus(
  nuclei: NucleusTable,
  day: number,
  fate: number,
  a: number,
  b: number,
  veiledUntil = 0,
  over = 0,
): number {
  if (nuclei.count === nuclei.day.length) doubleColumns(nuclei);
  const k = nuclei.count++;
  nuclei.day[k] = day;
  nuclei.fate[k] = fate;
  nuclei.originA[k] = Math.min(a, b);
  nuclei.originB[k] = Math.max(a, b);
  nuclei.veiledUntil[k] = veiledUntil;
  nuclei.over[k] = over;
  return k;
}

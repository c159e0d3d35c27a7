/**
 * Seam length by outcome, mm, per pair of varieties and in all.
 * Definition: the seam is the border between origins whose pieces are of unlike variety (bare cells keep their origin,
 * so a dead seam keeps its length); its length is that of boundary.ts. A pair of cells counts only beside a contact:
 * a row of the seam table for the same two varieties that has touched by now. Pieces of one variety make no seam.
 * Tissue that comes to lie against bare skeleton makes no contact either.
 * Each mm is booked to the row of its contact cell (halves where both ends have one), and a row to its fate.
 * Source: Cauchy-Crofton, see boundary.ts, with its bias. Besides, up to one cell goes missing where three
 * varieties meet, for a cell there has one row and up to three neighbours.
 */
import { FATE } from '../model/seam-table';
import type { State } from '../model/state';
import { blankGrid, eachUnlikePair } from './boundary';
import type { SeamMm } from './reading';

/** Unordered pair of the varieties 1..8 as one number: smaller * 16 + larger. */
export function pairKey(a: number, b: number): number {
  return a < b ? a * 16 + b : b * 16 + a;
}

/** Key of the pair that each row was made for, 0 where the row has not touched yet or has left the seam. */
export function touchingPairOfRow(state: State): Uint8Array {
  const { seam, day } = state;
  const varietyOf = state.pieces.variety;
  const keys = new Uint8Array(seam.count);
  for (let row = 1; row < seam.count; row++)
    if (seam.cell[row] >= 0 && seam.touched[row] <= day)
      keys[row] = pairKey(varietyOf[seam.own[row]], varietyOf[seam.other[row]]);
  return keys;
}

/** Length of each row's stretch of seam, mm. */
export function seamLengths(state: State, keyOfRow: Uint8Array): Float64Array {
  const { layout, origin, row } = state;
  const varietyOf = state.pieces.variety;
  const ofRow = new Float64Array(state.seam.count);
  if (state.seam.count <= 1) return ofRow;
  const grid = blankGrid(layout.columns, layout.rows, layout.cellMm);
  const { label } = grid;
  for (let i = 0; i < origin.length; i++) label[i] = varietyOf[origin[i]];
  eachUnlikePair(grid, (i, j, lengthMm, viaA, viaB) => {
    const key = pairKey(label[i], label[j]);
    const rowI = keyOfRow[row[i]] === key ? row[i] : 0;
    const rowJ = keyOfRow[row[j]] === key ? row[j] : 0;
    if (rowI > 0 && rowJ > 0) {
      ofRow[rowI] += lengthMm / 2;
      ofRow[rowJ] += lengthMm / 2;
    } else if (rowI + rowJ > 0) ofRow[rowI + rowJ] += lengthMm;
    else if (keyOfRow[row[viaA]] === key) ofRow[row[viaA]] += lengthMm;
    else if (keyOfRow[row[viaB]] === key) ofRow[row[viaB]] += lengthMm;
  });
  return ofRow;
}

/** Adds up rows by fate; `key` picks one pair of varieties, 0 all. */
export function seamByFate(state: State, ofRow: Float64Array, keyOfRow: Uint8Array, key: number): SeamMm {
  const byFate = new Float64Array(FATE.dead + 1);
  for (let row = 1; row < ofRow.length; row++)
    if (key === 0 || keyOfRow[row] === key) byFate[state.seam.fate[row]] += ofRow[row];
  const [, undecidedMm, fusedMm, ridgeMm, lappedMm, deadMm] = byFate;
  const lengthMm = undecidedMm + fusedMm + ridgeMm + lappedMm + deadMm;
  return { lengthMm, fusedMm, ridgeMm, lappedMm, deadMm, undecidedMm };
}

/**
 * Vein width, mm: the width of straight strips with as much colour border per area.
 * Definition: A / B, A = tissue of colonies that hold at least two varieties, B = length of vein in them: borders
 * between tissue of unlike variety in one colony, where the origins are equal or the contact between them is fused.
 * Stripes read their width, a chequer of side c reads c/2, random squares at half share read c; for one colour alone
 * with border P on all its sides 2 A / P (a disc: d/2). The mean chord of Underwood 1970 (Quantitative Stereology) is
 * pi/2 times this. Null where no colony holds two varieties.
 * Source: Crofton's formula, see boundary.ts (from memory: Santalo 1976).
 * Known bias: corners of a border read 0.93 cells short, so a chequer of 4 mm reads 7 % wide at cell 0.25 mm; reliable
 * above 2 mm.
 */
import { FATE } from '../model/seam-table';
import { BARE, type State } from '../model/state';
import { blankGrid, eachUnlikePair } from './boundary';
import { cellsOf, type Census, varietiesIn } from './census';

/** Tissue area of all colonies of two varieties and more, mm2. */
function fusedTissueMm2(census: Census): number {
  let cells = 0;
  for (let colony = 1; colony < census.colonies; colony++)
    if (varietiesIn(census, colony) > 1) cells += cellsOf(census, colony);
  return cells * census.cellMm2;
}

/** Length of colour border inside colonies, mm. */
function veinMm(state: State, keyOfRow: Uint8Array): number {
  const { layout, origin, colony, variety, row, seam } = state;
  const varietyOf = state.pieces.variety;
  const grid = blankGrid(layout.columns, layout.rows, layout.cellMm);
  const { label } = grid;
  for (let i = 0; i < variety.length; i++) label[i] = variety[i] === BARE ? 0 : variety[i];

  const fusedAt = (cell: number): boolean => keyOfRow[row[cell]] > 0 && seam.fate[row[cell]] === FATE.fused;
  let sum = 0;
  eachUnlikePair(grid, (i, j, lengthMm, viaA, viaB) => {
    const a = origin[i];
    const b = origin[j];
    if (colony[a] !== colony[b]) return;
    const open = varietyOf[a] === varietyOf[b] || fusedAt(i) || fusedAt(j) || fusedAt(viaA) || fusedAt(viaB);
    if (open) sum += lengthMm;
  });
  return sum;
}

export function veinWidthMm(state: State, census: Census, keyOfRow: Uint8Array): number | null {
  const area = fusedTissueMm2(census);
  const length = area > 0 ? veinMm(state, keyOfRow) : 0;
  return length > 0 ? area / length : null;
}

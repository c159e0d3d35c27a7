/**
 * Vein width, mm: the width of straight strips with as much colour border per area.
 * Definition: A / B, A = tissue of colonies that hold at least two varieties, B = length of vein in them: borders
 * between tissue of unlike variety in one colony, where the origins are equal or the contact between them is fused.
 * Stripes read their width, a chequer of side c reads c/2, random squares at half share read c; for one colour alone
 * with border P on all its sides 2 A / P (a disc: d/2). The mean chord of Underwood 1970 (Quantitative Stereology) is
 * pi/2 times this. Null where no colony holds two varieties.
 * Source: Crofton's formula, see boundary.ts (from memory: Santalo 1976). Corners of a border read 0.93 cells short, which
 * goes with the cell: B is read at the cell and at twice the cell and carried on to none, 2 B(h) - B(2 h) (from memory:
 * Richardson 1911, Phil. Trans. R. Soc. A 210: 307-357). Without it a mosaic of 3.0 mm reads 3.5, 3.2 and 3.1 mm at cells
 * of 0.5, 0.25 and 0.125 mm.
 * Known bias: lines along the lattice read 1.4 % wide (boundary.ts). Reliable above 2 mm.
 */
import { FATE } from '../model/seam-table';
import { BARE, type State } from '../model/state';
import { blankGrid, eachUnlikePair, type Grain } from './boundary';
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
  const { layout, origin, colony, variety, row, ring, seam } = state;
  const varietyOf = state.pieces.variety;
  const grid = blankGrid(layout.columns, layout.rows, layout.cellMm);
  const { label } = grid;
  for (let i = 0; i < variety.length; i++) label[i] = variety[i] === BARE ? 0 : variety[i];

  // steps of twice the cell pass over a contact: they look beside it too
  const isFused = new Uint8Array(label.length);
  const isFusedNear = new Uint8Array(label.length);
  for (let r = 1; r < seam.count; r++) {
    const cell = seam.cell[r];
    if (cell < 0 || row[cell] !== r || keyOfRow[r] === 0 || seam.fate[r] !== FATE.fused) continue;
    isFused[cell] = 1;
    isFusedNear[cell] = 1;
    for (const step of ring) isFusedNear[cell + step] = 1;
  }
  const lengthAt = (grain: Grain, opens: Uint8Array): number => {
    let sum = 0;
    eachUnlikePair(
      grid,
      (i, j, lengthMm, viaA, viaB) => {
        const a = origin[i];
        const b = origin[j];
        if (colony[a] !== colony[b]) return;
        if (varietyOf[a] === varietyOf[b] || (opens[i] | opens[j] | opens[viaA] | opens[viaB]) === 1)
          sum += lengthMm;
      },
      grain,
    );
    return sum;
  };
  return 2 * lengthAt(1, isFused) - lengthAt(2, isFusedNear);
}

export function veinWidthMm(state: State, census: Census, keyOfRow: Uint8Array): number | null {
  const area = fusedTissueMm2(census);
  const length = area > 0 ? veinMm(state, keyOfRow) : 0;
  return length > 0 ? area / length : null;
}

/**
 * Swirl, 0 to 1: how finely the colours of a fused colony run through each other.
 * Definition: M (1 - q/2) per colony of K >= 2 varieties, averaged over such colonies by their tissue.
 * M = mean over tissue of (1 - sum f_k^2) / (1 - 1/K), f_k = share of variety k in the colony's tissue within the 8 mm
 * square around each mm; the square is clipped at the colony. q = share of tissue in one-colour patches under 6 mm2:
 * speckle is no vein. 8 mm and 6 mm2 are judgement (about a thumb's breadth, and a patch that is seen from arm's
 * length). Null where no colony holds two varieties.
 * Source: 1 - sum f^2 is the chance that two random points nearby differ (Simpson 1949, Nature 163: 688), as a
 * share of its greatest value. Reads about 0.05 for half and half on 100 mm, 0.98 for 4 mm veins, 0.89 for speckle.
 * Known bias: near a colony's edge the square holds less tissue, so that few cells speak for it.
 */
import { BARE, type State } from '../model/state';
import { CENSUS_STRIDE, cellsOf, type Census, varietiesIn } from './census';
import { cellsInSmallPatches } from './patches';

const SQUARE_MM = 8;
const SPECKLE_MM2 = 6;
/** Tissue is counted in blocks of half a millimetre: their edges are those of the mm and of the square around it. */
const BLOCK_MM = 0.5;
const BLOCKS_PER_MM = 2;
const HALF_SQUARE = SQUARE_MM / 2 / BLOCK_MM;

/** Number of the block, counted from the tile's centre, of each column (or row) of cells. */
function blocksOf(cells: number, cellMm: number): Int32Array {
  return Int32Array.from({ length: cells }, (_, at) =>
    Math.floor(((at - (cells - 1) / 2) * cellMm) / BLOCK_MM),
  );
}

/** Cells that a colony spans: first and last column, first and last row, at [colony * 4]. */
function extentsOf(state: State, colonies: number): Int32Array {
  const { variety, origin, colony, layout } = state;
  const extents = new Int32Array(colonies * 4);
  for (let at = 0; at < colonies; at++) extents.set([layout.columns, -1, layout.rows, -1], at * 4);
  for (let r = 0, i = 0; r < layout.rows; r++)
    for (let c = 0; c < layout.columns; c++, i++) {
      if (variety[i] === 0 || variety[i] === BARE) continue;
      const at = colony[origin[i]] * 4;
      if (c < extents[at]) extents[at] = c;
      if (c > extents[at + 1]) extents[at + 1] = c;
      if (r < extents[at + 2]) extents[at + 2] = r;
      if (r > extents[at + 3]) extents[at + 3] = r;
    }
  return extents;
}

/** Cells of one colony summed over all blocks left of and above a corner, for each variety it holds. */
interface Sums {
  /** Whole mm covered. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** Corners in a row: blocks + 1. */
  readonly stride: number;
  readonly ofVariety: readonly Uint32Array[];
}

/** Counts of blocks to sums over all blocks left and above; row and column 0 stay 0. */
function addUp(table: Uint32Array, stride: number): void {
  for (let row = stride; row < table.length; row += stride) {
    let soFar = 0;
    for (let at = row + 1; at < row + stride; at++) {
      soFar += table[at];
      table[at] = soFar + table[at - stride];
    }
  }
}

function sumsOf(state: State, census: Census, ofColony: number, extents: Int32Array): Sums {
  const { variety, origin, colony, layout } = state;
  const blockOfColumn = blocksOf(layout.columns, layout.cellMm);
  const blockOfRow = blocksOf(layout.rows, layout.cellMm);
  const [firstColumn, lastColumn, firstRow, lastRow] = extents.subarray(ofColony * 4, ofColony * 4 + 4);
  const left = Math.floor(blockOfColumn[firstColumn] / BLOCKS_PER_MM);
  const top = Math.floor(blockOfRow[firstRow] / BLOCKS_PER_MM);
  const widthMm = Math.floor(blockOfColumn[lastColumn] / BLOCKS_PER_MM) + 1 - left;
  const heightMm = Math.floor(blockOfRow[lastRow] / BLOCKS_PER_MM) + 1 - top;
  const stride = widthMm * BLOCKS_PER_MM + 1;
  const corners = stride * (heightMm * BLOCKS_PER_MM + 1);

  const slot = new Int8Array(CENSUS_STRIDE);
  const ofVariety: Uint32Array[] = [];
  for (let k = 1; k < CENSUS_STRIDE; k++)
    if (census.cells[ofColony * CENSUS_STRIDE + k] > 0)
      slot[k] = ofVariety.push(new Uint32Array(corners)) - 1;

  for (let r = firstRow; r <= lastRow; r++) {
    const corner = (blockOfRow[r] - top * BLOCKS_PER_MM + 1) * stride + 1 - left * BLOCKS_PER_MM;
    for (let c = firstColumn; c <= lastColumn; c++) {
      const i = r * layout.columns + c;
      if (variety[i] === 0 || variety[i] === BARE || colony[origin[i]] !== ofColony) continue;
      ofVariety[slot[variety[i]]][corner + blockOfColumn[c]]++;
    }
  }
  for (const table of ofVariety) addUp(table, stride);
  return { widthMm, heightMm, stride, ofVariety };
}

/** Mean over the colony's tissue of its variety nearby, scaled so that K even shares read 1. */
function mingledOf(sums: Sums): number {
  const { widthMm, heightMm, stride, ofVariety } = sums;
  const lastColumn = widthMm * BLOCKS_PER_MM;
  const lastRow = heightMm * BLOCKS_PER_MM;
  const within = (table: Uint32Array, x0: number, x1: number, y0: number, y1: number): number =>
    table[y1 * stride + x1] - table[y0 * stride + x1] - table[y1 * stride + x0] + table[y0 * stride + x0];
  let tissue = 0;
  let mixed = 0;
  for (let y = 0; y < lastRow; y += BLOCKS_PER_MM)
    for (let x = 0; x < lastColumn; x += BLOCKS_PER_MM) {
      const x0 = Math.max(0, x + 1 - HALF_SQUARE);
      const x1 = Math.min(lastColumn, x + 1 + HALF_SQUARE);
      const y0 = Math.max(0, y + 1 - HALF_SQUARE);
      const y1 = Math.min(lastRow, y + 1 + HALF_SQUARE);
      let here = 0;
      let nearby = 0;
      let squares = 0;
      for (const table of ofVariety) {
        here += within(table, x, x + BLOCKS_PER_MM, y, y + BLOCKS_PER_MM);
        const cells = within(table, x0, x1, y0, y1);
        nearby += cells;
        squares += cells * cells;
      }
      if (here === 0) continue;
      tissue += here;
      mixed += here * (1 - squares / (nearby * nearby));
    }
  return mixed / tissue / (1 - 1 / ofVariety.length);
}

export function swirlOf(state: State, census: Census): number | null {
  const fused: number[] = [];
  for (let colony = 1; colony < census.colonies; colony++)
    if (varietiesIn(census, colony) > 1) fused.push(colony);
  if (fused.length === 0) return null;
  const extents = extentsOf(state, census.colonies);
  const speckled = cellsInSmallPatches(state, SPECKLE_MM2);
  let tissue = 0;
  let sum = 0;
  for (const colony of fused) {
    const cells = cellsOf(census, colony);
    tissue += cells;
    sum += mingledOf(sumsOf(state, census, colony, extents)) * (cells - speckled[colony] / 2);
  }
  return sum / tissue;
}

import { BARE, FLAG, type State } from '../model/state';

/** Cells by colony and variety: what cover, balance, vein width and swirl are shares of. Exact: cells are counted. */
export interface Census {
  readonly cellMm2: number;
  /** Cells of tissue, at [colony * CENSUS_STRIDE + variety]. */
  readonly cells: Uint32Array;
  readonly colonies: number;
  readonly bareCells: number;
  /** On the tile, without tissue or bare skeleton. */
  readonly emptyCells: number;
}

/** Varieties 1..8; index 0 unused. */
export const CENSUS_STRIDE = 9;

export function takeCensus(state: State): Census {
  const { variety, origin, colony, layout, flags } = state;
  const colonies = state.pieces.count + 1;
  const cells = new Uint32Array(colonies * CENSUS_STRIDE);
  let bareCells = 0;
  let emptyCells = 0;
  for (let i = 0; i < variety.length; i++) {
    const k = variety[i];
    if (k === 0) emptyCells += flags[i] & FLAG.inside;
    else if (k === BARE) bareCells++;
    else cells[colony[origin[i]] * CENSUS_STRIDE + k]++;
  }
  return { cellMm2: layout.cellMm * layout.cellMm, cells, colonies, bareCells, emptyCells };
}

/** How many varieties live in a colony. */
export function varietiesIn(census: Census, colony: number): number {
  let held = 0;
  for (let k = 1; k < CENSUS_STRIDE; k++) if (census.cells[colony * CENSUS_STRIDE + k] > 0) held++;
  return held;
}

/** Cells of tissue in a colony. */
export function cellsOf(census: Census, colony: number): number {
  let sum = 0;
  for (let k = 1; k < CENSUS_STRIDE; k++) sum += census.cells[colony * CENSUS_STRIDE + k];
  return sum;
}

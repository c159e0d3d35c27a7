/** Rims of many small pieces that are one colony from the first day: the start of a range expansion. */
import type { Layout } from '../model/layout';
import { draw } from '../model/noise';
import type { State } from '../model/state';
import { compile } from '../plan/compile';
import type { Mingle, Piece, Settings, Xy } from '../plan/plan';
import { benchPlan, block } from './bench-tile';

/** Verdicts fall on the first day wherever pieces touch. */
function fusedAtOnce(layout: Layout): Layout {
  return { ...layout, rates: { ...layout.rates, verdictDelayDays: 0, nucleiPerMmDay: 1e6 } };
}

/** 'a' or 'b' with even odds, by number and by set. */
export function coinVariety(set: number, k: number): 'a' | 'b' {
  return draw(0x5eed, set, k) < 0.5 ? 'a' : 'b';
}

export interface Rim {
  readonly sizeMm: number;
  readonly months: number;
  readonly rims: readonly [number, number];
  readonly pieces: readonly Piece[];
  readonly mingle: Mingle;
  readonly settings?: Settings;
  readonly acceptance?: number;
}

export function rimLayout({ mingle, acceptance = 1, ...tile }: Rim, cellMm: number): Layout {
  return fusedAtOnce(compile(benchPlan({ ...tile, pair: { acceptance, mingle } }), cellMm));
}

/** Depth of the pieces along the lower edge of a tile, from which a flat rim runs up. */
const ROOT_MM = 4;

/** Blocks along the lower edge, from x to x, each of the variety named. */
export function rootBlocks(
  sizeMm: number,
  edges: readonly number[],
  variety: (k: number) => string,
): Piece[] {
  const half = sizeMm / 2;
  return edges.slice(1).map((right, k) => block(variety(k), [edges[k], half - ROOT_MM], [right, half]));
}

/** Wedges of a disc about the middle, each of the variety named. */
export function wedges(
  radiusMm: number,
  edgesRad: readonly number[],
  variety: (k: number) => string,
): Piece[] {
  return edgesRad.slice(1).map((end, k) => {
    const start = edgesRad[k];
    const steps = Math.max(2, Math.ceil((end - start) / 0.1));
    const arc = Array.from({ length: steps + 1 }, (_, at): Xy => {
      const angle = start + ((end - start) * at) / steps;
      return [radiusMm * Math.cos(angle), radiusMm * Math.sin(angle)];
    });
    const outline: readonly Xy[] = [[0, 0], ...arc];
    return { id: 'wedge', variety: variety(k), at: [0, 0], turnDeg: 0, outline };
  });
}

/** Varieties along the line of cells that lies `advanceMm` above the blocks. */
export function rowAbove(state: State, advanceMm: number): Uint8Array {
  const { columns, rows, cellMm } = state.layout;
  const sizeMm = (rows - 2) * cellMm;
  const row = Math.round((sizeMm / 2 - ROOT_MM - advanceMm) / cellMm + (rows - 1) / 2);
  return state.variety.subarray(row * columns + 1, (row + 1) * columns - 1);
}

/** Varieties round the circle of that radius, at 0.2 mm a sample. */
export function ringAt(state: State, radiusMm: number): number[] {
  const { columns, rows, cellMm } = state.layout;
  const samples = Math.round((2 * Math.PI * radiusMm) / 0.2);
  return Array.from({ length: samples }, (_, k) => {
    const angle = (2 * Math.PI * k) / samples;
    const c = Math.round((radiusMm * Math.cos(angle)) / cellMm + (columns - 1) / 2);
    const r = Math.round((radiusMm * Math.sin(angle)) / cellMm + (rows - 1) / 2);
    return state.variety[r * columns + c];
  });
}

/**
 * Walls between sectors along a line; stretches shorter than `leastCells` are the fray of one wall and not two walls
 * more.
 */
export function wallsIn(line: ArrayLike<number>, leastCells: number): number {
  let walls = 0;
  let sector = -1;
  for (let k = 0; k < line.length;) {
    const start = k;
    while (k < line.length && line[k] === line[start]) k++;
    if (k - start < leastCells || line[start] === sector) continue;
    if (sector >= 0) walls++;
    sector = line[start];
  }
  return walls;
}

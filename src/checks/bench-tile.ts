/** Plans for checks, with nothing in them but what a check asks for, and the runs of them. */
import { grow } from '../model/grow';
import type { Layout, Rules } from '../model/layout';
import type { State } from '../model/state';
import { compile } from '../plan/compile';
import type { Mingle, Pair, Piece, Plan, Settings, Xy } from '../plan/plan';

/** No noise, no healing, and of the outcomes of a refusal only the ridge. */
const QUIET: Settings = { roughness: 0, healingDays: 0, deadShare: 0 };

/** No strays, no weave, no lean, no turnover: a border moves by interleave alone. */
export const PLAIN_MINGLE: Mingle = {
  interleave: 0,
  stray: 0,
  strayReachMm: 0,
  weave: 0,
  weaveReachMm: 1,
  lean: 0,
  turnoverPerMonth: 0,
};

export interface BenchTile {
  readonly sizeMm: number;
  readonly months: number;
  /** Rim rates of varieties 'a', 'b', ... in mm/month. */
  readonly rims: readonly number[];
  readonly aggression?: readonly number[];
  /** Named p1, p2, ... in the plan. */
  readonly pieces: readonly Piece[];
  /** Of varieties 'a' and 'b'. */
  readonly pair?: Omit<Pair, 'a' | 'b'>;
  readonly settings?: Settings;
}

export function benchPlan(tile: BenchTile): Plan {
  return {
    seambench: 1,
    name: 'check',
    tile: { shape: 'square', sizeMm: tile.sizeMm },
    varieties: tile.rims.map((rimMmPerMonth, k) => ({
      id: 'abcdefgh'.charAt(k),
      name: `variety ${k + 1}`,
      colour: '#808080',
      rimMmPerMonth,
      aggression: tile.aggression?.[k] ?? 0,
    })),
    pairs: tile.rims.length > 1 ? [{ a: 'a', b: 'b', acceptance: 0, ...tile.pair }] : [],
    pieces: tile.pieces.map((piece, k) => ({ ...piece, id: `p${k + 1}` })),
    steps: [],
    months: tile.months,
    settings: { ...QUIET, ...tile.settings },
  };
}

export function disc(variety: string, at: Xy, diameterMm: number): Piece {
  return { id: 'disc', variety, at, turnDeg: 0, disc: { diameterMm } };
}

/** A rectangle from corner to corner. */
export function block(variety: string, [x0, y0]: Xy, [x1, y1]: Xy): Piece {
  const outline: readonly Xy[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  return { id: 'block', variety, at: [0, 0], turnDeg: 0, outline };
}

/** Two halves of a square tile, set touching along x = 0. */
export function halves(sizeMm: number): Piece[] {
  const half = sizeMm / 2;
  return [block('a', [-half, -half], [0, half]), block('b', [0, -half], [half, half])];
}

/** Grows a layout to a day, its last if not said. */
export function grown(layout: Layout, seed: string, day = layout.days): State {
  for (const state of grow(layout, seed)) if (state.day >= day) return state;
  throw new Error(`the layout ends before day ${day}`);
}

export function grownTile(tile: BenchTile, cellMm: number, seed: string, day?: number): State {
  return grown(compile(benchPlan(tile), cellMm), seed, day);
}

/** The seed words '1' to 'n'. */
export function seedWords(n: number): string[] {
  return Array.from({ length: n }, (_, k) => String(k + 1));
}

/** What is read off the grown tile, for the seeds '1' to 'seeds'. */
export function overSeeds(layout: Layout, seeds: number, read: (state: State) => number): number[] {
  return seedWords(seeds).map((seed) => read(grown(layout, seed)));
}

/** Place of a cell, mm from the tile's centre. */
function placeOf(layout: Rules, cell: number): Xy {
  const { columns, rows, cellMm } = layout;
  return [
    ((cell % columns) - (columns - 1) / 2) * cellMm,
    (Math.floor(cell / columns) - (rows - 1) / 2) * cellMm,
  ];
}

export interface SeamPoint {
  readonly xMm: number;
  readonly yMm: number;
  readonly touchedDay: number;
}

/** Mid-points of all contacts on the seam. */
export function seamPoints(state: State): SeamPoint[] {
  const { seam, layout } = state;
  const points: SeamPoint[] = [];
  for (let row = 1; row < seam.count; row++) {
    if (seam.cell[row] < 0) continue;
    const [x0, y0] = placeOf(layout, seam.cell[row]);
    const [x1, y1] = placeOf(layout, seam.partner[row]);
    points.push({ xMm: (x0 + x1) / 2, yMm: (y0 + y1) / 2, touchedDay: seam.touched[row] });
  }
  return points;
}

/**
 * A mirrored plan is another plan to the hash, so its bits differ and only its statistics must be the same: symmetry
 * asks for equal means. Two unlike discs, mirrored in x; 64 seeds each way; means within 3 standard errors of their
 * difference (model.md section 5).
 */
import { describe, expect, it } from 'vitest';
import { read } from '../../src/measure/read';
import { grow } from '../../src/model/grow';
import type { State } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import { discPiece, smallPlan } from '../fixtures/small-plan';

const SEEDS = 64;
const CELL_MM = 0.5;

/** What is compared; places have the sign of the plan taken off. A statistic that a tile does not have is left out. */
interface Found {
  readonly shareOfA: number;
  readonly seamXMm: number | undefined;
  readonly seamYMm: number | undefined;
  readonly seamMm: number;
  readonly fusedMm: number;
  readonly veinXMm: number | undefined;
  readonly veinYMm: number | undefined;
  readonly veinWidthMm: number | undefined;
}

function mean(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : values.reduce((sum, x) => sum + x, 0) / values.length;
}

/** Mean place of some cells, mm from the tile's centre. */
function placeMm({ layout }: State, cells: readonly number[]): [number | undefined, number | undefined] {
  const { columns, cellMm } = layout;
  const at = (line: number): number => (line - (columns - 1) / 2) * cellMm;
  return [mean(cells.map((i) => at(i % columns))), mean(cells.map((i) => at(Math.floor(i / columns))))];
}

/** Cells of variety 1 beside variety 2 within one colony: the border of two colours. */
function veinCells({ variety, colony, origin, layout }: State): number[] {
  const around = [1, -1, layout.columns, -layout.columns];
  return [...variety.keys()].filter(
    (i) =>
      variety[i] === 1 &&
      around.some((step) => variety[i + step] === 2 && colony[origin[i + step]] === colony[origin[i]]),
  );
}

function foundOn(sign: 1 | -1, seed: string): Found {
  const plan = smallPlan({
    tile: { shape: 'square', sizeMm: 40 },
    varieties: [
      { id: 'a', name: 'a', colour: '#336644', rimMmPerMonth: 3, aggression: 0.2 },
      { id: 'b', name: 'b', colour: '#884466', rimMmPerMonth: 4, aggression: 0.6 },
    ],
    pairs: [{ a: 'a', b: 'b', acceptance: 0.6 }],
    pieces: [discPiece('p1', 'a', -7 * sign, -4, 9), discPiece('p2', 'b', 6 * sign, 5, 7)],
    months: 9,
  });
  let end: State | undefined;
  for (const state of grow(compile(plan, CELL_MM), seed)) end = state;
  if (!end) throw new Error('a run yields its day 0');
  const { seam } = end;
  const reading = read(end, ['', 'a', 'b'], seed, plan.months);
  const seamCells = [...seam.cell.subarray(1, seam.count)].filter((cell) => cell >= 0);
  const [seamX, seamY] = placeMm(end, seamCells);
  const [veinX, veinY] = placeMm(end, veinCells(end));
  return {
    shareOfA: reading.varieties['a'].share,
    seamXMm: seamX && sign * seamX,
    seamYMm: seamY,
    seamMm: reading.seam.lengthMm,
    fusedMm: reading.seam.fusedMm,
    veinXMm: veinX && sign * veinX,
    veinYMm: veinY,
    veinWidthMm: reading.veinWidthMm ?? undefined,
  };
}

const [AS_DRAWN, MIRRORED] = ([1, -1] as const).map((sign) =>
  Array.from({ length: SEEDS }, (_, seed) => foundOn(sign, String(seed))),
);

function moments(found: readonly Found[], name: keyof Found) {
  const values = found.flatMap((one) => one[name] ?? []);
  const middle = mean(values) ?? NaN;
  const variance = values.reduce((sum, x) => sum + (x - middle) ** 2, 0) / (values.length - 1);
  return { mean: middle, count: values.length, error2: variance / values.length };
}

describe('a mirrored plan grows to the same means', () => {
  const names: (keyof Found)[] = [
    'shareOfA',
    'seamXMm',
    'seamYMm',
    'seamMm',
    'fusedMm',
    'veinXMm',
    'veinYMm',
    'veinWidthMm',
  ];

  it.each(names)('%s', (name) => {
    const [one, two] = [moments(AS_DRAWN, name), moments(MIRRORED, name)];
    // veins are there only where the tile fused; a statistic that hardly occurs proves nothing
    expect(Math.min(one.count, two.count)).toBeGreaterThanOrEqual(20);
    const error = Math.sqrt(one.error2 + two.error2);
    expect(error).toBeGreaterThan(0);
    expect(Math.abs(one.mean - two.mean)).toBeLessThan(3 * error);
  });

  it('to other bits: were the bits mirrored too, the means would prove nothing', () => {
    const same = AS_DRAWN.filter((found, seed) => found.seamXMm === MIRRORED[seed].seamXMm);
    expect(same.length).toBeLessThan(SEEDS / 4);
  });
});

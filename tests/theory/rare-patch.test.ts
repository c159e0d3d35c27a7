/**
 * A rare patch cut out with margins of 1, 3 and 6 mm, over 100 seeds at the preview cell: how likely the cutting lives by
 * the size curve, how long it takes alone on a fresh tile to the area of a disc of 25 mm, and what is rare of it then.
 */
import { expect, it } from 'vitest';
import { frameOf, type Frame } from '../../src/model/frame';
import { grow } from '../../src/model/grow';
import { BARE, type State } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import { graftOf } from '../../src/plan/graft';
import { pieceAreaMm2 } from '../../src/plan/outline';
import type { GraftPiece, Plan, StepOf } from '../../src/plan/plan';
import { PRESETS } from '../../src/plan/presets';
import { refuse } from '../../src/plan/refuse';
import { isolateKerfMm } from '../../src/plan/steps';
import { survivalOf } from '../../src/plan/survival';
import { meanOf } from '../../src/stats/intervals';
import { DAYS_PER_MONTH } from '../../src/units/quantity';

const SEEDS = 100;
const CELL_MM = 0.5;
const SALEABLE_MM2 = Math.PI * 12.5 ** 2;
/** 0.975 quantile of Student's t with 99 degrees of freedom (textbook table). */
const T99 = 1.9842;
const IDS = ['', 'a', 'b'];

interface Fate {
  readonly areaMm2: number;
  readonly lives: number;
  readonly rareCut: number;
  readonly months: number;
  readonly rareSold: number;
}

function areaOf({ variety }: State, of?: number): number {
  let cells = 0;
  for (const v of variety) if (of === undefined ? v !== 0 && v !== BARE : v === of) cells++;
  return cells * CELL_MM * CELL_MM;
}

function tileOn(plan: Plan, day: number, seed: string): State {
  for (const state of grow(compile(plan, CELL_MM), seed)) if (state.day === day) return state;
  throw new Error(`the plan ends before day ${day}`);
}

/** The cutting as a plan of its own: it heals, then grows at its rim rate until it is large enough. */
function cuttingAlone(plan: Plan, frame: Frame, step: StepOf<'isolate'>): { plan: Plan; piece: GraftPiece } {
  const cut = { around: step.around, kerfMm: isolateKerfMm(step) };
  const piece = graftOf(frame, cut, 'cutting', IDS);
  if (piece === null) throw new Error('nothing was cut out');
  const tile = { shape: 'square', sizeMm: 40 } as const;
  const alone = { ...plan, tile, pieces: [{ ...piece, at: [0, 0] as const }], steps: [], months: 8 };
  expect(refuse(alone)).toEqual([]);
  return { plan: alone, piece };
}

function fateOf(plan: Plan, frame: Frame, step: StepOf<'isolate'>, seed: string): Fate {
  const { plan: alone, piece } = cuttingAlone(plan, frame, step);
  for (const state of grow(compile(alone, CELL_MM), seed)) {
    // nothing grows before it has healed
    if (state.day <= 30 || areaOf(state) < SALEABLE_MM2) continue;
    const rare = piece.patches.filter(({ variety }) => variety === 'b');
    const areaMm2 = pieceAreaMm2(piece);
    return {
      areaMm2,
      lives: survivalOf(areaMm2),
      rareCut: pieceAreaMm2({ ...piece, patches: rare }) / areaMm2,
      months: state.day / DAYS_PER_MONTH,
      rareSold: areaOf(state, 2) / areaOf(state),
    };
  }
  throw new Error('not saleable in time');
}

function told(values: readonly number[]): string {
  const { mean, standardError } = meanOf(values);
  const half = T99 * standardError;
  return `${mean.toFixed(2)} (${(mean - half).toFixed(2)} to ${(mean + half).toFixed(2)})`;
}

const preset = PRESETS.find(({ key }) => key === 'rare-patch');
if (preset === undefined) throw new Error('no preset rare-patch');
const { plan } = preset;
const cuts = plan.steps.flatMap((step) => (step.kind === 'isolate' ? [step] : []));

it('what the step takes off the tile is what the new plan starts with, but for specks under a polyp', () => {
  for (const step of cuts)
    for (const seed of ['1', '2', '3']) {
      const before = frameOf(tileOn({ ...plan, steps: [] }, step.day - 1, seed), 2);
      const [work] = tileOn({ ...plan, steps: [{ ...step, on: true }] }, step.day, seed).works;
      const set = tileOn(cuttingAlone(plan, before, step).plan, 0, seed);
      for (const v of [1, 2])
        expect(Math.abs(work.cutCells[v] * CELL_MM * CELL_MM - areaOf(set, v))).toBeLessThanOrEqual(2);
    }
});

it(`more margin: larger, likelier to live, sooner saleable, less of it rare; ${SEEDS} seeds`, () => {
  expect(cuts.map(({ id, on }) => [id, on ?? true])).toEqual([
    ['margin-1', false],
    ['margin-3', true],
    ['margin-6', false],
  ]);
  const seeds = Array.from({ length: SEEDS }, (_, k) => String(k + 1));
  const fates = seeds.map((seed) => {
    const frame = frameOf(tileOn({ ...plan, steps: [] }, cuts[0].day - 1, seed), 2);
    return cuts.map((step) => fateOf(plan, frame, step, seed));
  });
  const means = cuts.map(({ id }, k) => {
    const of = (what: (fate: Fate) => number) => fates.map((row) => what(row[k]));
    process.stdout.write(
      `${id}: cutting ${told(of((one) => one.areaMm2))} mm2, lives with chance ${told(of((one) => one.lives))}, 25 mm after ${told(of((one) => one.months))} months, rare ${told(of((one) => one.rareCut))} of it when cut and ${told(of((one) => one.rareSold))} then\n`,
    );
    return meanOf(of((one) => one.areaMm2)).mean;
  });
  expect(means).toEqual([...means].sort((a, b) => a - b));
  // seed by seed, for all three are cut from one tile and grow on the same noise
  const ordered = (what: (fate: Fate) => number) =>
    fates.filter((row) => what(row[0]) < what(row[1]) && what(row[1]) < what(row[2])).length;
  expect(ordered((one) => one.areaMm2)).toBe(SEEDS);
  expect(ordered((one) => one.lives)).toBe(SEEDS);
  expect(ordered((one) => -one.months)).toBe(SEEDS);
  expect(ordered((one) => -one.rareCut)).toBe(SEEDS);
}, 60_000);

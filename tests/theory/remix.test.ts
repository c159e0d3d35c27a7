/**
 * The remix experiment: two halves grown for 12 months, against the same halves sawn at month 4 into squares that change
 * places. Equal stock, 50 seeds, the same noise for both; preview cell.
 */
import { expect, it } from 'vitest';
import { read } from '../../src/measure/read';
import { grow } from '../../src/model/grow';
import type { Layout } from '../../src/model/layout';
import type { State } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import { PRESETS } from '../../src/plan/presets';
import { facesOfRecut } from '../../src/plan/steps';
import { survivalOf } from '../../src/plan/survival';
import { betaShareBelow } from '../../src/stats/beta';
import { meanOf } from '../../src/stats/intervals';

const SEEDS = 50;
const CELL_MM = 0.5;
/** 0.975 quantile of Student's t with 49 degrees of freedom (textbook table). */
const T49 = 2.0096;

/** Mean with its 95 % interval by Student's t. */
function told(values: readonly number[], digits: number): string {
  const { mean, standardError } = meanOf(values);
  const [low, high] = [mean - T49 * standardError, mean + T49 * standardError];
  return `${mean.toFixed(digits)} (${low.toFixed(digits)} to ${high.toFixed(digits)})`;
}

/** One-sided exact sign test: the chance of so many wins of n or more if either were as likely (sum of binomials). */
function signTest(wins: number, n: number): number {
  return wins === 0 ? 1 : betaShareBelow(0.5, wins, n - wins + 1);
}

/** Tissue of the parts on the day of the cut: of each its chance to be lost, the mean over all that the lines make. */
function chanceOfLoss({ origin, pieces }: State, faces: number): number {
  const cells = new Map<number, number>();
  for (const o of origin) if (o !== 0) cells.set(pieces.name[o], (cells.get(pieces.name[o]) ?? 0) + 1);
  const lives = [...cells.values()].map((count) => survivalOf(count * CELL_MM * CELL_MM));
  return 1 - lives.reduce((sum, p) => sum + p, 0) / faces;
}

it(`halves cut again have finer veins at month 12 than halves left alone, p < 0.001 over ${SEEDS} seeds`, () => {
  const plan = PRESETS.find(({ key }) => key === 'remix')?.plan;
  const step = plan?.steps[0];
  if (plan === undefined || step?.kind !== 'recut') throw new Error('the preset remix is no recut');
  const [alone, cut] = [{ ...plan, steps: [] }, plan].map((one) => compile(one, CELL_MM));
  const faces = facesOfRecut(plan.tile, step).length;
  const last = (layout: Layout, seed: string, visit: (state: State) => void) => {
    for (const state of grow(layout, seed)) {
      if (state.day === step.day) visit(state);
      if (state.day === layout.days) return read(state, ['', 'a', 'b'], seed, plan.months);
    }
    throw new Error('the run ended early');
  };
  const runs = Array.from({ length: SEEDS }, (_, k) => {
    let [loss, stockMm2] = [Number.NaN, Number.NaN];
    const left = last(alone, String(k + 1), ({ variety }) => {
      stockMm2 = variety.filter((v) => v !== 0).length * CELL_MM * CELL_MM;
    });
    const again = last(cut, String(k + 1), (state) => (loss = chanceOfLoss(state, faces)));
    const [work] = again.steps;
    const lostMm2 = Object.values(work.lostMm2).reduce((sum, mm2) => sum + mm2, 0);
    return { left: left.veinWidthMm ?? NaN, again: again.veinWidthMm ?? NaN, lostMm2, stockMm2, loss, work };
  });
  const wins = runs.filter(({ left, again }) => again < left).length;
  const p = signTest(wins, SEEDS);
  const column = (of: (run: (typeof runs)[number]) => number, digits: number) => told(runs.map(of), digits);
  process.stdout.write(
    [
      `vein width at month 12, mm, mean (95 % interval): left alone ${column((run) => run.left, 2)}, cut again ${column((run) => run.again, 2)}`,
      `difference of pairs ${column((run) => run.left - run.again, 2)}; finer in ${wins} of ${SEEDS}, exact sign test p = ${p.toExponential(1)}`,
      `cost: no month (both are read at month ${plan.months}), ${column((run) => run.lostMm2, 0)} mm2 lost to the saw, ${column((run) => (100 * run.lostMm2) / run.stockMm2, 1)} % of the tissue of that day`,
      `chance of losing a part, empty ones included, by the size curve: ${column((run) => run.loss, 3)}`,
    ]
      .map((line) => `${line}\n`)
      .join(''),
  );
  expect(p).toBeLessThan(0.001);
  expect(meanOf(runs.map(({ left, again }) => left / again)).mean).toBeGreaterThan(1.5);
  for (const { work, loss, lostMm2, stockMm2 } of runs) {
    expect(work.cuttings).toBe(0);
    // squares of 6 mm on a kerf of 1 mm leave (5/6)^2; half a cell of kerf, and the ragged rim
    expect(Math.abs(lostMm2 / stockMm2 - (1 - 25 / 36))).toBeLessThan(0.05);
    expect(loss).toBeGreaterThan(0);
    expect(loss).toBeLessThan(1);
  }
}, 60_000);

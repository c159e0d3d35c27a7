/** What must hold for every plan that a grower could make: the list of invariants of the model, over 2,000 plans. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeCensus } from '../../src/measure/census';
import { read } from '../../src/measure/read';
import { grow } from '../../src/model/grow';
import { FATE } from '../../src/model/seam-table';
import { FLAG, type State } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import { openPlan, planText } from '../../src/plan/file';
import { MAX_VARIETIES, type Plan } from '../../src/plan/plan';
import { assertSound } from '../fixtures/assert-sound';
import { dayWatch } from '../fixtures/day-watch';
import { randomPlan } from '../fixtures/random-plan';

const MONTHS = 8;

/** Grows a plan and looks at every day of it. */
function watched(plan: Plan, seed: string, cellMm: number): State {
  const watch = dayWatch();
  let end: State | undefined;
  for (const state of grow(compile(plan, cellMm), seed)) {
    watch(state);
    if (state.day % 10 === 0 || state.day === state.layout.days) assertSound(state);
    end = state;
  }
  if (!end) throw new Error('a run yields its day 0');
  return end;
}

/** Areas and seam lengths of the reading add up. */
function expectSums(plan: Plan, state: State): void {
  const { seam, pairs, varieties, coverMm2, ...rest } = read(
    state,
    ['', ...plan.varieties.map(({ id }) => id)],
    'sum',
    MONTHS,
  );
  const { bareCells, emptyCells, cells, cellMm2 } = takeCensus(state);
  const tissue = cells.reduce((sum, n) => sum + n, 0);
  expect(tissue + bareCells + emptyCells).toBe(
    state.flags.reduce((sum, bits) => sum + (bits & FLAG.inside), 0),
  );
  expect(coverMm2).toBeCloseTo(tissue * cellMm2, 6);
  const kinds = Object.values(varieties);
  expect(kinds.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)).toBeCloseTo(coverMm2, 6);
  expect(kinds.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(tissue > 0 ? 1 : 0, 9);
  for (const { lengthMm, fusedMm, ridgeMm, lappedMm, deadMm, undecidedMm } of [seam, ...pairs]) {
    const parts = [fusedMm, ridgeMm, lappedMm, deadMm, undecidedMm];
    expect(Math.min(...parts)).toBeGreaterThanOrEqual(0);
    expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(lengthMm, 9);
  }
  expect(pairs.reduce((sum, { lengthMm }) => sum + lengthMm, 0)).toBeCloseTo(seam.lengthMm, 6);
  for (const share of [rest.swirl, rest.balance]) {
    if (share === null) continue;
    expect(share).toBeGreaterThanOrEqual(0);
    expect(share).toBeLessThanOrEqual(1);
  }
}

describe.each([
  { cellMm: 1, largestMm: 32, runs: 1900 },
  { cellMm: 0.5, largestMm: 40, runs: 100 },
])('$runs random plans at cell $cellMm mm', ({ cellMm, largestMm, runs }) => {
  it('grow without a fault, sound on every day, and their readings add up', { timeout: 240_000 }, () => {
    const seen = { fates: new Set<number>(), varieties: new Set<number>(), lapped: 0, plans: 0 };
    fc.assert(
      fc.property(randomPlan(MONTHS, largestMm), fc.nat(1e6), (plan, seed) => {
        expect(openPlan(planText(plan))).toEqual({ plan, seed: null });
        const end = watched(plan, String(seed), cellMm);
        expectSums(plan, end);
        seen.plans++;
        seen.varieties.add(plan.varieties.length);
        for (let r = 1; r < end.seam.count; r++) seen.fates.add(end.seam.fate[r]);
        for (const flags of end.flags) if ((flags & FLAG.lapped) !== 0) seen.lapped++;
      }),
      { numRuns: runs },
    );
    // or the properties above would have held for want of anything that could break them
    expect(seen.plans).toBe(runs);
    expect(seen.varieties.size).toBe(MAX_VARIETIES);
    for (const fate of [FATE.undecided, FATE.fused, FATE.ridge, FATE.lapped, FATE.dead])
      expect(seen.fates).toContain(fate);
    expect(seen.lapped).toBeGreaterThan(runs / 10);
  });
});

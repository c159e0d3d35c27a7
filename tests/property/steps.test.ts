/** What must hold for every plan with steps: the invariants of the model, and that nothing appears from nothing. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { act } from '../../src/model/act';
import { grow } from '../../src/model/grow';
import { BARE, type State } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import { openPlan, planText } from '../../src/plan/file';
import { assertSound } from '../fixtures/assert-sound';
import { randomPlanWithSteps } from '../fixtures/random-steps';

const RUNS = 300;

it(`holds after every step of ${RUNS} random plans, and ten days later`, () => {
  fc.assert(
    fc.property(randomPlanWithSteps(5, 30), fc.integer(), (plan, seed) => {
      const days = new Set(plan.steps.flatMap(({ day }) => [day, day + 10]));
      const withGrafts = plan.steps.some(({ kind }) => kind === 'add');
      for (const state of grow(compile(plan, 0.5), String(seed)))
        if (days.has(state.day) || state.day === state.layout.days) assertSound(state, withGrafts);
    }),
    { numRuns: RUNS },
  );
}, 300_000);

it('steps and plan survive the file', () => {
  fc.assert(
    fc.property(randomPlanWithSteps(5, 30), (plan) => {
      const opened = openPlan(planText(plan));
      expect('plan' in opened && opened.plan).toEqual(plan);
    }),
    { numRuns: 100 },
  );
});

/** Living cells by variety. */
function living(state: State): number[] {
  const cells = new Array<number>(9).fill(0);
  for (const v of state.variety) if (v !== 0 && v !== BARE) cells[v]++;
  return cells;
}

it('what a step takes is counted: nothing goes unseen, and nothing appears from nothing', () => {
  fc.assert(
    fc.property(randomPlanWithSteps(4, 30), fc.integer(), (plan, seed) => {
      const layout = compile(plan, 0.5);
      const cut = layout.cuts[layout.cuts.length - 1];
      fc.pre(cut.kind !== 'add');
      const earlier = { ...layout, cuts: layout.cuts.slice(0, -1), days: Math.max(1, cut.day) };
      for (const state of grow(earlier, String(seed))) {
        if (state.day < cut.day - 1) continue;
        const before = living(state);
        act(state, cut, cut.day);
        const after = living(state);
        const work = state.works[state.works.length - 1];
        const taken = before.map((_, v) => work.cutCells[v] + work.lostCells[v]);
        const total = (cells: readonly number[]): number => cells.reduce((sum, n) => sum + n, 0);
        if (cut.kind === 'move' || cut.kind === 'recut') {
          // turned tissue is laid on the lattice anew: colours may differ by a cell here and there, the whole may not grow
          expect(total(after)).toBeLessThanOrEqual(total(before));
          expect(total(taken)).toBeGreaterThanOrEqual(total(before) - total(after));
        } else {
          expect(before.map((n, v) => n - after[v])).toEqual(taken);
        }
        return;
      }
    }),
    { numRuns: 200 },
  );
}, 120_000);

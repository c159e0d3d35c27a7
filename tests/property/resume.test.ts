/** A tile kept on any day grows on to the very bits of the run it was taken from; what differs later may differ then. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { copyState } from '../../src/model/copy';
import { grow, growOn, redraw } from '../../src/model/grow';
import { hashState } from '../../src/model/hash';
import type { State } from '../../src/model/state';
import { rulesOf } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import { firstDifference, pastDigest } from '../../src/plan/past';
import { randomPlanWithSteps } from '../fixtures/random-steps';
import { smallPlan } from '../fixtures/small-plan';
import { Past } from '../../workers/past';

const CELL_MM = 0.5;

function end(run: Generator<State, void>): State {
  let last: State | undefined;
  for (const state of run) last = state;
  if (!last) throw new Error('a run yields its first day');
  return last;
}

it('grows on from a kept day to the bits of the whole run, also when later steps were not known then', () => {
  fc.assert(
    fc.property(randomPlanWithSteps(6, 30), fc.nat(180), fc.integer(), (plan, day, seed) => {
      const layout = compile(plan, CELL_MM);
      const whole = hashState(end(grow(layout, String(seed))));
      const known = compile(
        { ...plan, months: 6, steps: plan.steps.filter((step) => step.day <= day) },
        CELL_MM,
      );
      for (const state of grow(known, String(seed))) {
        if (state.day !== day) continue;
        const kept = copyState(state, rulesOf(layout));
        expect(hashState(kept)).toBe(hashState(state));
        expect(hashState(end(growOn(kept)))).toBe(whole);
        return;
      }
    }),
    { numRuns: 60 },
  );
});

it('the worker finds the latest kept day before the first change, and no tile of another plan', () => {
  const lift = (day: number) => ({ id: 's1', day, kind: 'lift' as const, piece: 'p1' });
  const plan = smallPlan({ months: 6, steps: [lift(150)] });
  const past = new Past();
  const run = { plan, seed: 'w', cellMm: CELL_MM };
  for (const state of grow(compile(plan, CELL_MM), 'w')) past.keep(run, state);
  const found = (asked: typeof plan, day: number, seed = 'w') =>
    past.find({ ...run, plan: asked, seed }, compile(asked, CELL_MM), day)?.day ?? null;
  expect(found(plan, 182)).toBe(182);
  expect(found({ ...plan, steps: [lift(170)] }, 182)).toBe(149);
  expect(found({ ...plan, steps: [lift(100)] }, 182)).toBe(91);
  expect(found({ ...plan, steps: [] }, 182)).toBe(149);
  expect(found({ ...plan, months: 12 }, 400)).toBe(182);
  expect(found({ ...plan, settings: { roughness: 0 } }, 182)).toBeNull();
  expect(found(plan, 182, 'v')).toBeNull();
  expect(found(plan, 20)).toBeNull();
});

it('plans differ from the day of the first step that is not in both', () => {
  const lift = (day: number, on?: boolean) => ({ id: 's1', day, kind: 'lift' as const, piece: 'p1', on });
  const plan = smallPlan({ steps: [lift(150)] });
  expect(firstDifference(plan, { ...plan, months: 30, name: 'other' })).toBe(Infinity);
  expect(firstDifference(plan, { ...plan, steps: [lift(160)] })).toBe(150);
  expect(firstDifference(plan, { ...plan, steps: [lift(40)] })).toBe(40);
  expect(firstDifference(plan, { ...plan, steps: [lift(150, false)] })).toBe(150);
  expect(firstDifference(plan, { ...plan, pieces: plan.pieces.slice(1) })).toBe(0);
  expect(pastDigest(plan, 149)).toBe(pastDigest({ ...plan, steps: [] }, 149));
  expect(pastDigest(plan, 150)).not.toBe(pastDigest({ ...plan, steps: [] }, 150));
});

it('a redrawn future keeps the past and differs after it; one word gives one future', () => {
  const plan = smallPlan({ months: 6 });
  const layout = compile(plan, CELL_MM);
  const futures = ['a', 'b', 'a'].map((word) => {
    for (const state of grow(layout, 'w'))
      if (state.day === 60) {
        const kept = copyState(state, rulesOf(layout));
        redraw(kept, word);
        expect(hashState(kept)).toBe(hashState(state));
        return hashState(end(growOn(kept)));
      }
    throw new Error('day 60 comes');
  });
  expect(futures[0]).toBe(futures[2]);
  expect(futures[0]).not.toBe(futures[1]);
  expect(futures[0]).not.toBe(hashState(end(grow(layout, 'w'))));
});

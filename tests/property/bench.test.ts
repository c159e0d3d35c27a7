/** Bench files: any bench goes out and comes back whole, and whatever is broken is refused in words. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchText, branchAt, branchPlan, isBenchText, openBench, type Bench } from '../../src/plan/bench';
import { planText } from '../../src/plan/file';
import { randomPlanWithSteps } from '../fixtures/random-steps';

const words = fc.string({ unit: 'binary', maxLength: 30 });
const date = fc
  .date({ min: new Date('1990-01-01'), max: new Date('2090-01-01'), noInvalidDate: true })
  .map((day) => day.toISOString().slice(0, 10));

const mother = fc.record(
  {
    variety: words,
    areaMm2: fc.double({ min: 1, max: 1e6, noNaN: true }),
    on: date,
    tank: words,
    keepShare: fc.double({ min: 0, max: 1, noNaN: true }),
  },
  { requiredKeys: ['variety', 'areaMm2', 'on', 'tank'] },
);

const tile = fc
  .record({
    name: words,
    plan: randomPlanWithSteps(4, 30),
    seed: fc.string({ minLength: 1, maxLength: 9 }),
    fromDay: fc.nat(120),
  })
  .chain((made) => fc.option(words, { nil: undefined }).map((branch) => ({ ...made, branch })));

const bench: fc.Arbitrary<Bench> = fc
  .record({
    name: words,
    tiles: fc.array(tile, { maxLength: 3 }),
    mothers: fc.array(mother, { maxLength: 3 }),
  })
  .map(({ name, tiles, mothers }) => ({
    seambenchBench: 1,
    name,
    tiles: tiles.map(({ fromDay, branch, ...rest }, k) => ({
      id: `t${k + 1}`,
      ...rest,
      ...(branch === undefined
        ? {}
        : { branches: [{ ...branchAt(rest.plan, 'b1', branch, fromDay), months: 7 }] }),
    })),
    mothers: mothers.map((made, k) => ({ id: `m${k + 1}`, ...made })),
  }));

function opened(text: string): Bench {
  const found = openBench(text);
  if ('refusals' in found) throw new Error(found.refusals[0].cure);
  return found.bench;
}

function refusedInWords(text: string): boolean {
  const found = openBench(text);
  if ('bench' in found) return false;
  expect(found.refusals.length).toBeGreaterThan(0);
  for (const { where, found: seen, allowed, cure } of found.refusals) {
    for (const said of [where, seen, allowed, cure]) {
      expect(said).not.toBe('');
      expect(said).not.toMatch(/undefined|\[object|Invalid/u);
    }
    expect(cure).toMatch(/^[A-Z]/u);
  }
  return true;
}

describe('bench files', () => {
  it('come back whole, in the same text', () => {
    fc.assert(
      fc.property(bench, (made) => {
        const text = benchText(made);
        const again = opened(text);
        expect(benchText(again)).toBe(text);
        expect(again.mothers).toEqual(made.mothers);
        expect(again.tiles.map(({ plan, ...rest }) => ({ ...rest, plan: planText(plan) }))).toEqual(
          made.tiles.map(({ plan, ...rest }) => ({ ...rest, plan: planText(plan) })),
        );
        expect(isBenchText(text)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  it('make a branch that goes on as the plan does until it is changed', () => {
    fc.assert(
      fc.property(randomPlanWithSteps(4, 30), fc.nat(130), (plan, day) => {
        const again = branchPlan(plan, branchAt(plan, 'b1', 'other', day));
        const sorted = (steps: readonly { readonly day: number }[]) =>
          steps.map((step) => step).sort((a, b) => a.day - b.day);
        expect(sorted(again.steps)).toEqual(sorted(plan.steps));
      }),
      { numRuns: 200 },
    );
  });

  it('are refused in words and never throw, however they are cut or garbled', () => {
    const garbled = fc
      .tuple(
        bench,
        fc.nat(100_000),
        fc.integer({ min: 1, max: 60 }),
        fc.string({ unit: 'binary', maxLength: 6 }),
      )
      .map(([made, at, drop, insert]) => {
        const text = benchText(made);
        const from = at % text.length;
        return text.slice(0, from) + insert + text.slice(from + drop);
      });
    let refused = 0;
    fc.assert(
      fc.property(garbled, (text) => {
        if (refusedInWords(text)) refused += 1;
      }),
      { numRuns: 600 },
    );
    expect(refused).toBeGreaterThan(400);
    fc.assert(
      fc.property(fc.json(), (text) => refusedInWords(text)),
      { numRuns: 500 },
    );
    fc.assert(
      fc.property(words, (text) => refusedInWords(text)),
      { numRuns: 300 },
    );
  });
});

/** Whatever stands in a log, what it teaches are numbers or a reason, and the plan that takes them is one. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { estimateTables, logEstimates } from '../../src/cli/log-estimates';
import { openPlan } from '../../src/plan/file';
import { alikePairs } from '../../src/trials/alike';
import type { FitChoice } from '../../src/trials/fit-choice';
import { nextPairs } from '../../src/trials/next-pairs';
import { pairTable } from '../../src/trials/pair-table';
import { EVENT_KINDS, type Log } from '../../src/trials/trial';
import { ratesFor, withRates } from '../../src/trials/use-rates';
import { randomLog } from '../fixtures/random-log';
import { smallPlan } from '../fixtures/small-plan';

const choice: fc.Arbitrary<FitChoice> = fc.record({
  leaveOut: fc.subarray([...EVENT_KINDS]),
  split: fc.constantFrom('none' as const, 'tank' as const, 'event' as const),
});

/** JSON has no NaN and no infinity, and would write null in their place. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

/** A log of which all tiles hold its first two varieties. */
function crowded(log: Log): Log {
  const both = log.varieties.slice(0, 2).map(({ id }) => id);
  return {
    ...log,
    trials: log.trials.map((trial) => ({ ...trial, varieties: [...new Set([...both, ...trial.varieties])] })),
  };
}

it('gives finite numbers, chances within their ranges, and pairs to try', () => {
  fc.assert(
    fc.property(randomLog.map(crowded), choice, (log, part) => {
      const estimates = logEstimates(log, part);
      expect(numbersIn(estimates).filter((number) => !Number.isFinite(number))).toEqual([]);
      expect(estimateTables(estimates)).not.toMatch(/NaN|Infinity|undefined/u);
      const table = pairTable(log);
      for (const { low, chance, high, took, tried, undecided, verdicts } of table.noted) {
        expect(low <= chance && chance <= high && low >= 0 && high <= 1).toBe(true);
        expect(took <= tried && tried + undecided === verdicts.length).toBe(true);
      }
      for (const { worth, teaches, why } of nextPairs(table, 'teaches', 20, '2026-11-26'))
        expect([Number.isFinite(worth), teaches > 0, why.endsWith('.')]).toEqual([true, true, true]);
      alikePairs(table);
    }),
    { numRuns: 300 },
  );
});

it('counts every pair of every tile once: fitted, or left out with the reason', () => {
  fc.assert(
    fc.property(randomLog.map(crowded), choice, (log, part) => {
      const { contest, lifetimes } = logEstimates(log, part);
      const pairs = log.trials.reduce(
        (sum, { varieties: { length } }) => sum + (length * (length - 1)) / 2,
        0,
      );
      for (const fits of [contest, lifetimes] as readonly (readonly object[])[]) {
        const counted = fits.reduce<number>((sum, fit) => {
          const { n, leftOut } = fit as { n: number; leftOut: { count: number }[] };
          return sum + n + leftOut.reduce((own, { count }) => own + count, 0);
        }, 0);
        expect(counted).toBe(pairs);
      }
    }),
    { numRuns: 200 },
  );
});

it('makes a plan that opens, or leaves the very same', () => {
  const plan = smallPlan();
  fc.assert(
    fc.property(randomLog.map(crowded), choice, (log, { leaveOut }) => {
      const map = new Map(
        plan.varieties.flatMap(({ id }, at) =>
          log.varieties.at(at) ? [[id, log.varieties[at].id] as const] : [],
        ),
      );
      const { lines, trials } = ratesFor(plan, { log, map, leaveOut });
      const { edit } = withRates(plan, lines, { log, trials, on: '2026-11-26' });
      expect(edit.plan === plan).toBe(lines.length === 0);
      expect(openPlan(JSON.stringify(edit.plan))).toMatchObject({ plan: edit.plan });
    }),
    { numRuns: 200 },
  );
});

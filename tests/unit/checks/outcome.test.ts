/** How a check is judged, and what the report counts. */
import { expect, test } from 'vitest';
import { type Check, THREE_ERRORS } from '../../../src/checks/check';
import { judge } from '../../../src/checks/outcome';
import { reportOn, tallyOf } from '../../../src/checks/report';

const check: Check = {
  name: 'one',
  claim: 'a claim',
  source: 'a source',
  unit: 'mm',
  expected: 10,
  tolerance: 1,
  because: 'a reason',
  run: () => 10.5,
};

test('a check passes within its tolerance on either side, and falls short beyond', () => {
  expect(judge(check).pass).toBe(true);
  expect(judge({ ...check, run: () => 8.9 }).pass).toBe(false);
  expect(judge({ ...check, run: () => Number.NaN }).pass).toBe(false);
});

test('a bound lets the other side run free', () => {
  expect(judge({ ...check, bound: 'atLeast', run: () => 99 }).pass).toBe(true);
  expect(judge({ ...check, bound: 'atLeast', run: () => 8.9 }).pass).toBe(false);
  expect(judge({ ...check, bound: 'atMost', run: () => -99 }).pass).toBe(true);
  expect(judge({ ...check, bound: 'atMost', run: () => 11.1 }).pass).toBe(false);
});

test('a mean has its 95 % interval, and three standard errors as its tolerance where asked', () => {
  const run = () => ({ mean: 11, standardError: 0.5 });
  const outcome = judge({ ...check, tolerance: THREE_ERRORS, run });
  expect(outcome).toMatchObject({ found: 11, tolerance: 1.5, pass: true });
  expect(outcome.interval?.[0]).toBeCloseTo(10.02);
  expect(outcome.interval?.[1]).toBeCloseTo(11.98);
  expect(judge(check).interval).toBeNull();
});

test('a known reason counts only where the check falls short', () => {
  const known = 'why';
  const topic = reportOn({
    title: 'topic',
    quick: true,
    checks: [
      { ...check, known },
      { ...check, known, run: () => 0 },
      { ...check, run: () => 0 },
    ],
  });
  expect(topic.outcomes.map((outcome) => outcome.known)).toEqual([null, known, null]);
  expect(tallyOf({ topics: [topic] })).toEqual({ checks: 3, passed: 1, known: 1, short: 1 });
});

/**
 * Every lesson shows what it says: its claim, over seeds, at the cell of a preview. Six seeds a lesson in the usual run;
 * for more: SEEDS=64 npx vitest run --project grown tests/theory/lessons.test.ts
 */
import { expect, it } from 'vitest';
import { holdClaim } from '../../src/lessons/claim';
import { LESSONS } from '../../src/lessons/order';

const SEEDS = Number(process.env.SEEDS ?? 6);

it.each(LESSONS.map((lesson) => [lesson.id, lesson.claim.words, lesson] as const))(
  '%s: %s',
  (_id, _words, { claim }) => {
    const { mean } = holdClaim(claim, SEEDS);
    expect(mean, `${claim.unit}; ${claim.because}`).toBeGreaterThanOrEqual(claim.from);
    expect(mean, `${claim.unit}; ${claim.because}`).toBeLessThanOrEqual(claim.to);
  },
);

it('a claim that the engine does not show falls short: walls in place of merges', () => {
  const lesson = LESSONS.find(({ id }) => id === 'fused-or-wall');
  if (!lesson) throw new Error('the lesson is there');
  const { claim, plan } = lesson;
  const walls = { ...plan, pairs: plan.pairs.map((pair) => ({ ...pair, acceptance: 0 })) };
  const { mean } = holdClaim({ ...claim, runs: [{ plan: walls, months: [9] }] }, 2);
  expect(mean).toBeLessThan(claim.from);
});

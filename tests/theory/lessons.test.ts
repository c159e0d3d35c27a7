/**
 * Every lesson shows what it says: its claims, over seeds, at the cell of a preview. Six seeds a lesson in the usual run;
 * for more: SEEDS=64 npx vitest run --project grown tests/theory/lessons.test.ts
 */
import { expect, it } from 'vitest';
import { type Look, runsOf, valueOf } from '../../src/lessons/claim';
import type { Claim, Lesson } from '../../src/lessons/lesson';
import { LESSONS } from '../../src/lessons/order';
import { read } from '../../src/measure/read';
import { frameOf } from '../../src/model/frame';
import { grow } from '../../src/model/grow';
import { compile } from '../../src/plan/compile';
import { meanOf } from '../../src/stats/intervals';
import { dayOfMonth } from '../../src/units/quantity';

const SEEDS = Number(process.env.SEEDS ?? 6);
const CELL_MM = 0.5;

/** The mean over seeds of each claim's number. */
function meansOf(lesson: Pick<Lesson, 'plan' | 'tries'>, claims: readonly Claim[], seeds: number): number[] {
  const values = claims.map((): number[] => []);
  for (let k = 1; k <= seeds; k++) {
    const looks = new Map<string, Look>();
    for (const { tile, plan, months } of runsOf(lesson, claims)) {
      const ids = ['', ...plan.varieties.map(({ id }) => id)];
      for (const state of grow(compile(plan, CELL_MM), String(k))) {
        const month = months.find((wanted) => dayOfMonth(wanted) === state.day);
        if (month === undefined) continue;
        const reading = read(state, ids, String(k), month);
        looks.set(`${tile} ${month}`, { reading, frame: frameOf(state, month) });
      }
    }
    claims.forEach((claim, at) => {
      const value = valueOf(claim, (tile, month) => looks.get(`${tile} ${month}`));
      if (value !== null) values[at]?.push(value);
    });
  }
  return values.map((all) => meanOf(all).mean);
}

it.each(LESSONS.map((lesson) => [lesson.id, lesson] as const))('%s shows what it claims', (_id, lesson) => {
  expect(lesson.claims.length).toBeGreaterThan(0);
  const means = meansOf(lesson, lesson.claims, SEEDS);
  lesson.claims.forEach(({ words, from, to, because }, at) => {
    expect(means[at], `${words}; ${because}`).toBeGreaterThanOrEqual(from);
    expect(means[at], `${words}; ${because}`).toBeLessThanOrEqual(to);
  });
});

it('a claim that the engine does not show falls short: walls in place of what fuses', () => {
  const lesson = LESSONS.find(({ id }) => id === 'fused-or-wall');
  const claim = lesson?.claims[0];
  if (!lesson || !claim) throw new Error('the lesson is there');
  const pairs = lesson.plan.pairs.map((pair) => ({ ...pair, acceptance: 0 }));
  const [mean] = meansOf({ plan: { ...lesson.plan, pairs }, tries: [] }, [claim], 2);
  expect(mean).toBeLessThan(claim.from);
});

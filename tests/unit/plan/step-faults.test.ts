import { expect, it } from 'vitest';
import type { Plan, StepOf, Xy } from '../../../src/plan/plan';
import { refuse } from '../../../src/plan/refuse';
import { smallPlan } from '../../fixtures/small-plan';

function found(...lines: Xy[][]): string[] {
  const step: StepOf<'recut'> = { id: 'c', day: 3, kind: 'recut', lines, kerfMm: 1, then: [] };
  const plan: Plan = smallPlan({ steps: [step] });
  return refuse(plan).map((refusal) => refusal.found);
}

function scribble(points: number): Xy[] {
  return Array.from({ length: points }, (_, k): Xy => [
    20 * Math.sin(1.7 * k * k),
    20 * Math.cos(2.3 * k * k),
  ]);
}

it('refuses a scribble at once, where the faces would take minutes', () => {
  const start = performance.now();
  expect(found(scribble(1000), scribble(900), scribble(800))).toEqual(['more than 10000 parts in all']);
  expect(found(...Array.from({ length: 5 }, () => scribble(900)))).toEqual([
    'cut lines of 4500 points in all',
  ]);
  expect(performance.now() - start).toBeLessThan(5000);
});

it('passes a long line that is drawn by hand, and a grid of 20 by 20', () => {
  const wave = Array.from({ length: 1000 }, (_, k): Xy => [k / 10 - 50, Math.sin(k / 20)]);
  expect(found(wave)).toEqual([]);
  const grid = Array.from({ length: 19 }, (_, k) => 3 * (k - 9)).flatMap((at): Xy[][] => [
    [
      [at, -40],
      [at, 40],
    ],
    [[-40, at], [40, at]], // prettier-ignore
  ]);
  expect(found(...grid)).toEqual([]);
});

import { expect, it } from 'vitest';
import { growOptions } from '../../../src/cli/grow-options';
import { nextSeed } from '../../../src/view/grow/seed-words';

it.each([
  ['reef', 'sand'],
  ['my tank', 'my tank 2'],
  ['my tank 9', 'my tank 10'],
])('after the seed %s comes %s', (seed, next) => {
  expect(nextSeed(seed)).toBe(next);
});

it('is never longer than the command line takes', () => {
  const longest = 'x'.repeat(100);
  expect(growOptions(['plan.json', '--seed', longest]).seeds).toEqual([longest]);
  for (const seed of [longest, `${'x'.repeat(99)}9`]) {
    const next = nextSeed(seed);
    expect(growOptions(['plan.json', '--seed', next]).seeds).toEqual([next]);
  }
});

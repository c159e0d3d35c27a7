/**
 * What one saved plan grows to, pinned: a change here changes what every saved plan grows to, so it comes with a new
 * MODEL_VERSION and a word in the commit that says by how much readings move.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { MODEL_VERSION } from '../../../src/model/defaults';
import { grow } from '../../../src/model/grow';
import { hashState } from '../../../src/model/hash';
import { compile } from '../../../src/plan/compile';
import { openPlan } from '../../../src/plan/file';

test('the first saved shape grows to its hash', () => {
  const opened = openPlan(readFileSync('tests/fixtures/plans/v1.json', 'utf8'));
  if (!('plan' in opened)) throw new Error(opened.refusals.map((refusal) => refusal.found).join());
  let hash = '';
  for (const state of grow(compile(opened.plan, 0.5), 'pinned')) {
    if (state.day === state.layout.days) hash = hashState(state);
  }
  expect({ model: MODEL_VERSION, hash }).toMatchInlineSnapshot(`
    {
      "hash": "e14e6c3614292555",
      "model": 7,
    }
  `);
});

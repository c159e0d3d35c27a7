import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { grow } from '../../src/model/grow';
import { compile } from '../../src/plan/compile';
import { openPlan } from '../../src/plan/file';

const SEEDS = 12;

/** Verdicts a tile, in the mean of the seeds, of a plan none of whose pairs takes and all of whose seams die. */
function verdicts(cellMm: number): number {
  const opened = openPlan(readFileSync('presets/two-take-one-walls.json', 'utf8'));
  if (!('plan' in opened)) throw new Error(opened.refusals.map((refusal) => refusal.found).join());
  const { plan } = opened;
  const dying = {
    ...plan,
    settings: { ...plan.settings, deadShare: 1 },
    pairs: plan.pairs.map((pair) => ({ ...pair, acceptance: 0 })),
  };
  let count = 0;
  for (let seed = 1; seed <= SEEDS; seed++)
    for (const state of grow(compile(dying, cellMm), String(seed)))
      if (state.day === state.layout.days) count += state.nuclei.count;
  return count / SEEDS;
}

// Definition: a verdict falls once and runs on along the seam; how finely the tile is cut up has no say. A dead seam
// bares the tissue ahead of it: at 0.25 mm, were the gap not run over, each stretch would have a verdict of its own, 27
// a tile in place of 7. Tolerance: 1, three standard errors of a count of seven over 12 seeds being 2.3, halved since
// both grow on the same seeds.
it('a dead verdict runs on over the tissue that it bared, at any cell', () => {
  const [coarse, fine] = [verdicts(0.5), verdicts(0.25)];
  expect(Math.abs(fine - coarse)).toBeLessThan(1);
  expect(coarse).toBeGreaterThan(3);
});

/** What an isolating step takes out becomes a piece, and the piece a plan, of the very tissue that left the tile. */
import { expect, it } from 'vitest';
import { read } from '../../../src/measure/read';
import { grow } from '../../../src/model/grow';
import { compile } from '../../../src/plan/compile';
import { planOfCutting } from '../../../src/plan/cutting';
import { pieceAreaMm2 } from '../../../src/plan/outline';
import type { Plan, Step } from '../../../src/plan/plan';
import { refuse } from '../../../src/plan/refuse';
import { cutOut } from '../../../workers/cut-out';
import { Past } from '../../../workers/past';
import { smallPlan } from '../../fixtures/small-plan';

const CUT: Step = {
  id: 's2',
  day: 122,
  kind: 'isolate',
  around: [
    [-6, -5],
    [6, -5],
    [6, 5],
    [-6, 5],
  ],
  kerfMm: 1,
};
/** On the same day and before it in the list: the cut is made on what this leaves. */
const TRIM: Step = { id: 's1', day: 122, kind: 'trim', widthMm: 1 };
const plan: Plan = { ...smallPlan({ months: 5, steps: [TRIM, CUT] }) };
const run = { plan, seed: 'w', cellMm: 0.25 };
const ids = ['', ...plan.varieties.map(({ id }) => id)];

/** mm2 that the step took off as cuttings, by the reading. */
function cutMm2(): number {
  for (const state of grow(compile(plan, 0.25), 'w'))
    if (state.day === 122) {
      const step = read(state, ids, 'w', 4).steps.find(({ id }) => id === 's2');
      return Object.values(step?.cutMm2 ?? {}).reduce((sum, mm2) => sum + mm2, 0);
    }
  throw new Error('day 122 comes');
}

it('is the tissue that left, and stands on a tile of its own as a plan that is not refused', () => {
  const past = new Past();
  const piece = cutOut(past, run, 's2');
  if (!piece) throw new Error('there is tissue to cut out');
  // outlines run along the lattice, specks of under a polyp go into what surrounds them
  expect(Math.abs(pieceAreaMm2(piece) - cutMm2())).toBeLessThan(2);
  const own = planOfCutting(plan, piece);
  expect(refuse(own)).toEqual([]);
  const [first] = grow(compile(own, 0.25), 'w');
  expect(Math.abs(read(first, ids, 'w', 0).coverMm2 - cutMm2())).toBeLessThan(2);
});

it('is the same from a kept tile; nothing where the step cuts bare tile, or is another', () => {
  const past = new Past();
  for (const state of grow(compile(plan, 0.25), 'w')) past.keep(run, state);
  expect(cutOut(past, run, 's2')).toEqual(cutOut(new Past(), run, 's2'));
  const beside = {
    ...CUT,
    around: [
      [24, 24],
      [29, 24],
      [29, 29],
    ] as [number, number][],
  };
  expect(cutOut(past, { ...run, plan: { ...plan, steps: [beside] } }, 's2')).toBeNull();
  expect(cutOut(past, run, 's1')).toBeNull();
});

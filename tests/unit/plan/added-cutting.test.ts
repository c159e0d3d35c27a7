import { describe, expect, it } from 'vitest';
import { addCutting, cuttingsOf } from '../../../src/plan/added-cutting';
import { branchAt, EMPTY_BENCH } from '../../../src/plan/bench';
import type { GraftPiece, Plan, Step } from '../../../src/plan/plan';
import { refuse } from '../../../src/plan/refuse';
import { takesOf } from '../../../src/plan/stock';
import { discPiece, smallPlan } from '../../fixtures/small-plan';

const ISOLATE: Step = { id: 's1', day: 60, kind: 'isolate', around: [[0, 0], [6, 0], [6, 6]], kerfMm: 1 }; // prettier-ignore
const ADD: Step = {
  id: 's1',
  day: 90,
  kind: 'add',
  piece: { ...discPiece('p9', 'a', 10, -5, 8), turnDeg: 30 },
};

/** Two patches: of variety a, and of one that the other plan does not have. */
const CUTTING: GraftPiece = {
  id: 'p1',
  at: [0, 0],
  turnDeg: 0,
  patches: [
    { variety: 'a', outline: [[0, 0], [3, 0], [3, 3], [0, 3]] }, // prettier-ignore
    { variety: 'b', outline: [[3, 0], [6, 0], [6, 3], [3, 3]] }, // prettier-ignore
  ],
  seams: [{ along: [[3, 0], [3, 3]], is: 'lapped', over: 'b' }], // prettier-ignore
};

const here = smallPlan({ steps: [ADD] });
const [fern, garnet] = here.varieties;
const from: Plan = {
  ...here,
  name: 'Winter tile',
  varieties: [
    { ...fern, name: ` ${fern.name.toUpperCase()}` },
    { ...garnet, name: 'Sloe', rimMmPerMonth: 1.5 },
  ],
  pairs: [{ a: 'a', b: 'b', acceptance: { took: 3, tried: 4 } }],
};

describe('what is cut out of one tile, added to another', () => {
  it('takes the place of what the step added; a variety that the plan lacks comes along with its pairs', () => {
    const { plan, words } = addCutting(here, 's1', from, CUTTING);
    expect(words).toBe('Set a cutting of Winter tile');
    expect(plan.varieties.slice(0, 2)).toEqual(here.varieties);
    const sloe = plan.varieties[2];
    expect(sloe).toMatchObject({ name: 'Sloe', rimMmPerMonth: 1.5 });
    expect(plan.pairs.slice(here.pairs.length)).toEqual([{ a: 'a', b: sloe.id, acceptance: { took: 3, tried: 4 } }]); // prettier-ignore
    const [step] = plan.steps;
    if (step.kind !== 'add' || !('patches' in step.piece)) throw new Error('the cutting is added');
    expect(step.piece).toMatchObject({ id: 'p9', at: [10, -5], turnDeg: 30 });
    expect(step.piece.patches.map(({ variety }) => variety)).toEqual(['a', sloe.id]);
    expect(step.piece.seams?.[0].over).toBe(sloe.id);
    expect(refuse(plan)).toEqual([]);
  });

  it('costs no mother, for it comes off a tile', () => {
    expect(takesOf(here).filter(({ day }) => day > 0)).toHaveLength(1);
    expect(takesOf(addCutting(here, 's1', from, CUTTING).plan).filter(({ day }) => day > 0)).toEqual([]);
  });

  it('leaves the odds of pairs that the plan knows, and a step of another kind, as they are', () => {
    const known = addCutting(here, 's1', { ...from, varieties: here.varieties }, CUTTING).plan;
    expect(known.varieties).toEqual(here.varieties);
    expect(known.pairs).toEqual(here.pairs);
    const trims = smallPlan({ steps: [{ id: 's1', day: 9, kind: 'trim', widthMm: 1 }] });
    expect(addCutting(trims, 's1', from, CUTTING).plan).toBe(trims);
  });

  it('lists what is cut out of the tile shown, of the other tiles and of what is a branch’s own', () => {
    const cut = smallPlan({ steps: [ISOLATE, { ...ISOLATE, id: 's2', day: 120, on: false }] });
    const branch = { ...branchAt(cut, 'b1', 'Later', 100), steps: [{ ...ISOLATE, id: 's3', day: 150 }] };
    const bench = {
      ...EMPTY_BENCH,
      tiles: [
        { id: 't1', name: 'Shown', plan: here, seed: 'one' },
        { id: 't2', name: 'Winter', plan: cut, seed: 'two', branches: [branch] },
      ],
    };
    expect(cuttingsOf(here, 'one', bench).map(({ words, seed, step }) => [words, seed, step])).toEqual([
      ['Winter, day 60', 'two', 's1'],
      ['Winter, Later, day 150', 'two', 's3'],
    ]);
    expect(cuttingsOf(cut, 'two', EMPTY_BENCH).map(({ words }) => words)).toEqual(['this tile, day 60']);
  });
});

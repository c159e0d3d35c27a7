import { describe, expect, it } from 'vitest';
import {
  benchText,
  branchAt,
  branchOf,
  branchPlan,
  branchRefusals,
  EMPTY_BENCH,
  isBenchText,
  openBench,
  type Bench,
} from '../../../src/plan/bench';
import { planText } from '../../../src/plan/file';
import { nextId } from '../../../src/plan/ids';
import type { Step } from '../../../src/plan/plan';
import { smallPlan } from '../../fixtures/small-plan';

const trim = (id: string, day: number): Step => ({ id, day, kind: 'trim', widthMm: 1 });
const plan = smallPlan({ months: 8, steps: [trim('s1', 30), trim('s2', 150)] });
const branch = { ...branchAt(plan, 'b1', 'Later', 120), steps: [trim('s3', 121)], months: 10 };
const bench: Bench = {
  seambenchBench: 1,
  name: 'Winter',
  tiles: [{ id: 't1', name: 'First', plan, seed: 'one', branches: [branch] }],
  mothers: [{ id: 'm1', variety: 'Fern', areaMm2: 900, on: '2026-03-01', tank: 'left' }],
};

type Change = (file: {
  tiles: Record<string, unknown>[];
  mothers: Record<string, unknown>[];
  [key: string]: unknown;
}) => void;

/** What opening says of the bench after a change to its file: places and cures. */
function refused(change: Change): string[] {
  const file = JSON.parse(benchText(bench)) as Parameters<Change>[0];
  change(file);
  const opened = openBench(JSON.stringify(file));
  return 'refusals' in opened ? opened.refusals.map(({ where, cure }) => `${where} | ${cure}`) : [];
}

describe('a bench file', () => {
  it('is opened as it was saved', () => {
    expect(openBench(benchText(bench))).toEqual({ bench });
    expect(openBench(benchText(EMPTY_BENCH))).toEqual({ bench: EMPTY_BENCH });
  });

  it('is told from a plan file', () => {
    expect(isBenchText(benchText(EMPTY_BENCH))).toBe(true);
    expect(isBenchText(planText(plan))).toBe(false);
    expect(isBenchText('{')).toBe(false);
    expect(openBench(planText(plan))).toMatchObject({ refusals: [{ where: 'the bench' }] });
  });

  it('is refused in words that name the tile', () => {
    expect(refused((file) => ((file.tiles[0]['plan'] as Record<string, unknown>)['months'] = 99))).toEqual([
      'tiles[0] (t1).plan.months | In the tile “First”: The number of months of the plan is 99: it must be a whole number from 1 to 36',
    ]);
    expect(refused((file) => delete file.tiles[0]['seed'])[0]).toContain('tiles[0] (t1).seed');
    expect(refused((file) => (file['seambenchBench'] = 2))[0]).toContain('newer Seambench');
    expect(refused((file) => (file['more'] = 1))[0]).toMatch(/^more \| In the bench/u);
    const inner = { ...plan, seed: 'two' };
    expect(refused((file) => (file.tiles[0]['plan'] = inner))[0]).toContain(
      'the seed stands inside the plan',
    );
  });

  it('is refused for ids twice, days that are none and steps before their branch', () => {
    expect(refused((file) => file.tiles.push(file.tiles[0]))[0]).toContain('the same id t1');
    expect(refused((file) => file.mothers.push(file.mothers[0]))[0]).toContain('the same id m1');
    expect(refused((file) => (file.mothers[0]['on'] = '2026-02-30'))[0]).toContain('a date such as');
    const early = [{ ...branch, fromDay: 130 }];
    expect(refused((file) => (file.tiles[0]['branches'] = early))[0]).toContain(
      'begins on day 130 and has a step on day 121',
    );
  });
});

describe('a branch', () => {
  it('shares the past and has its own steps and months from its day on', () => {
    const made = branchPlan(plan, branch);
    expect(made.steps.map(({ id }) => id)).toEqual(['s1', 's3']);
    expect(made.months).toBe(10);
    expect(branchPlan(plan, branchAt(plan, 'b2', 'Same', 120))).toEqual(plan);
  });

  it('takes what is changed after its day, and nothing else', () => {
    const made = branchPlan(plan, branch);
    const later = { ...made, steps: [...made.steps, trim('s4', 200)], months: 8 };
    expect(branchOf(plan, branch, later)).toEqual({
      id: 'b1',
      name: 'Later',
      fromDay: 120,
      steps: [trim('s3', 121), trim('s4', 200)],
    });
    expect(branchOf(plan, branch, { ...made, steps: [trim('s1', 31), trim('s3', 121)] })).toBeNull();
    expect(branchOf(plan, branch, { ...made, pieces: [] })).toBeNull();
  });

  it('that no longer fits its plan is told of and still opens', () => {
    const lifting = { ...branch, steps: [{ id: 's3', day: 121, kind: 'lift', piece: 'p2' } as const] };
    expect(branchRefusals(plan, lifting)).toEqual([]);
    const fewer = { ...plan, pieces: plan.pieces.slice(0, 1) };
    expect(branchRefusals(fewer, lifting)).not.toEqual([]);
    const unfit = { ...bench, tiles: [{ ...bench.tiles[0], plan: fewer, branches: [lifting] }] };
    expect(openBench(benchText(unfit))).toEqual({ bench: unfit });
  });
});

describe('ids', () => {
  it('go on after the highest', () => {
    expect(nextId('t', [])).toBe('t1');
    expect(nextId('t', [{ id: 't7' }, { id: 'other' }, { id: 't2' }])).toBe('t8');
  });
});

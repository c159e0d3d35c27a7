/** A graft whose lapped seam says who lies over the other: so the section has it, and no one else laps there. */
import { describe, expect, it } from 'vitest';
import { section } from '../../../src/measure/section';
import { frameOf, type Frame } from '../../../src/model/frame';
import { grow } from '../../../src/model/grow';
import { compile } from '../../../src/plan/compile';
import { openPlan, planText } from '../../../src/plan/file';
import { graftOf } from '../../../src/plan/graft';
import type { GraftPiece, Plan } from '../../../src/plan/plan';
import { refuse } from '../../../src/plan/refuse';
import { dayOfMonth } from '../../../src/units/quantity';
import { smallPlan } from '../../fixtures/small-plan';

const MONTHS = 4;

function graft(seam: NonNullable<GraftPiece['seams']>[number]): GraftPiece {
  return {
    id: 'g',
    at: [0, 0],
    turnDeg: 0,
    patches: [
      { variety: 'a', outline: [[-8, -8], [0, -8], [0, 8], [-8, 8]] },
      { variety: 'b', outline: [[0, -8], [8, -8], [8, 8], [0, 8]] },
    ],
    seams: [seam],
  }; // prettier-ignore
}

function planWith(over: string | undefined, aggressionOfA: number, more: Partial<Plan> = {}): Plan {
  return smallPlan({
    tile: { shape: 'square', sizeMm: 30 },
    varieties: [
      { id: 'a', name: 'a', colour: '#336644', rimMmPerMonth: 3, aggression: aggressionOfA },
      { id: 'b', name: 'b', colour: '#884466', rimMmPerMonth: 3, aggression: 0.5 },
    ],
    pairs: [],
    pieces: [graft({ along: [[0, -8], [0, 8]], is: 'lapped', ...(over !== undefined && { over }) })], // prettier-ignore
    months: MONTHS,
    ...more,
  });
}

/** Frames of month 0 and of the last one. */
function frames(plan: Plan): [Frame, Frame] {
  const found: Frame[] = [];
  for (const state of grow(compile(plan, 0.5), 'graft'))
    for (const month of [0, MONTHS]) if (state.day === dayOfMonth(month)) found.push(frameOf(state, month));
  return [found[0], found[1]];
}

const joint = (frame: Frame) => section(frame, [-6, 0.2], [6, 0.2]).joints[0];

describe('who lies over', () => {
  it.each([
    ['a', 1],
    ['b', 2],
  ])(
    'is %s where the seam says so, of two that are equally aggressive, and neither laps on',
    (over, number) => {
      const [first, last] = frames(planWith(over, 0.5));
      expect(joint(first)).toMatchObject({ kind: 'lapped', covers: number });
      expect(joint(last)).toMatchObject({ kind: 'lapped', covers: number });
      expect(last.beneath.cell).toHaveLength(0);
    },
  );

  it('is not known where nothing is said of two that are alike', () => {
    expect(joint(frames(planWith(undefined, 0.5))[0])).toMatchObject({ kind: 'lapped', covers: null });
  });

  it('laps on where it is the more aggressive one, as where nothing is said', () => {
    const [said, unsaid] = [planWith('a', 1), planWith(undefined, 1)].map((plan) => frames(plan)[1]);
    expect(joint(said)).toMatchObject({ covers: 1 });
    expect(said.beneath.cell.length).toBeGreaterThan(50);
    expect(said.beneath.cell).toEqual(unsaid.beneath.cell);
  });

  it('holds its ground where the other is the more aggressive one', () => {
    const [, last] = frames(planWith('b', 1));
    expect(joint(last)).toMatchObject({ covers: 2 });
    expect(last.beneath.cell).toHaveLength(0);
  });

  it('stays so when the piece is moved', () => {
    const move = { id: 's1', day: 40, kind: 'move', piece: 'g', at: [2, 1], turnDeg: 90 } as const;
    const [, last] = frames(planWith('b', 1, { steps: [move] }));
    const across = section(last, [2.2, -5], [2.2, 7]).joints[0];
    expect(across).toMatchObject({ kind: 'lapped', covers: 2 });
    expect(last.beneath.cell).toHaveLength(0);
  });
});

it('comes along where a lapped seam is cut out of a grown tile', () => {
  const [, last] = frames(planWith('a', 1));
  const around = [[-6, -6], [10, -6], [10, 6], [-6, 6]] as const; // prettier-ignore
  const piece = graftOf(last, { around, kerfMm: 0.8 }, 'q', ['', 'a', 'b']);
  const lapped = piece?.seams?.filter(({ is }) => is === 'lapped') ?? [];
  expect(lapped.length).toBeGreaterThan(0);
  for (const { over } of lapped) expect(over).toBe('a');
});

it('is kept in the file, and refused of a seam that is not lapped or of a variety that the piece has not', () => {
  const plan = planWith('a', 0.5);
  expect(refuse(plan)).toEqual([]);
  expect(openPlan(planText(plan))).toMatchObject({ plan: { pieces: plan.pieces } });
  const along = [[0, -8], [0, 8]] as const; // prettier-ignore
  const other = { ...plan.varieties[0], id: 'c' };
  for (const seam of [
    { along, is: 'ridge', over: 'a' },
    { along, is: 'lapped', over: 'c' },
  ] as const) {
    const refusals = refuse({ ...plan, varieties: [...plan.varieties, other], pieces: [graft(seam)] });
    expect(refusals).toHaveLength(1);
    expect(refusals[0].found).toContain(`“over” ${seam.over} of the seam 1`);
  }
});

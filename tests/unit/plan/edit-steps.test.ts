import { describe, expect, it } from 'vitest';
import * as edit from '../../../src/plan/edit-steps';
import type { Plan, Step, StepOf } from '../../../src/plan/plan';
import { gridLines, stripeLines } from '../../../src/plan/patterns';
import { refuse } from '../../../src/plan/refuse';
import { facesOfRecut } from '../../../src/plan/steps';
import { smallPlan } from '../../fixtures/small-plan';

const TRIM: Step = { id: 's1', day: 120, kind: 'trim', widthMm: 3 };
const LIFT: Step = { id: 's4', day: 90, kind: 'lift', piece: 'p1' };
const plan = smallPlan({ steps: [TRIM, LIFT] });

describe('edits of steps', () => {
  it('adds at the end of the list, under an id never used', () => {
    expect(edit.nextStepId(plan)).toBe('s5');
    const added = edit.addStep(plan, { id: 's5', day: 30, kind: 'trim', widthMm: 1 });
    expect(added.plan.steps.map(({ id }) => id)).toEqual(['s1', 's4', 's5']);
    expect(added.words).toBe('Add the trim of day 30');
  });

  it('changes, moves, switches and removes one step and shares the others', () => {
    const changed = edit.changeStep(plan, 's1', { widthMm: 2, piece: 'p1' });
    expect(changed.plan.steps[0]).toEqual({ ...TRIM, widthMm: 2, piece: 'p1' });
    expect(changed.plan.steps[1]).toBe(LIFT);
    expect(edit.changeStep(changed.plan, 's1', { piece: undefined }).plan.steps[0]).toEqual({
      ...TRIM,
      widthMm: 2,
    });
    expect(edit.moveStep(plan, 's1', 140.4).plan.steps[0].day).toBe(140);
    expect(edit.moveStep(plan, 's1', -5).plan.steps[0].day).toBe(0);
    const off = edit.switchStep(plan, 's4', false);
    expect(off.plan.steps[1]).toEqual({ ...LIFT, on: false });
    expect(off.words).toBe('Switch off the lift of day 90');
    expect(edit.switchStep(off.plan, 's4', true).plan.steps[1]).toEqual(LIFT);
    expect(edit.removeStep(plan, 's1').plan.steps).toEqual([LIFT]);
  });

  it('gives the very same plan where nothing changes', () => {
    expect(edit.moveStep(plan, 's1', 120).plan).toBe(plan);
    expect(edit.changeStep(plan, 'none', { widthMm: 1 }).plan).toBe(plan);
    expect(edit.removeStep(plan, 'none').plan).toBe(plan);
  });
});

describe('order within a day', () => {
  const steps: Step[] = [
    { id: 'a', day: 90, kind: 'trim', widthMm: 1 },
    { id: 'b', day: 30, kind: 'trim', widthMm: 1 },
    { id: 'c', day: 90, kind: 'trim', widthMm: 2 },
  ];
  const days = smallPlan({ steps });
  const order = (after: Plan): string => after.steps.map(({ id }) => id).join('');

  it('changes places with the neighbour of the same day, over steps of other days', () => {
    expect(order(edit.reorderStep(days, 'c', -1).plan)).toBe('cba');
    expect(order(edit.reorderStep(days, 'a', 1).plan)).toBe('cba');
    expect(edit.reorderStep(days, 'c', -1).words).toBe('Do the trim of day 90 earlier that day');
  });

  it('leaves the plan where there is none', () => {
    expect(edit.reorderStep(days, 'b', 1).plan).toBe(days);
    expect(edit.reorderStep(days, 'a', -1).plan).toBe(days);
  });
});

describe('parts of a recut', () => {
  const base = smallPlan();
  const recut: StepOf<'recut'> = {
    id: 's1',
    day: 60,
    kind: 'recut',
    lines: stripeLines(base.tile, 20, 0),
    kerfMm: 1,
    then: [],
  };
  const cut = smallPlan({ steps: [recut] });
  const stepOf = (after: Plan): StepOf<'recut'> => after.steps[0] as StepOf<'recut'>;
  // lines at x = -20, 0 and 20: four strips with middles at -25, -10, 10 and 25
  it('are moved, turned and put back as cut, which lists nothing', () => {
    const moved = edit.placePart(cut, 's1', 's1.2', { at: [-9, 1.00049], turnDeg: 270 }, 'Turn');
    expect(moved.words).toBe('Turn s1.2 in the recut of day 60');
    expect(stepOf(moved.plan).then).toEqual([{ piece: 's1.2', at: [-9, 1], turnDeg: -90 }]);
    const back = edit.placePart(moved.plan, 's1', 's1.2', { at: [-10, 0], turnDeg: 360 });
    expect(stepOf(back.plan).then).toEqual([]);
  });

  it('swap their places and keep their turns; twice is as before', () => {
    const turned = edit.placePart(cut, 's1', 's1.2', { at: [-10, 0], turnDeg: 180 }).plan;
    const swapped = edit.swapParts(turned, 's1', 's1.2', 's1.3').plan;
    expect(stepOf(swapped).then).toEqual([
      { piece: 's1.2', at: [10, 0], turnDeg: 180 },
      { piece: 's1.3', at: [-10, 0], turnDeg: 0 },
    ]);
    expect(stepOf(edit.swapParts(swapped, 's1', 's1.2', 's1.3').plan).then).toEqual(stepOf(turned).then);
    expect(edit.swapParts(cut, 's1', 's1.2', 's9.1').plan).toBe(cut);
  });

  it('of a move and an addition it is their own piece', () => {
    const both = smallPlan({
      steps: [
        { id: 'm', day: 1, kind: 'move', piece: 'p1', at: [0, 0], turnDeg: 0 },
        { id: 'n', day: 1, kind: 'add', piece: { ...base.pieces[1], id: 'p3' } },
      ],
    });
    const to = { at: [4, 5], turnDeg: 10 } as const;
    expect(edit.placePart(both, 'm', 'p1', to).plan.steps[0]).toMatchObject(to);
    expect(edit.placePart(both, 'n', 'p3', to).plan.steps[1]).toMatchObject({ piece: { id: 'p3', ...to } });
  });

  it('keep their names through a new line that does not touch them, in later steps too', () => {
    // the last strip is halved: only the parts before it stay, and names follow their places
    const named = smallPlan({
      steps: [
        { ...recut, then: [{ piece: 's1.1', at: [-26, 0], turnDeg: 0 }] },
        { id: 's2', day: 90, kind: 'lift', piece: 's1.2' },
      ],
    });
    const before = facesOfRecut(named.tile, recut)[1].centroid;
    const { plan: after, words } = edit.changeLines(named, 's1', [...recut.lines, [[19, -5], [31, -5]]]); // prettier-ignore
    const faces = facesOfRecut(after.tile, stepOf(after));
    expect(faces).toHaveLength(5);
    const lifted = after.steps[1] as StepOf<'lift'>;
    expect(faces[Number(lifted.piece.split('.')[1]) - 1].centroid).toEqual(before);
    expect(lifted.piece).not.toBe('s1.2');
    expect(stepOf(after).then).toHaveLength(1);
    expect(words).toBe('Change the lines of the recut of day 60');
    expect(refuse(after)).toEqual([]);
  });

  it('lie as cut again, and a later step is refused, where they are cut otherwise', () => {
    const named = smallPlan({
      steps: [
        { ...recut, then: [{ piece: 's1.1', at: [-26, 0], turnDeg: 0 }] },
        { id: 's2', day: 90, kind: 'lift', piece: 's1.2' },
      ],
    });
    const { plan: after, words } = edit.changeLines(named, 's1', gridLines(named.tile, 12, 0));
    expect(stepOf(after).then).toEqual([]);
    expect(words).toContain('its parts lie as cut again');
    expect(refuse(after).map(({ cure }) => cure)).toEqual([
      'In the lift of day 90 the piece s1.2-gone is not there: choose another piece, or remove the step',
    ]);
  });

  it('that steps name keep the recut: removing it is refused with the cure', () => {
    const named = smallPlan({ steps: [recut, { id: 's2', day: 90, kind: 'lift', piece: 's1.2' }] });
    expect(refuse(edit.removeStep(named, 's1').plan)[0].cure).toContain(
      'In the lift of day 90 the piece s1.2',
    );
  });
});

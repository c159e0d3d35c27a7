import { describe, expect, it } from 'vitest';
import * as edit from '../../../src/plan/edit-steps';
import type { Step } from '../../../src/plan/plan';
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

import { describe, expect, it } from 'vitest';
import type { Step } from '../../../src/plan/plan';
import { pieceTaken } from '../../../src/view/cut/parts';
import { smallPlan } from '../../fixtures/small-plan';

const MOVE: Step = { id: 's1', day: 30, kind: 'move', piece: 'p1', at: [12, 3], turnDeg: 0 };

describe('the piece that a step is of', () => {
  const plan = smallPlan({ steps: [MOVE, { id: 's2', day: 60, kind: 'lift', piece: 'p1' }] });

  it('is outlined where it stands on that day', () => {
    const [ring] = pieceTaken(plan, 's2');
    const middle = [0, 1].map((axis) => ring.reduce((sum, corner) => sum + corner[axis], 0) / ring.length);
    expect(middle[0]).toBeCloseTo(12, 6);
    expect(middle[1]).toBeCloseTo(3, 6);
  });

  it('is outlined for a step that is switched off, too, and for none that is of no one piece', () => {
    const off = smallPlan({ steps: [{ id: 's2', day: 60, kind: 'lift', piece: 'p1', on: false }] });
    expect(pieceTaken(off, 's2')).toHaveLength(1);
    const all = smallPlan({ steps: [{ id: 's3', day: 60, kind: 'trim', widthMm: 3 }, MOVE] });
    expect(pieceTaken(all, 's3')).toEqual([]);
    expect(pieceTaken(all, 's1')).toEqual([]);
  });
});

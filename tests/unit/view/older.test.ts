import { expect, it } from 'vitest';
import { section } from '../../../src/measure/section';
import { olderSections } from '../../../src/view/section/older';
import type { Step } from '../../../src/plan/plan';
import { sectionFrame } from '../../fixtures/section-frame';

it('growth lines come from months since the last cut, for what was cut or moved no longer lies there', () => {
  const frames = Array.from({ length: 9 }, (_, month) => ({
    ...sectionFrame({ sizeMm: 10, cellMm: 0.5, label: () => 1, heightMm: () => 1 + month / 10 }),
    month,
  }));
  const line = { from: [-4, 0], to: [4, 0] } as const;
  const heights = (steps: readonly Step[]): number[] =>
    olderSections(frames, 8, line, section(frames[8], line.from, line.to), steps).map(
      ({ slices }) => slices[3].surfaceMm,
    );
  expect(heights([])).toEqual([1.6, 1.4, 1.2, 1]);
  const move: Step = { id: 's', day: 100, kind: 'move', piece: 'p1', at: [1, 0], turnDeg: 0 };
  // month 4 is read after day 121
  expect(heights([move])).toEqual([1.6, 1.4]);
  expect(heights([{ ...move, on: false }])).toHaveLength(4);
  expect(heights([{ ...move, day: 300 }])).toHaveLength(4);
});

import { expect, it } from 'vitest';
import type { Frame } from '../../../src/model/frame';
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

it('of an older rim that a line runs along no comb is drawn, and of a piece all is', () => {
  const frameAt = (month: number, label: (x: number) => number) => ({
    ...sectionFrame({ sizeMm: 20, cellMm: 0.25, label, heightMm: () => 1 + month }),
    month,
  });
  // at month 0 a piece from -8 to -4 with a hole of one cell, then teeth of two cells
  const isThen = (x: number): boolean =>
    (x > -8 && x < -4 && Math.abs(x + 6) > 0.2) || (x > 2 && Math.floor(x * 2) % 2 === 0);
  const frames = [frameAt(0, (x) => (isThen(x) ? 1 : 0)), null, frameAt(2, () => 1)];
  const line = { from: [-9, 0], to: [9, 0] } as const;
  const [then] = olderSections(frames, 2, line, section(frames[2] as Frame, line.from, line.to), []);
  const edges = then.slices.filter(
    ({ layers }, k) => k > 0 && layers.length !== then.slices[k - 1].layers.length,
  );
  expect(edges.slice(0, 2).map(({ fromMm }) => fromMm)).toEqual([1, 5]);
  expect(edges.length).toBeLessThanOrEqual(4);
});

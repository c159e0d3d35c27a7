import fc from 'fast-check';
import { expect, test } from 'vitest';
import { movePieces } from '../../../src/plan/edit';
import { gapMm } from '../../../src/plan/outline';
import type { Piece, Plan } from '../../../src/plan/plan';
import { gapLine, snapToGap } from '../../../src/view/tile/gap';
import { measured } from '../../../src/view/tile/ruler';

const square = (id: string, x: number, y: number, turnDeg = 0, half = 5): Piece => ({
  id,
  variety: 'a',
  at: [x, y],
  turnDeg,
  outline: [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ],
});
const disc = (id: string, x: number, y: number, diameterMm = 10): Piece => ({
  id,
  variety: 'a',
  at: [x, y],
  turnDeg: 0,
  disc: { diameterMm },
});

const planOf = (...pieces: Piece[]): Plan => ({
  seambench: 1,
  name: 'test',
  tile: { shape: 'square', sizeMm: 100 },
  varieties: [{ id: 'a', name: 'A', colour: '#2f7d4f', rimMmPerMonth: 3, aggression: 0.2 }],
  pairs: [],
  pieces,
  steps: [],
  months: 12,
});

test('the line across a gap is as long as the gap, for squares, turned squares and discs', () => {
  for (const [a, b] of [
    [square('p1', 0, 0), square('p2', 14, 0)],
    [square('p1', 0, 0), square('p2', 20, 3, 30)],
    [disc('p1', 0, 0), disc('p2', 9, 12)],
    [disc('p1', 0, 0), square('p2', 0, 17)],
  ] as const) {
    const line = gapLine(a, b);
    expect(line.gapMm).toBeCloseTo(gapMm(a, b), 9);
    // A disc's outline is a polygon of its area: it leaves the circle by up to 0.005 mm a side.
    expect(
      Math.abs(Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]) - line.gapMm),
    ).toBeLessThan(0.02);
  }
});

test('a piece dragged near the wanted gap takes it exactly', () => {
  const plan = planOf(square('p1', 0, 0), square('p2', 30, 0));
  const snapped = snapToGap(plan, ['p2'], -17.2, 0.4, 2, 2);
  const moved = movePieces(plan, ['p2'], snapped.dxMm, snapped.dyMm).plan.pieces[1];
  expect(gapMm(plan.pieces[0], moved)).toBeCloseTo(2, 2);
  expect(snapped.line?.gapMm).toBeCloseTo(2, 2);
  // It slides along the gap freely: only the way across is corrected.
  expect(snapped.dyMm).toBeCloseTo(0.4, 3);
});

test('a piece dragged onto another is put beside it', () => {
  const plan = planOf(disc('p1', 0, 0), disc('p2', 30, 0));
  const snapped = snapToGap(plan, ['p2'], -20.5, 0, 0.5, 2);
  const moved = movePieces(plan, ['p2'], snapped.dxMm, snapped.dyMm).plan.pieces[1];
  expect(gapMm(plan.pieces[0], moved)).toBeCloseTo(0.5, 2);
});

test('far from all other pieces nothing snaps', () => {
  const plan = planOf(square('p1', 0, 0), square('p2', 30, 0));
  expect(snapToGap(plan, ['p2'], 5, 5, 2, 2)).toEqual({ dxMm: 5, dyMm: 5, line: null });
});

test('whatever the drag: the asked shift stays, or the gap is the wanted one and the correction within reach', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -35, max: 15, noNaN: true }),
      fc.double({ min: -20, max: 20, noNaN: true }),
      fc.integer({ min: 0, max: 90 }),
      fc.constantFrom(0, 0.5, 2, 4),
      (dx, dy, turnDeg, want) => {
        const plan = planOf(square('p1', 0, 0), disc('p2', 30, 0), square('p3', -10, 12, turnDeg, 4));
        const snapped = snapToGap(plan, ['p2'], dx, dy, want, 1.5);
        if (snapped.line === null) {
          expect([snapped.dxMm, snapped.dyMm]).toEqual([dx, dy]);
          return;
        }
        const moved = movePieces(plan, ['p2'], snapped.dxMm, snapped.dyMm).plan.pieces[1];
        const least = Math.min(gapMm(plan.pieces[0], moved), gapMm(plan.pieces[2], moved));
        expect(Math.abs(least - want)).toBeLessThan(0.03);
        expect(Math.hypot(snapped.dxMm - dx, snapped.dyMm - dy)).toBeLessThanOrEqual(1.5);
      },
    ),
    { numRuns: 300 },
  );
});

test('the ruler reads the gap from piece to piece, and else the length of the drag', () => {
  const plan = planOf(disc('p1', -10, 0), disc('p2', 13, 0));
  expect(measured(plan, [-11, 1], [14, -2]).words).toBe('Gap 13.0 mm');
  expect(measured(plan, [-11, 1], [-9, 1]).words).toBe('2.0 mm');
  expect(measured(plan, [-11, 0], [4, 0]).words).toBe('15.0 mm');
});

import { describe, expect, it } from 'vitest';
import { gapMm, outlineOf, overlapMm2, pieceAreaMm2, pieceBox } from '../../../src/plan/outline';
import { area } from '../../../src/units/polygon';
import { discPiece, squarePiece } from '../../fixtures/small-plan';

describe('where a piece lies', () => {
  it('turns the outline about its own place', () => {
    const turned = { ...squarePiece('p1', 'a', 10, 20, 4), turnDeg: 90 };
    expect(outlineOf(turned)).toEqual([
      [12, 18],
      [12, 22],
      [8, 22],
      [8, 18],
    ]);
    const tilted = { ...squarePiece('p1', 'a', 0, 0, 2), turnDeg: 45 };
    expect(pieceBox(tilted).maxX).toBeCloseTo(Math.SQRT2, 6);
  });

  it('rounds corners to 1e-6 mm', () => {
    for (const [x, y] of outlineOf({ ...squarePiece('p1', 'a', 1, 2, 7), turnDeg: 33.3 })) {
      expect(Math.round(x * 1e6) / 1e6).toBe(x);
      expect(Math.round(y * 1e6) / 1e6).toBe(y);
    }
  });

  it.each([0.5, 10, 300])(
    'gives a disc of %d mm a polygon of its own area, 0.01 mm from the circle',
    (diameterMm) => {
      const disc = discPiece('p1', 'a', 0, 0, diameterMm);
      expect(area(outlineOf(disc)) / pieceAreaMm2(disc)).toBeCloseTo(1, 5);
      for (const [x, y] of outlineOf(disc)) {
        expect(Math.abs(Math.hypot(x, y) - diameterMm / 2)).toBeLessThan(0.01);
      }
      expect(pieceBox(disc).maxX).toBe(diameterMm / 2);
    },
  );
});

describe('gaps between pieces', () => {
  it('is exact between discs, between outlines and between the two', () => {
    expect(gapMm(discPiece('p1', 'a', 0, 0, 10), discPiece('p2', 'a', 9, 12, 8))).toBeCloseTo(6, 12);
    expect(gapMm(squarePiece('p1', 'a', 0, 0, 10), squarePiece('p2', 'a', 14, 0, 10))).toBeCloseTo(4, 12);
    expect(gapMm(squarePiece('p1', 'a', 0, 0, 10), discPiece('p2', 'a', 13, 0, 10))).toBeCloseTo(3, 12);
    expect(gapMm(discPiece('p1', 'a', 8, 9, 2), squarePiece('p2', 'a', 0, 0, 10))).toBeCloseTo(4, 12);
  });

  it('is nothing where they touch or overlap', () => {
    expect(gapMm(discPiece('p1', 'a', 0, 0, 10), discPiece('p2', 'a', 10, 0, 10))).toBe(0);
    expect(gapMm(squarePiece('p1', 'a', 0, 0, 10), discPiece('p2', 'a', 0, 0, 2))).toBe(0);
  });
});

describe('overlaps of pieces', () => {
  it('knows the lens of two circles (its textbook formula at three distances)', () => {
    // Equal circles of radius r whose centres are r apart share r2 (2 pi / 3 - sqrt(3) / 2).
    const lens = overlapMm2(discPiece('p1', 'a', 0, 0, 10), discPiece('p2', 'a', 5, 0, 10));
    expect(lens).toBeCloseTo(25 * ((2 * Math.PI) / 3 - Math.sqrt(3) / 2), 10);
    expect(overlapMm2(discPiece('p1', 'a', 0, 0, 10), discPiece('p2', 'a', 1, 0, 4))).toBeCloseTo(
      4 * Math.PI,
      10,
    );
    expect(overlapMm2(discPiece('p1', 'a', 0, 0, 10), discPiece('p2', 'a', 6, 8, 10))).toBe(0);
  });

  it('measures a disc over a square to 1e-2 mm2', () => {
    // A quarter of the disc lies on the square when its centre is the square's corner.
    const quarter = overlapMm2(squarePiece('p1', 'a', 0, 0, 20), discPiece('p2', 'a', 10, 10, 12));
    expect(Math.abs(quarter - 9 * Math.PI)).toBeLessThan(1e-2);
  });

  it('sees nothing in common between turned squares that share a side', () => {
    const one = { ...squarePiece('p1', 'a', 0, 0, 10), turnDeg: 30 };
    const step = (30 * Math.PI) / 180;
    const other = { ...squarePiece('p2', 'a', 10 * Math.cos(step), 10 * Math.sin(step), 10), turnDeg: 30 };
    expect(overlapMm2(one, other)).toBeLessThan(1e-4);
  });
});

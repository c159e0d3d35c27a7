import { expect, test } from 'vitest';
import { pieceAreaMm2, pieceBox } from '../../../src/plan/outline';
import type { Xy } from '../../../src/plan/plan';
import { simplify, simplifyOutline } from '../../../src/units/simplify';
import { cornersOf, outlineFault, outlinePiece, stampPiece } from '../../../src/view/tile/stamp';
import { HALVES } from '../../fixtures/halves';

test('a stamp gives the asked size at the place, under a new id', () => {
  const disc = stampPiece(HALVES, { shape: 'disc', sizeMm: 12, variety: 'a' }, [3.004, -7]);
  expect(disc).toMatchObject({ id: 'p4', at: [3, -7], disc: { diameterMm: 12 } });
  const square = stampPiece(HALVES, { shape: 'square', sizeMm: 6, variety: 'a' }, [0, 0]);
  expect(pieceAreaMm2(square)).toBe(36);
  const strip = stampPiece(HALVES, { shape: 'strip', sizeMm: 3, variety: 'a' }, [0, 0]);
  expect(pieceBox(strip)).toEqual({ minX: -1.5, maxX: 1.5, minY: -6, maxY: 6 });
});

test('a straight line keeps its ends alone; a corner that stands off stays', () => {
  const straight: Xy[] = [
    [0, 0],
    [1, 0.01],
    [2, 0],
    [3, 0],
  ];
  expect(simplify(straight, 0.1)).toEqual([
    [0, 0],
    [3, 0],
  ]);
  expect(simplify([...straight.slice(0, 3), [2, 5]], 0.1)).toContainEqual([2, 0]);
  // a line that doubles back keeps its turning point, though that lies on the way of its ends
  const back: Xy[] = [[0, 0], [9, 0], [2, 0]]; // prettier-ignore
  expect(simplify(back, 0.1)).toEqual(back);
});

test('a circle drawn by hand becomes a piece of at most 60 corners and nearly its area', () => {
  const drawn = Array.from({ length: 800 }, (_, k): Xy => {
    const turn = (k / 800) * 2 * Math.PI;
    return [4 + 10 * Math.cos(turn), -2 + 10 * Math.sin(turn)];
  });
  const corners = cornersOf(drawn);
  expect(outlineFault(corners)).toBeNull();
  const piece = outlinePiece(HALVES, 'a', corners);
  if (!('outline' in piece)) throw new Error('a disc');
  expect(piece.outline.length).toBeLessThanOrEqual(60);
  expect(piece.at[0]).toBeCloseTo(4, 1);
  expect(piece.at[1]).toBeCloseTo(-2, 1);
  expect(Math.abs(pieceAreaMm2(piece) / (Math.PI * 100) - 1)).toBeLessThan(0.02);
  expect(simplifyOutline(drawn, 12, 0.001).length).toBeLessThanOrEqual(12);
});

test('a slip of the hand makes no piece', () => {
  const slip: Xy[] = [
    [0, 0],
    [0.2, 0],
    [0.2, 0.2],
  ];
  expect(outlineFault(cornersOf(slip))).toBe('small');
  expect(outlineFault(cornersOf([[0, 0]]))).toBe('small');
});

test('a line that crosses itself is told so, even where its halves cancel out', () => {
  const bow: Xy[] = [
    [0, 0],
    [10, 10],
    [10, 0],
    [0, 10],
  ];
  expect(outlineFault(cornersOf(bow))).toBe('crosses');
});

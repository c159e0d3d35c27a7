import { areaD, FillRule, intersectD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overlapArea } from '../../src/units/overlap';
import {
  area,
  distanceBetween,
  isInside,
  isParted,
  isSimple,
  signedDistance,
  turnedAndShifted,
  type Point,
  type Polygon,
} from '../../src/units/polygon';

const SQUARE: Polygon = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
];
const L_SHAPE: Polygon = [
  [0, 0],
  [4, 0],
  [4, 1],
  [1, 1],
  [1, 4],
  [0, 4],
];

function shifted(polygon: Polygon, x: number, y: number): Polygon {
  return turnedAndShifted(polygon, 0, [x, y]);
}

/** Star-shaped about the origin, so simple however wild its radii are. */
const star = fc
  .array(fc.double({ min: 0.5, max: 12, noNaN: true }), { minLength: 3, maxLength: 40 })
  .map((radii) =>
    radii.map((radius, k): [number, number] => [
      radius * Math.cos((2 * Math.PI * k) / radii.length),
      radius * Math.sin((2 * Math.PI * k) / radii.length),
    ]),
  );

const placedStar = fc
  .tuple(
    star,
    fc.integer({ min: -180, max: 180 }),
    fc.integer({ min: -15, max: 15 }),
    fc.integer({ min: -15, max: 15 }),
  )
  .map(([polygon, turnDeg, x, y]) => turnedAndShifted(polygon, turnDeg, [x, y]));

describe('area, inside, distance (school geometry)', () => {
  it('measures a square and an L whatever the direction of their corners', () => {
    expect(area(SQUARE)).toBe(16);
    expect(area([...L_SHAPE].reverse())).toBe(7);
  });

  it('knows inside from outside in the notch of an L', () => {
    expect(isInside(L_SHAPE, [0.5, 3])).toBe(true);
    expect(isInside(L_SHAPE, [3, 3])).toBe(false);
    expect(signedDistance(L_SHAPE, [3, 3])).toBe(2);
    expect(signedDistance(L_SHAPE, [0.5, 2])).toBe(-0.5);
    expect(signedDistance(SQUARE, [7, 8])).toBe(5);
  });

  it('turns clockwise as seen, with y down', () => {
    expect(turnedAndShifted([[1, 0]], 90, [10, 20])).toEqual([[10, 21]]);
  });

  it('measures the gap between two shapes, and none where they touch, cross or hold each other', () => {
    expect(distanceBetween(SQUARE, shifted(SQUARE, 7, 8))).toBe(5);
    expect(distanceBetween(SQUARE, shifted(SQUARE, 4, 1))).toBe(0);
    expect(distanceBetween(SQUARE, shifted(SQUARE, 2, 2))).toBe(0);
    expect(distanceBetween(SQUARE, [[1, 1], [2, 1], [1, 2]])).toBe(0); // prettier-ignore
    const upright: Polygon = [[1, -3], [2, -3], [2, 9], [1, 9]]; // prettier-ignore
    expect(distanceBetween(SQUARE, upright)).toBe(0);
  });
});

describe('isSimple', () => {
  it.each<[string, Polygon, boolean]>([
    ['a square', SQUARE, true],
    ['an L', L_SHAPE, true],
    ['a square with its first corner repeated at the end', [...SQUARE, [0, 0]], true],
    ['a corner on a straight side', [[0, 0], [2, 0], [4, 0], [4, 4]], true], // prettier-ignore
    ['a bow tie', [[0, 0], [4, 4], [4, 0], [0, 4]], false], // prettier-ignore
    ['a figure of eight that only touches', [[0, 0], [2, 2], [4, 0], [4, 4], [2, 2], [0, 4]], false], // prettier-ignore
    ['a spike that runs back on itself', [[0, 0], [6, 0], [4, 0], [4, 4]], false], // prettier-ignore
    ['a corner that touches a far side', [[0, 0], [4, 0], [4, 4], [2, 0], [0, 4]], false], // prettier-ignore
    ['two points', [[0, 0], [4, 0], [0, 0]], false], // prettier-ignore
    ['one point', [[1, 1], [1, 1], [1, 1]], false], // prettier-ignore
  ])('judges %s', (_, polygon, simple) => {
    expect(isSimple(polygon)).toBe(simple);
  });

  it('takes every star for simple', () => {
    fc.assert(fc.property(star, (polygon) => isSimple(polygon)));
  });

  it('agrees with comparing every side with every other, in whole numbers', () => {
    const whole = fc.integer({ min: -3, max: 3 });
    const corners = fc.uniqueArray(fc.tuple(whole, whole), { minLength: 3, maxLength: 7, selector: String });
    fc.assert(
      fc.property(corners, (polygon) => {
        expect(isSimple(polygon)).toBe(isSimpleByPairs(polygon));
      }),
      { numRuns: 5000 },
    );
  });
});

/** Two sides may share one point if they are neighbours, else none; points in common are counted by barycentric steps. */
function isSimpleByPairs(polygon: Polygon): boolean {
  const count = polygon.length;
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      const [a, b, c, d] = [polygon[i], polygon[(i + 1) % count], polygon[j], polygon[(j + 1) % count]];
      const shared = commonPoints(a, b, c, d);
      const areNeighbours = j === i + 1 || (i === 0 && j === count - 1);
      if (shared > (areNeighbours ? 1 : 0)) return false;
    }
  }
  return true;
}

/** Points that two segments have in common: 0, 1, or 2 for 'more than one'. */
function commonPoints(a: Point, b: Point, c: Point, d: Point): number {
  const [rx, ry, sx, sy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const [qx, qy] = [c[0] - a[0], c[1] - a[1]];
  const cross = rx * sy - ry * sx;
  if (cross !== 0) {
    const [t, u] = [(qx * sy - qy * sx) / cross, (qx * ry - qy * rx) / cross];
    return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? 1 : 0;
  }
  if (qx * ry - qy * rx !== 0) return 0;
  const along = (point: Point) => (point[0] - a[0]) * rx + (point[1] - a[1]) * ry;
  const from = Math.max(0, Math.min(along(c), along(d)));
  const to = Math.min(along(b), Math.max(along(c), along(d)));
  return from > to ? 0 : from === to ? 1 : 2;
}

describe('overlapArea', () => {
  it('is exact for squares, notches and shapes inside each other', () => {
    expect(overlapArea(SQUARE, shifted(SQUARE, 3, 2))).toBeCloseTo(2, 12);
    expect(overlapArea(SQUARE, shifted(SQUARE, 4, 0))).toBe(0);
    expect(overlapArea(SQUARE, SQUARE)).toBeCloseTo(16, 12);
    expect(overlapArea(L_SHAPE, shifted(L_SHAPE, 1, 1))).toBeCloseTo(0, 12);
    expect(overlapArea(L_SHAPE, shifted(L_SHAPE, 0.5, 0.5))).toBeCloseTo(3.25, 12);
    expect(overlapArea(SQUARE, [[1, 1], [3, 1], [1, 3]])).toBeCloseTo(2, 12); // prettier-ignore
  });

  it('agrees with Clipper2 (clipper2-ts, A. Johnson) on thousands of pairs', () => {
    fc.assert(
      fc.property(placedStar, placedStar, (a, b) => {
        const paths = ([one, other]: Polygon[]) =>
          intersectD(
            [one.map(([x, y]) => ({ x, y }))],
            [other.map(([x, y]) => ({ x, y }))],
            FillRule.NonZero,
            6,
          );
        const theirs = Math.abs(paths([a, b]).reduce((sum, path) => sum + areaD(path), 0));
        expect(Math.abs(overlapArea(a, b) - theirs)).toBeLessThan(1e-4);
        expect(Math.abs(overlapArea(b, a) - theirs)).toBeLessThan(1e-4);
        if (isParted(a, b)) expect(theirs).toBeLessThan(1e-4);
      }),
      { numRuns: 2000 },
    );
  });
});

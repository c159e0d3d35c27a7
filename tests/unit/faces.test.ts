/** Faces of lines over a tile, against Clipper2 (clipper2-ts, A. Johnson), exact areas and Euler's formula. */
import { areaD, differenceD, FillRule, intersectD, xorD, type PathsD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tileOutline } from '../../src/plan/outline';
import type { Tile } from '../../src/plan/plan';
import { facesOf, somewhereInside, type FaceOfLines } from '../../src/units/faces';
import { area, isInside, signedDistance, type Point, type Polygon } from '../../src/units/polygon';

const SQUARE: Tile = { shape: 'square', sizeMm: 40 };
const DISC: Tile = { shape: 'disc', sizeMm: 40 };
const tile = fc.constantFrom(SQUARE, DISC);

function paths(rings: readonly Polygon[]): PathsD {
  return rings.map((ring) => ring.map(([x, y]) => ({ x, y })));
}

function areaOf(those: PathsD): number {
  return those.reduce((sum, path) => sum + areaD(path), 0);
}

/** Lines that all cross the whole tile, no two alike: each a place, a tilt. */
const across: fc.Arbitrary<Point[][]> = fc.uniqueArray(
  fc
    .record({
      x: fc.integer({ min: -150, max: 150 }),
      y: fc.integer({ min: -150, max: 150 }),
      tilt: fc.integer({ min: 0, max: 59 }).map((k) => 3 * k),
    })
    .map(({ x, y, tilt }): Point[] => {
      const [c, s] = [Math.cos((tilt * Math.PI) / 180), Math.sin((tilt * Math.PI) / 180)];
      return [
        [x / 10 - 90 * c, y / 10 - 90 * s],
        [x / 10 + 90 * c, y / 10 + 90 * s],
      ];
    }),
  { minLength: 1, maxLength: 7, selector: (line) => line.join(' ') },
);

/** Wild open paths: they cross themselves, end inside faces, run along each other and over the edge. */
const wild: fc.Arbitrary<Point[][]> = fc.array(
  fc.array(fc.tuple(fc.integer({ min: -25, max: 25 }), fc.integer({ min: -25, max: 25 })), {
    minLength: 2,
    maxLength: 8,
  }),
  { minLength: 1, maxLength: 5 },
);

/** Where two lines cross within the outline, null where they do not. */
function crossing([[ax, ay], [bx, by]]: Point[], [[cx, cy], [dx, dy]]: Point[]): Point | null {
  const [ux, uy, vx, vy] = [bx - ax, by - ay, dx - cx, dy - cy];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < 1e-9) return null;
  const t = ((cx - ax) * vy - (cy - ay) * vx) / cross;
  return [ax + t * ux, ay + t * uy];
}

function distanceTo(point: Point, [[ax, ay], [bx, by]]: Point[]): number {
  return Math.abs((bx - ax) * (point[1] - ay) - (by - ay) * (point[0] - ax)) / Math.hypot(bx - ax, by - ay);
}

function expectPartition(outline: Polygon, faces: readonly FaceOfLines[]): void {
  const whole = area(outline);
  expect(Math.abs(faces.reduce((sum, face) => sum + face.areaMm2, 0) - whole)).toBeLessThan(1e-2);
  let joined: PathsD = [];
  for (const { rings, areaMm2 } of faces) {
    const own = paths(rings);
    // its own area, by their even-odd rule
    const plain = xorD(own, [], FillRule.EvenOdd, 6);
    expect(Math.abs(areaOf(plain) - areaMm2)).toBeLessThan(1e-2);
    expect(areaOf(differenceD(own, paths([outline]), FillRule.EvenOdd, 6))).toBeLessThan(1e-2);
    expect(areaOf(intersectD(own, joined, FillRule.EvenOdd, 6))).toBeLessThan(1e-2);
    joined = xorD(joined, own, FillRule.EvenOdd, 6);
  }
  expect(Math.abs(areaOf(joined) - whole)).toBeLessThan(1e-2);
}

describe('faces of lines over a tile', () => {
  it('are disjoint and cover the tile, whatever the lines', () => {
    fc.assert(
      fc.property(tile, wild, (on, lines) => {
        expectPartition(tileOutline(on), facesOf(tileOutline(on), lines));
      }),
      { numRuns: 400 },
    );
  });

  it('number as Euler’s formula says: of n lines that all cross, 1 + n + crossings inside', () => {
    fc.assert(
      fc.property(tile, across, (on, lines) => {
        const outline = tileOutline(on);
        const cut = lines.filter((line) => {
          const corners = outline.map((corner) =>
            Math.sign(
              (line[1][0] - line[0][0]) * (corner[1] - line[0][1]) -
                (line[1][1] - line[0][1]) * (corner[0] - line[0][0]),
            ),
          );
          return corners.includes(1) && corners.includes(-1);
        });
        const crossings: Point[] = [];
        for (let i = 0; i < cut.length; i++)
          for (let j = i + 1; j < cut.length; j++) {
            const at = crossing(cut[i], cut[j]);
            // a crossing at the edge itself may fall on either side of it
            fc.pre(at === null || Math.abs(signedDistance(outline, at)) > 1);
            if (at && isInside(outline, at)) crossings.push(at);
            if (at === null) fc.pre(distanceTo(cut[j][0], cut[i]) > 0.2);
          }
        // three in one point: below
        for (const [k, at] of crossings.entries())
          for (const other of crossings.slice(k + 1))
            fc.pre(Math.hypot(at[0] - other[0], at[1] - other[1]) > 0.3);
        const faces = facesOf(outline, lines);
        fc.pre(faces.every(({ areaMm2 }) => areaMm2 > 0.05));
        expect(faces).toHaveLength(1 + cut.length + crossings.length);
      }),
      { numRuns: 500 },
    );
  });

  it('meet in one point, cross in a grid, end inside, and hold holes', () => {
    const star = [0, 45, 90, 135].map((tilt): Point[] => {
      const [c, s] = [Math.cos((tilt * Math.PI) / 180), Math.sin((tilt * Math.PI) / 180)];
      return [[-50 * c, -50 * s], [50 * c, 50 * s]]; // prettier-ignore
    });
    expect(facesOf(tileOutline(SQUARE), star).map(({ areaMm2 }) => areaMm2.toFixed(3))).toEqual(
      new Array(8).fill('200.000'),
    );
    const grid = [-10, 0, 10].flatMap((at): Point[][] => [
      [
        [at, -30],
        [at, 30],
      ],
      [[-30, at], [30, at]], // prettier-ignore
    ]);
    expect(facesOf(tileOutline(SQUARE), grid)).toHaveLength(16);
    expect(facesOf(tileOutline(SQUARE), [[[-30, 0], [5, 0], [5, 3]]])).toHaveLength(1); // prettier-ignore
    const island: Point[] = [[-5, -5], [5, -5], [5, 5], [-5, 5], [-5, -5]]; // prettier-ignore
    const [ring, hole] = [...facesOf(tileOutline(SQUARE), [island])].sort((a, b) => b.areaMm2 - a.areaMm2);
    expect([ring.areaMm2, ring.rings.length, hole.areaMm2]).toEqual([1500, 2, 100]);
  });

  it('are numbered from top to bottom, then from left to right, in whatever order the lines come', () => {
    fc.assert(
      fc.property(tile, across, (on, lines) => {
        const faces = facesOf(tileOutline(on), lines);
        for (let k = 0; k + 1 < faces.length; k++) {
          const [[x1, y1], [x2, y2]] = [faces[k].centroid, faces[k + 1].centroid];
          expect(y1 < y2 + 1e-3 && (y2 - y1 > 1e-3 || x1 <= x2 || y1 < y2)).toBe(true);
        }
        const back = facesOf(tileOutline(on), lines.map((line) => [...line].reverse()).reverse());
        expect(back.map(({ areaMm2 }) => areaMm2.toFixed(2))).toEqual(
          faces.map(({ areaMm2 }) => areaMm2.toFixed(2)),
        );
      }),
      { numRuns: 200 },
    );
  });

  it('keeps the whole tile where a line only dips in, and splits both lines at the very same point', () => {
    // both were found by the properties above: a face lost, two faces run together
    expect(facesOf(tileOutline(SQUARE), [[[-17, 1], [-19, 23]]])).toHaveLength(1); // prettier-ignore
    const lines: Point[][] = [
      [
        [6.5, 22.9],
        [23, -5.4],
      ],
      [
        [-20.4, -11.3],
        [19.5, 8.3],
        [-8.7, -15.9],
        [-15.7, 11.7],
      ],
      [
        [7.6, -22.6],
        [13.7, -9.8],
        [-11.6, -13.3],
      ],
    ];
    expect(facesOf(tileOutline(SQUARE), lines)).toHaveLength(7);
  });

  it('somewhereInside lies inside, holes included', () => {
    fc.assert(
      fc.property(tile, wild, (on, lines) => {
        for (const { rings } of facesOf(tileOutline(on), lines)) {
          const at = somewhereInside(rings);
          expect(rings.filter((ring) => isInside(ring, at)).length % 2).toBe(1);
        }
      }),
      { numRuns: 200 },
    );
  });
});

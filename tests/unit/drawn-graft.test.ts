/** Faces drawn over a photo become patches with exact areas, and borders that can be told apart. */
import { expect, test } from 'vitest';
import { bordersOf, drawnGraft, faceAt, mmPerPxOf, setDrawn } from '../../src/plan/drawn-graft';
import { PlanSchema, type Plan } from '../../src/plan/plan';
import { refuse } from '../../src/plan/refuse';
import { facesOf } from '../../src/units/faces';
import { area, isSimple, type Point } from '../../src/units/polygon';
import { Drawing } from '../../src/view/photo/drawing.svelte';
import * as v from 'valibot';

const SQUARE: Point[] = [[10, 10], [50, 10], [50, 50], [10, 50]]; // prettier-ignore
const plan: Plan = v.parse(PlanSchema, {
  seambench: 1,
  name: 'test',
  tile: { shape: 'square', sizeMm: 60 },
  varieties: ['a', 'b'].map((id) => ({ id, name: id, colour: '#2f8a5b', rimMmPerMonth: 3, aggression: 0.5 })),
  pieces: [{ id: 'p1', variety: 'a', at: [0, 0], disc: { diameterMm: 10 } }],
  months: 3,
  note: 'of the piece that is there',
});

test('two points a known distance apart give the scale', () => {
  // a triangle of 3, 4 and 5
  expect(mmPerPxOf([[10, 20], [310, 420]], 50)).toBe(0.1); // prettier-ignore
  expect(mmPerPxOf([[10, 20], [10, 20]], 50)).toBeNull(); // prettier-ignore
  expect(mmPerPxOf([[0, 0], [1, 0]], 0)).toBeNull(); // prettier-ignore
});

test('a border runs the whole of what two faces share, and each is told once', () => {
  // a T: the left half, and the right half parted across
  const faces = facesOf(SQUARE, [[[30, 0], [30, 60]], [[30, 20], [60, 20]]]); // prettier-ignore
  const [left, above, below] = [[20, 30], [40, 15], [40, 40]].map(([x, y]) => faceAt(faces, [x, y])); // prettier-ignore
  const lengths = new Map(
    bordersOf(faces).map(({ faces: both, lengthMm }) => [[...both].sort().join(' '), lengthMm]),
  );
  const between = (a: number, b: number): number => lengths.get([a, b].sort().join(' ')) ?? 0;
  expect(lengths.size).toBe(3);
  expect(between(left, above)).toBeCloseTo(10, 6);
  expect(between(left, below)).toBeCloseTo(30, 6);
  expect(between(above, below)).toBeCloseTo(20, 6);
  expect(faceAt(faces, [5, 5])).toBe(-1);
});

test('patches keep their areas to the last micrometre, an island leaves its hole, and a ridge lies on its border', () => {
  const island: Point[] = [[20, 20], [30, 20], [30, 30], [20, 30], [20, 20]]; // prettier-ignore
  const faces = facesOf(SQUARE, [island]);
  const varieties = faces.map(({ rings }) => (rings.length > 1 ? 'a' : 'b'));
  const borders = bordersOf(faces);
  expect(borders.map(({ lengthMm }) => lengthMm)).toEqual([40]);
  const piece = drawnGraft({ faces, varieties, borders, kinds: ['ridge'], overs: [null] }, 'p2');
  const areaOf = (of: string): number =>
    (piece?.patches ?? []).reduce(
      (sum, { variety, outline }) => sum + (variety === of ? area(outline) : 0),
      0,
    );
  expect(areaOf('a')).toBeCloseTo(1500, 3);
  expect(areaOf('b')).toBeCloseTo(100, 3);
  expect(piece?.patches.every(({ outline }) => isSimple(outline))).toBe(true);
  // centred: the island's corner at 20 of 10..50 lies at -10
  expect(piece?.seams).toHaveLength(1);
  expect(piece?.seams?.[0].is).toBe('ridge');
  expect(piece?.seams?.[0].along).toContainEqual([-10, -10]);
  if (piece) expect(v.is(PlanSchema, { ...plan, pieces: [piece] })).toBe(true);
});

test('one edit sets the piece in place of the others, or is refused with the cure', () => {
  const faces = facesOf(SQUARE, []);
  const piece = drawnGraft({ faces, varieties: ['c'], borders: [], kinds: [], overs: [] }, 'p2');
  if (!piece) throw new Error('a face of a variety is a piece');
  const varieties = [
    { ...plan.varieties[0], id: 'c' },
    { ...plan.varieties[0], id: 'unused' },
  ];
  const set = setDrawn(plan, { piece, varieties, tile: plan.tile, instead: true }).plan;
  expect(refuse(set)).toEqual([]);
  expect(set.pieces).toEqual([piece]);
  expect(set.note).toBeUndefined();
  expect(set.varieties.map(({ id }) => id)).toEqual(['a', 'b', 'c']);

  const beside = setDrawn(plan, { piece, varieties, tile: plan.tile, instead: false }).plan;
  expect(refuse(beside)[0].cure).toMatch(/lies on/u);
  const small = { ...plan.tile, sizeMm: 30 };
  const beyond = setDrawn(plan, { piece, varieties, tile: small, instead: true }).plan;
  expect(refuse(beyond)[0].cure).toMatch(/choose a tile of at least 40 mm/u);
});

/** A square of 400 px drawn at 0.1 mm a px. */
function drawn(): Drawing {
  const drawing = new Drawing();
  drawing.step = 1;
  drawing.tap([0, 0], 5);
  drawing.tap([500, 0], 5);
  drawing.distanceMm = 50;
  drawing.step = 2;
  for (const [x, y] of SQUARE) drawing.tap([10 * x, 10 * y], 5);
  drawing.finish();
  return drawing;
}

test('a line that ends near the outline ends on it; colours and kinds stay where they were said', () => {
  const drawing = drawn();
  expect(drawing.isClosed).toBe(true);
  drawing.tap([302, 104], 5);
  drawing.tap([300, 497], 5);
  expect(drawing.line).toEqual([]);
  expect(drawing.faces.map(({ areaMm2 }) => Math.round(areaMm2))).toEqual([804, 796]);
  drawing.paint(0, 'a');
  drawing.paint(1, 'b');
  drawing.mark(0, 'dead');
  expect(drawing.kinds).toEqual(['dead']);
  // another line parts both halves: four borders of two varieties are two, one of them still dead
  drawing.tap([100, 400], 5);
  drawing.tap([500, 400], 5);
  expect(drawing.faces).toHaveLength(4);
  expect(drawing.colours.filter((colour) => colour === null)).toHaveLength(2);
  drawing.takeBack();
  expect(drawing.colours).toEqual(['a', 'b']);
  expect(drawing.kinds).toEqual(['dead']);
});

test('of a lapped border it can be said who lies over, until that colour is changed', () => {
  const drawing = drawn();
  drawing.tap([300, 100], 5);
  drawing.tap([300, 500], 5);
  drawing.paint(0, 'a');
  drawing.paint(1, 'b');
  drawing.mark(0, 'lapped');
  expect(drawing.piece('p')?.seams?.map(({ is, over }) => [is, over])).toEqual([['lapped', undefined]]);
  drawing.mark(0, 'lapped', 'b');
  expect(drawing.piece('p')?.seams?.map(({ is, over }) => [is, over])).toEqual([['lapped', 'b']]);
  drawing.paint(1, 'c');
  expect(drawing.overs).toEqual([null]);
  drawing.paint(1, 'b');
  drawing.mark(0, 'ridge');
  expect(drawing.piece('p')?.seams?.map(({ is, over }) => [is, over])).toEqual([['ridge', undefined]]);
});

test('what cannot be is said: an outline across itself, a line that parts nothing, a patch without a colour', () => {
  const crossed = new Drawing();
  crossed.step = 2;
  for (const [x, y] of [[0, 0], [90, 90], [90, 0], [0, 90]]) crossed.tap([x, y], 5); // prettier-ignore
  crossed.finish();
  expect(crossed.isClosed).toBe(false);
  expect(crossed.note).toMatch(/crosses itself/u);

  const drawing = drawn();
  drawing.tap([200, 200], 5);
  drawing.tap([300, 300], 5);
  drawing.finish();
  expect(drawing.note).toMatch(/parts nothing/u);
  expect(drawing.line).toHaveLength(2);
  drawing.takeBack();
  drawing.takeBack();
  expect(drawing.wants()).toMatch(/which variety patch 1 is/u);
});

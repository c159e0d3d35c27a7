/** Numbers of seams stand on the stage, clear of the scale, of the light and of each other. */
import { expect, it } from 'vitest';
import { labelPlaces } from '../../../src/view/school/test/label-places';

const STAGE = { width: 390, height: 371 };
const SCALE = { left: 10, top: 330, right: 110, bottom: 364 };
const HALF = 22;

it('a number stands across its seam, and elsewhere where that is off the stage or taken', () => {
  const [free] = labelPlaces([{ at: [200, 200], across: [260, 200] }], STAGE, []);
  expect(free).toEqual([234, 200]);
  const [off] = labelPlaces([{ at: [370, 200], across: [380, 200] }], STAGE, []);
  expect(off?.[0]).toBeCloseTo(336, 9);
  const [low] = labelPlaces([{ at: [60, 300], across: [60, 340] }], STAGE, [SCALE]);
  expect((low?.[1] ?? 0) + HALF).toBeLessThanOrEqual(SCALE.top);
  const both = labelPlaces(
    [
      { at: [200, 200], across: [260, 200] },
      { at: [204, 204], across: [260, 204] },
    ],
    STAGE,
    [],
  );
  const [one, other] = both;
  if (!one || !other) throw new Error('a place for each');
  expect(Math.max(Math.abs(one[0] - other[0]), Math.abs(one[1] - other[1]))).toBeGreaterThanOrEqual(2 * HALF);
});

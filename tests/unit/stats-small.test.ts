/** Small tools of the fits against printed tables and by hand. */
import { describe, expect, it } from 'vitest';
import { inverseOf, times } from '../../src/stats/inverse';
import { student95 } from '../../src/stats/student';
import { upperQuantile } from '../../src/stats/upper-quantile';

describe('upper quantile', () => {
  it('is the ceil(p n)-th smallest, by hand', () => {
    const hundred = Array.from({ length: 100 }, (_, k) => 100 - k);
    expect(upperQuantile(hundred, 0.98)).toBe(98);
    expect(upperQuantile([3, 1, 2], 0.98)).toBe(3);
    expect(upperQuantile([3, 1, 2], 0.5)).toBe(2);
    expect(upperQuantile([], 0.98)).toBeNaN();
  });
});

describe('Student t', () => {
  it.each([
    [1, 12.7062],
    [4, 2.7764],
    [10, 2.2281],
    [30, 2.0423],
    [120, 1.9799],
  ])('of %d degrees at 0.975 is %d (printed tables, four decimals)', (degrees, t) => {
    expect(student95(degrees)).toBeCloseTo(t, 4);
  });
});

describe('inverse', () => {
  it('of a matrix of which it is known by hand: [[4, 2], [2, 3]] has [[3, -2], [-2, 4]] / 8', () => {
    const inverse = inverseOf([
      [4, 2],
      [2, 3],
    ]);
    const numbers = [...(inverse ?? []).flat(), ...times(inverse ?? [], [8, 16])];
    expect(numbers.length).toBe(6);
    [0.375, -0.25, -0.25, 0.5, -1, 6].forEach((want, at) => expect(numbers[at]).toBeCloseTo(want, 13));
  });

  it('is none where rows say the same', () => {
    expect(
      inverseOf([
        [1, 1],
        [1, 1],
      ]),
    ).toBeNull();
  });
});

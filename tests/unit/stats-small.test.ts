/** Small tools of the fits against printed tables and by hand. */
import { describe, expect, it } from 'vitest';
import colonies from '../../src/checks/data/colony-growth.json';
import { inverseOf, times } from '../../src/stats/inverse';
import { lineThrough } from '../../src/stats/line';
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

// Madin et al. 2023, doi 10.1002/ecy.4017: parameters published with the data, log10 of area in m2 a year later on log10 of area.
describe('area of colonies a year later', () => {
  it.each([
    ['Acropora cytherea', -0.118762, 0.901405],
    ['Acropora hyacinthus', -0.131813, 0.942759],
    ['Acropora cf. digitifera', -0.108762, 0.936183],
    ['Acropora nasuta', -0.156257, 0.927746],
  ])('%s has the published line', (name, intercept, slope) => {
    const pairs = colonies.species.find((one) => one.name === name)?.pairs ?? [];
    const line = lineThrough(
      pairs.map(([cm2]) => Math.log10(cm2 / 1e4)),
      pairs.map(([, cm2]) => Math.log10(cm2 / 1e4)),
    );
    expect(Math.abs(line.slope - slope)).toBeLessThan(2e-4); // areas are kept to 0.01 cm2
    expect(Math.abs(line.intercept - intercept)).toBeLessThan(5e-4);
  });
});

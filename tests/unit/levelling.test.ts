/** NIST Statistical Reference Datasets (https://www.itl.nist.gov/div898/strd), Misra1a: data and certified values, from memory. */
import { expect, test } from 'vitest';
import { levelling } from '../../src/stats/levelling';

/** y, x */
const MISRA1A = [
  10.07, 77.6, 14.73, 114.9, 17.94, 141.1, 23.93, 190.8, 29.61, 239.9, 35.18, 289.0, 40.02, 332.8, 44.82,
  378.4, 50.76, 434.8, 55.05, 477.3, 61.01, 536.8, 66.4, 593.1, 75.47, 689.1, 81.78, 760.0,
];

test('a rise that levels off has the certified numbers, standard errors and sum of squares', () => {
  const ys = MISRA1A.filter((_, k) => k % 2 === 0);
  const xs = MISRA1A.filter((_, k) => k % 2 === 1);
  expect(xs.length).toBe(14);
  const fit = levelling(xs, ys);
  if (fit === null) throw new Error('it is fitted');
  // a search that compares sums of squares finds where they are least to half their digits
  expect(Math.abs(fit.most / 2.3894212918e2 - 1)).toBeLessThan(1e-7);
  expect(Math.abs(fit.rate / 5.5015643181e-4 - 1)).toBeLessThan(1e-7);
  expect(Math.abs(fit.mostError / 2.7070075241 - 1)).toBeLessThan(1e-6);
  expect(Math.abs(fit.rateError / 7.2668688436e-6 - 1)).toBeLessThan(1e-6);
  expect(Math.abs(fit.squares / 1.2455138894e-1 - 1)).toBeLessThan(1e-9);
});

test('nothing is fitted to two points, or to none after the beginning', () => {
  expect(levelling([1, 2], [1, 2])).toBeNull();
  expect(levelling([0, 0, 0], [1, 2, 3])).toBeNull();
});

test('nothing is fitted where the points do not tell rate and height apart', () => {
  expect(levelling([2, 2, 2, 2], [1, 2, 3, 2])).toBeNull();
  expect(levelling([1, 2, 3, 4], [0, 0, 0, 0])).toBeNull();
});

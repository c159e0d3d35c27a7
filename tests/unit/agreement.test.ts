/** Cohen's kappa against printed examples, and what it is where there is nothing to tell. */
import { expect, it } from 'vitest';
import { kappaOf } from '../../src/stats/agreement';

it('two calls: the example printed with ci.kappa of the R package statpsych, after Fleiss & Paik 2003', () => {
  const found = kappaOf([
    [31, 12],
    [4, 58],
  ]);
  expect(found?.kappa).toBeCloseTo(0.6756757, 7);
  expect(found?.standardError).toBeCloseTo(0.07344761, 8);
  expect(found?.low).toBeCloseTo(0.531721, 6);
  expect(found?.high).toBeCloseTo(0.8196303, 7);
});

it('four calls: the table of 91 couples in the R package vcd, 0.1293 with 0.0686 (Agresti 1990; from memory)', () => {
  const found = kappaOf([
    [7, 7, 2, 3],
    [2, 8, 3, 7],
    [1, 5, 4, 9],
    [2, 8, 9, 14],
  ]);
  expect(found?.kappa).toBeCloseTo(0.1293, 4);
  expect(found?.standardError).toBeCloseTo(0.0686, 4);
});

it('is 1 where all is agreed, 0 where calls are independent, below 0 where they go against each other', () => {
  expect(kappaOf([[5, 0], [0, 5]])?.kappa).toBe(1); // prettier-ignore
  expect(kappaOf([[5, 0], [0, 5]])?.high).toBe(1); // prettier-ignore
  expect(kappaOf([[4, 4], [4, 4]])?.kappa).toBeCloseTo(0, 12); // prettier-ignore
  expect(kappaOf([[0, 5], [5, 0]])?.kappa).toBe(-1); // prettier-ignore
});

it('says nothing of two people who only ever say one thing, or nothing', () => {
  expect(kappaOf([[9, 0], [0, 0]])).toBeNull(); // prettier-ignore
  expect(kappaOf([[0, 0], [0, 0]])).toBeNull(); // prettier-ignore
});

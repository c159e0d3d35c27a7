/** Logistic regression against two published sets, and separation said instead of a number. */
import { describe, expect, it } from 'vitest';
import { logistic, type Logistic, type Trial } from '../../src/stats/logistic';

function fit(trials: readonly Trial[]): Logistic {
  const found = logistic(trials);
  if (typeof found === 'string') throw new Error(found);
  return found;
}

/** [x, tries, yes] */
function expanded(rows: readonly (readonly [number, number, number])[]): Trial[] {
  return rows.flatMap(([x, tries, yes]) => Array.from({ length: tries }, (_, k) => ({ x, yes: k < yes })));
}

// Dalal, Fowlkes & Hoadley 1989, J. Am. Stat. Assoc. 84: 945-957: joint temperature in F, damaged rings or not.
// There were 24 flights; of one the parts were lost, so that 23 count. 7 of them had damage.
const FLIGHTS: readonly (readonly [number, number])[] = [
  [66, 0],
  [70, 1],
  [69, 0],
  [68, 0],
  [67, 0],
  [72, 0],
  [73, 0],
  [70, 0],
  [57, 1],
  [63, 1],
  [70, 1],
  [78, 0],
  [67, 0],
  [53, 1],
  [67, 0],
  [75, 0],
  [70, 0],
  [81, 0],
  [76, 0],
  [79, 0],
  [75, 1],
  [76, 0],
  [58, 1],
];

// Hosmer & Lemeshow, Applied Logistic Regression, table of age and heart disease (CHDAGE), acknowledged with thanks.
const CHDAGE =
  '20,1,0 23,1,0 24,1,0 25,2,1 26,2,0 28,2,0 29,1,0 30,6,1 32,2,0 33,2,0 34,5,1 35,2,0 36,3,1 37,3,1 38,2,0 39,2,1 40,2,1 ' +
  '41,2,0 42,4,1 43,3,1 44,4,2 45,2,1 46,2,1 47,3,1 48,3,2 49,3,1 50,2,1 51,1,0 52,2,1 53,2,2 54,1,1 55,3,2 56,3,3 57,6,4 ' +
  '58,3,2 59,2,2 60,2,1 61,1,1 62,2,2 63,1,1 64,2,1 65,1,1 69,1,1';

describe('23 flights', () => {
  const trials = FLIGHTS.map(([x, yes]) => ({ x, yes: yes === 1 }));

  it('give coefficients, errors and deviance of an independent fit to its five digits', () => {
    const found = fit(trials);
    expect(trials.length).toBe(23);
    expect(found.intercept).toBeCloseTo(15.0429, 4);
    expect(found.interceptError).toBeCloseTo(7.37864, 4);
    expect(found.slope).toBeCloseTo(-0.232163, 6);
    expect(found.slopeError).toBeCloseTo(0.108237, 6);
    expect(-2 * found.logLikelihood).toBeCloseTo(20.31519, 5);
    expect(1 / (1 + Math.exp(-(found.intercept + found.slope * 31)))).toBeCloseTo(0.99961, 5);
  });

  it('are not 24: the flight without record, taken as undamaged at its 80 F, gives another slope', () => {
    expect(fit([...trials, { x: 80, yes: false }]).slope).not.toBeCloseTo(-0.232163, 3);
  });
});

describe('100 people of CHDAGE', () => {
  it('give the printed coefficients and log likelihood, and an independent fit to six digits', () => {
    const trials = expanded(
      CHDAGE.split(' ').map((row) => row.split(',').map(Number) as [number, number, number]),
    );
    expect([trials.length, trials.filter(({ yes }) => yes).length]).toEqual([100, 43]);
    const found = fit(trials);
    expect(found.intercept).toBeCloseTo(-5.309453, 6);
    expect(found.interceptError).toBeCloseTo(1.133655, 5);
    expect(found.slope).toBeCloseTo(0.110921, 6);
    expect(found.slopeError).toBeCloseTo(0.02406, 5);
    expect(found.logLikelihood).toBeCloseTo(-53.676546, 6);
    expect(found.covariance).toBeCloseTo(-0.026677, 6); // the same book's covariance matrix (from memory)
  });
});

describe('no finite fit', () => {
  const at = (yes: boolean, ...xs: number[]) => xs.map((x) => ({ x, yes }));

  it('is said where some number parts yes from no, a shared edge among them', () => {
    expect(logistic([...at(true, 4, 5, 6), ...at(false, 1, 2, 3)])).toBe('separated');
    expect(logistic([...at(true, 3, 5, 6), ...at(false, 1, 2, 3)])).toBe('separated');
    expect(logistic([...at(false, 4, 5, 6), ...at(true, 1, 2, 3)])).toBe('separated');
  });

  it('is said where there is one answer, one number or nothing', () => {
    expect(logistic(at(true, 1, 2))).toBe('one-answer');
    expect(logistic([])).toBe('one-answer');
    expect(logistic([...at(true, 2), ...at(false, 2)])).toBe('one-number');
  });

  it('is not said where one answer lies amid the other: level, by symmetry', () => {
    const found = fit([...at(true, 2, 2), ...at(false, 1, 3)]);
    expect(found.slope).toBeCloseTo(0, 9);
    expect(found.intercept).toBeCloseTo(0, 9);
  });
});

/** Bradley-Terry and Davidson against published fits, and what has no finite answer. */
import { describe, expect, it } from 'vitest';
import { type Meetings, strengths, type Strengths } from '../../src/stats/contest';
import { whoCanBeOrdered } from '../../src/stats/ordered';

function fit(count: number, meetings: readonly Meetings[]): Strengths {
  expect(whoCanBeOrdered(count, meetings)).toEqual(Array.from({ length: count }, () => null));
  const found = strengths(count, meetings);
  if (found === null) throw new Error('no finite fit');
  return found;
}

/** Wins of the row over the column. */
function fromTable(wins: readonly (readonly number[])[]): Meetings[] {
  return wins.flatMap((row, a) =>
    row.flatMap((aWins, b) => (a < b ? [{ a, b, aWins, bWins: wins[b][a], ties: 0 }] : [])),
  );
}

/** Ability against that of a reference item, and the standard error of that difference. */
function against({ abilities, covariance }: Strengths, item: number, reference: number) {
  const variance =
    covariance[item][item] + covariance[reference][reference] - 2 * covariance[item][reference];
  return { ability: abilities[item] - abilities[reference], error: Math.sqrt(variance) };
}

/** -2 (log likelihood - that of a model with a chance for each pair), no ties. */
function deviance(wins: readonly (readonly number[])[], abilities: readonly number[]): number {
  let sum = 0;
  wins.forEach((row, i) =>
    row.forEach((won, j) => {
      if (i === j || won === 0) return;
      sum += 2 * won * Math.log((won / (won + wins[j][i])) * (1 + Math.exp(abilities[j] - abilities[i])));
    }),
  );
  return sum;
}

// Agresti 2002, Categorical Data Analysis, 2nd ed., table 10.10, home and away pooled.
const AGRESTI = [
  [0, 7, 9, 7, 7, 9, 11],
  [6, 0, 7, 5, 11, 9, 9],
  [4, 6, 0, 7, 7, 8, 12],
  [6, 8, 6, 0, 6, 7, 10],
  [6, 2, 6, 7, 0, 7, 12],
  [4, 4, 5, 6, 6, 0, 6],
  [2, 4, 1, 3, 1, 7, 0],
];

// Stigler 1994, Stat. Sci. 9: 94-108: four journals; cited row by citing column.
const STIGLER = [
  [714, 730, 498, 221],
  [33, 425, 68, 17],
  [320, 813, 1072, 142],
  [284, 276, 325, 188],
];

// Davidson 1970, J. Am. Stat. Assoc. 65: 317-328: items i and j, n, i wins, j wins, ties.
const DAVIDSON = [
  [1, 2, 57, 19, 22, 16],
  [1, 3, 47, 16, 19, 12],
  [2, 3, 48, 19, 19, 10],
  [1, 4, 54, 18, 23, 13],
  [2, 4, 51, 23, 19, 9],
  [3, 4, 54, 19, 20, 15],
  [1, 5, 50, 13, 19, 18],
  [2, 5, 48, 16, 20, 12],
  [3, 5, 48, 16, 15, 17],
  [4, 5, 47, 17, 14, 16],
  [1, 6, 51, 18, 21, 12],
  [2, 6, 54, 22, 20, 12],
  [3, 6, 41, 13, 18, 10],
  [4, 6, 51, 14, 19, 18],
  [5, 6, 44, 11, 21, 12],
] as const;

describe('Bradley-Terry', () => {
  it('seven items of Agresti: the printed abilities, the errors of an independent fit to its four digits', () => {
    const found = fit(7, fromTable(AGRESTI));
    const want = [1.5814, 1.4364, 1.2945, 1.2476, 1.1077, 0.6839]; // the book: 1.58, 1.44, 1.29, 1.25, 1.11, 0.68
    const errors = [0.3433, 0.3396, 0.3367, 0.3359, 0.3339, 0.3319];
    want.forEach((ability, item) => {
      expect(against(found, item, 6).ability).toBeCloseTo(ability, 4);
      expect(against(found, item, 6).error).toBeCloseTo(errors[item], 4);
    });
    expect(deviance(AGRESTI, found.abilities)).toBeCloseTo(15.737, 3);
    expect(found.tie).toBe(0);
    expect(found.abilities.reduce((sum, ability) => sum + ability, 0)).toBeCloseTo(0, 12);
  });

  it('four journals of Stigler, counts in the hundreds: an independent fit to its five digits', () => {
    const found = fit(4, fromTable(STIGLER));
    const want = [
      [-2.94907, 0.10255],
      [-0.47957, 0.06059],
      [0.26895, 0.07083],
    ];
    want.forEach(([ability, error], at) => {
      expect(against(found, at + 1, 0).ability).toBeCloseTo(ability, 5);
      expect(against(found, at + 1, 0).error).toBeCloseTo(error, 5);
    });
    expect(deviance(STIGLER, found.abilities)).toBeCloseTo(4.2934, 4);
  });
});

describe('ties after Davidson', () => {
  const meetings = DAVIDSON.map(([i, j, , aWins, bWins, ties]) => ({
    a: i - 1,
    b: j - 1,
    aWins,
    bWins,
    ties,
  }));

  it('are the printed rows', () => {
    for (const [, , n, iWins, jWins, ties] of DAVIDSON) expect(iWins + jWins + ties).toBe(n);
    expect(meetings.reduce((sum, { ties }) => sum + ties, 0)).toBe(202);
  });

  it('give the printed strengths to 1e-4 (his last digits had not converged), an independent fit to 1e-6', () => {
    const { abilities, tie } = fit(6, meetings);
    const total = abilities.reduce((sum, ability) => sum + Math.exp(ability), 0);
    const printed = [0.1388, 0.173, 0.1617, 0.1654, 0.1587, 0.2024];
    const independent = [0.138803, 0.173002, 0.161747, 0.165373, 0.158685, 0.202389];
    abilities.forEach((ability, item) => {
      expect(Math.abs(Math.exp(ability) / total - printed[item])).toBeLessThan(1e-4);
      expect(Math.abs(Math.exp(ability) / total - independent[item])).toBeLessThan(1e-6);
    });
    expect(Math.abs(tie - 0.74681)).toBeLessThan(1e-4);
    expect(Math.abs(tie - 0.746823)).toBeLessThan(1e-6);
  });

  it('keep errors that a bend of the likelihood confirms, ability by ability', () => {
    // profile: hold one difference h away from its best; the log likelihood falls by h^2 / (2 error^2)
    const { abilities, covariance, tie } = fit(2, [{ a: 0, b: 1, aWins: 30, bWins: 20, ties: 10 }]);
    const log = (difference: number, nu: number) => {
      const up = Math.exp(difference / 2);
      const sum = up + 1 / up + nu;
      return 30 * Math.log(up / sum) + 20 * Math.log(1 / up / sum) + 10 * Math.log(nu / sum);
    };
    const profile = (difference: number) => {
      const up = Math.exp(difference / 2);
      return log(difference, (10 / 50) * (up + 1 / up)); // best nu: a tie's share is what was seen
    };
    const best = abilities[0] - abilities[1];
    expect(best).toBeCloseTo(Math.log(30 / 20), 9); // saturated: the odds that were seen
    expect(tie).toBeCloseTo(10 / Math.sqrt(30 * 20), 9);
    const h = 1e-3;
    const bend = (2 * profile(best) - profile(best + h) - profile(best - h)) / (h * h);
    expect(covariance[0][0] + covariance[1][1] - 2 * covariance[0][1]).toBeCloseTo(1 / bend, 5);
  });
});

describe('what cannot be ordered', () => {
  const wins = (a: number, b: number, aWins: number, bWins = 0, ties = 0) => ({ a, b, aWins, bWins, ties });

  it('says who won or lost every meeting with the rest', () => {
    const meetings = [wins(0, 1, 2, 1), wins(2, 0, 3), wins(1, 3, 2)];
    expect(whoCanBeOrdered(4, meetings)).toEqual([null, null, 'above', 'below']);
  });

  it('says who never met the rest, in any chain', () => {
    expect(whoCanBeOrdered(5, [wins(0, 1, 2, 1), wins(2, 3, 1)])).toEqual([
      null,
      null,
      'apart',
      'apart',
      'apart',
    ]);
  });

  it('says that wins one way and ties fix no distance (the saturated fit has its tie parameter at infinity)', () => {
    expect(whoCanBeOrdered(2, [wins(0, 1, 3, 0, 2)])).toEqual(['ladder', 'ladder']);
    expect(whoCanBeOrdered(2, [wins(0, 1, 0, 0, 2)])).toEqual(['ladder', 'ladder']);
  });

  it('takes a ring of wins as enough, with ties or without', () => {
    const ring = [wins(0, 1, 1), wins(1, 2, 1), wins(2, 0, 1)];
    fit(3, ring);
    fit(3, [...ring, wins(0, 1, 0, 0, 4)]);
  });
});

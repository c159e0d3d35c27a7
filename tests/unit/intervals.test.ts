import { describe, expect, it } from 'vitest';
import { betaQuantile, betaShareBelow } from '../../src/stats/beta';
import { jeffreys, meanOf, quantile, wilson } from '../../src/stats/intervals';

// Made once by SciPy 1.17.1: scipy.stats.beta.ppf(p, a, b) for p = 0.025, 0.1, 0.5, 0.9, 0.975.
const SCIPY_QUANTILES: readonly (readonly [number, number, readonly number[]])[] = [
  [
    0.05,
    0.95,
    [
      9.875267916846434e-33, 1.0857971901975901e-20, 1.0354968420577944e-6, 0.13115507005966937,
      0.6303243922966907,
    ],
  ],
  [
    3.05,
    7.95,
    [0.06919500210935214, 0.11919395574245298, 0.26339790753553943, 0.4549309595112112, 0.56121931138909],
  ],
  [
    10.05,
    0.95,
    [0.699528543243831, 0.8017544668842544, 0.9377051837181667, 0.9909827431795382, 0.997970851382995],
  ],
  [
    0.05,
    890.95,
    [
      5.969467544054865e-36, 6.563498976319766e-24, 6.259443720312242e-10, 8.570014809820487e-5,
      0.0006367311021936555,
    ],
  ],
  [
    500,
    700,
    [0.38892100163929505, 0.3984602604375582, 0.4166203552040237, 0.4349326233477183, 0.4446754406462241],
  ],
];

describe('beta distribution', () => {
  it.each(SCIPY_QUANTILES)('quantiles of Beta(%d, %d) as in SciPy 1.17', (a, b, expected) => {
    [0.025, 0.1, 0.5, 0.9, 0.975].forEach((p, i) => {
      const want = expected[i] ?? 0;
      expect(Math.abs(betaQuantile(p, a, b) - want) / want).toBeLessThan(1e-10);
    });
  });

  it('agrees with closed forms: uniform, x^a, and the polynomial 6x^2 - 8x^3 + 3x^4 of Beta(2, 3)', () => {
    expect(betaShareBelow(0.37, 1, 1)).toBeCloseTo(0.37, 13);
    expect(betaShareBelow(0.37, 4, 1)).toBeCloseTo(0.37 ** 4, 13);
    expect(betaShareBelow(0.3, 2, 3)).toBeCloseTo(6 * 0.09 - 8 * 0.027 + 3 * 0.0081, 13);
  });

  it('holds at the ends', () => {
    expect(betaQuantile(0, 0.05, 0.95)).toBe(0);
    expect(betaQuantile(1, 0.05, 0.95)).toBe(1);
    expect(betaShareBelow(-1, 2, 2)).toBe(0);
    expect(betaShareBelow(1, 2, 2)).toBe(1);
  });
});

// Wilson and Jeffreys limits; the first four cases printed by Newcombe 1998 (Stat. Med. 17: 857-872), the rest
// from jstat and again from SciPy. Four decimals.
const PROPORTIONS: readonly (readonly [number, number, number, number, number, number])[] = [
  [81, 263, 0.2553, 0.3662, 0.2545, 0.3656],
  [15, 148, 0.0624, 0.1605, 0.0604, 0.1576],
  [0, 20, 0, 0.1611, 0, 0.1166],
  [1, 29, 0.0061, 0.1718, 0.0037, 0.1501],
  [0, 10, 0, 0.2775, 0, 0.2172],
  [5, 10, 0.2366, 0.7634, 0.2235, 0.7765],
  [7, 20, 0.1812, 0.5671, 0.1723, 0.5678],
];

describe('interval of a proportion', () => {
  it.each(PROPORTIONS)(
    '%d of %d (Newcombe 1998; SciPy)',
    (x, n, wilsonLow, wilsonHigh, jeffreysLow, jeffreysHigh) => {
      expect(wilson(x, n).low).toBeCloseTo(wilsonLow, 4);
      expect(wilson(x, n).high).toBeCloseTo(wilsonHigh, 4);
      expect(jeffreys(x, n).low).toBeCloseTo(jeffreysLow, 4);
      expect(jeffreys(x, n).high).toBeCloseTo(jeffreysHigh, 4);
    },
  );

  it('mirrors: x of n below is n - x of n above', () => {
    expect(wilson(20, 20).low).toBeCloseTo(1 - wilson(0, 20).high, 12);
    expect(jeffreys(20, 20).low).toBeCloseTo(1 - jeffreys(0, 20).high, 10);
    expect(wilson(20, 20).high).toBe(1);
    expect(jeffreys(20, 20).high).toBe(1);
  });

  it('0 of 890 (Hildemann et al. 1980, Transplantation 30: 297-301): Wilson upper limit 0.0043', () => {
    expect(wilson(0, 890).high).toBeCloseTo(0.0043, 4);
  });
});

describe('quantile and mean', () => {
  it('joins sorted values by lines (R type 7, by hand)', () => {
    expect(quantile([9, 1, 4], 0.5)).toBe(4);
    expect(quantile([1, 2, 3, 4], 0.5)).toBe(2.5);
    expect(quantile([1, 2, 3, 4], 0.1)).toBeCloseTo(1.3, 12);
    expect(quantile([7], 0.9)).toBe(7);
    expect(quantile([], 0.5)).toBeNaN();
  });

  it('gives mean and standard error (by hand: sd of 2, 4, 6 is 2)', () => {
    expect(meanOf([2, 4, 6]).mean).toBe(4);
    expect(meanOf([2, 4, 6]).standardError).toBeCloseTo(2 / Math.sqrt(3), 12);
    expect(meanOf([5])).toEqual({ mean: 5, standardError: 0 });
  });
});

/** The beta prior behind counted shares, against published fits and against the likelihood itself. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fittedBeta, logMarginal, type Counted } from '../../src/stats/beta-binomial';
import { meanOf } from '../../src/stats/intervals';

/**
 * Tumours in control groups of rats: Tarone 1982, Biometrics 38: 215-220, table 1, as printed in Gelman et al. 2013,
 * Bayesian Data Analysis, 3rd edition, table 5.1: 70 groups, then the one of the experiment itself.
 */
const RATS: readonly Counted[] = `
0/20 0/20 0/20 0/20 0/20 0/20 0/20 0/19 0/19 0/19 0/19 0/18 0/18 0/17 1/20 1/20 1/20 1/20 1/19 1/19 1/18 1/18 3/27
2/25 2/24 2/23 2/20 2/20 2/20 2/20 2/20 2/20 1/10 5/49 2/19 5/46 2/17 7/49 7/47 3/20 3/20 2/13 9/48 10/50 4/20 4/20
4/20 4/20 4/20 4/20 4/20 10/48 4/19 4/19 4/19 5/22 11/46 12/49 5/20 5/20 6/23 5/19 6/22 6/20 6/20 6/20 16/52 15/46
15/47 9/24 4/14`
  .trim()
  .split(/\s+/u)
  .map((pair) => {
    const [k, n] = pair.split('/').map(Number);
    return { k, n };
  });

describe('the beta prior behind counted shares', () => {
  it('has the rats as they are printed: 71 groups; of the first 70 mean 0.136 and standard deviation 0.103', () => {
    const shares = RATS.slice(0, 70).map(({ k, n }) => k / n);
    const { mean, standardError } = meanOf(shares);
    expect(RATS).toHaveLength(71);
    expect(mean).toBeCloseTo(0.136, 3);
    expect(standardError * Math.sqrt(70)).toBeCloseTo(0.103, 3);
  });

  // gMLE.bb of the R package BayesGOF, vignette on CRAN: alpha 2.304768, beta 14.079707, printed to 6 digits
  it('is Beta(2.3048, 14.0797) for the rats, as BayesGOF prints', () => {
    const prior = fittedBeta(RATS.slice(0, 70));
    expect(prior?.a).toBeCloseTo(2.304768, 3);
    expect(prior?.b).toBeCloseTo(14.079707, 2);
  });

  it('cannot be told from fewer than two cases that were tried', () => {
    expect(fittedBeta([{ k: 1, n: 3 }, { k: 0, n: 0 }])).toBeNull(); // prettier-ignore
  });

  it('is worth many tries where cases do not differ, and few where they are all or nothing', () => {
    const same = fittedBeta(Array.from({ length: 30 }, () => ({ k: 5, n: 10 })));
    const apart = fittedBeta(Array.from({ length: 30 }, (_, at) => ({ k: at % 2 === 0 ? 10 : 0, n: 10 })));
    expect((same?.a ?? 0) + (same?.b ?? 0)).toBeGreaterThan(150);
    expect((apart?.a ?? 9) + (apart?.b ?? 9)).toBeLessThan(0.3);
  });

  it('is likelier than its neighbours, for any counts', () => {
    const counted = fc.nat(12).chain((n) => fc.record({ k: fc.nat(n), n: fc.constant(n) }));
    fc.assert(
      fc.property(fc.array(counted, { minLength: 2, maxLength: 40 }), (counts) => {
        const prior = fittedBeta(counts);
        fc.pre(prior !== null && prior.a + prior.b < 150 && prior.a + prior.b > 0.2);
        const here = logMarginal(counts, prior);
        for (const [p, q] of [
          [1.05, 1],
          [0.95, 1],
          [1, 1.05],
          [1, 0.95],
        ] as const) {
          expect(here).toBeGreaterThanOrEqual(logMarginal(counts, { a: prior.a * p, b: prior.b * q }) - 1e-9);
        }
      }),
      { numRuns: 40 },
    );
  });
});

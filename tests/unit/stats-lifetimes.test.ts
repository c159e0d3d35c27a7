/** Kaplan-Meier on published remission times, and the corners of the curve. */
import { describe, expect, it } from 'vitest';
import { kaplanMeier, medianDays, medianRange } from '../../src/stats/lifetimes';

// Freireich et al. 1963, Blood 21: 699-716, as used by Gehan 1965 and in most textbooks since: weeks in remission of the 21
// treated with 6-MP; a minus marks those still in remission when last seen.
const REMISSION = [6, 6, 6, -6, 7, -9, 10, -10, -11, 13, 16, -17, -19, -20, 22, 23, -25, -32, -32, -34, -35];

/** Weeks, at risk, share left, Greenwood's error: the textbooks' table (from memory), equal to the formula by hand. */
const TABLE = [
  [6, 21, 0.857, 0.0764],
  [7, 17, 0.807, 0.0869],
  [10, 15, 0.753, 0.0963],
  [13, 12, 0.69, 0.1068],
  [16, 11, 0.627, 0.1141],
  [22, 7, 0.538, 0.1282],
  [23, 6, 0.448, 0.1346],
] as const;

/** The interval on log(-log S) as statistics packages print it for the same data (from memory), three digits. */
const LOG_LOG = [
  [0.62, 0.952],
  [0.563, 0.923],
  [0.503, 0.889],
  [0.432, 0.849],
  [0.368, 0.805],
  [0.268, 0.747],
  [0.188, 0.68],
] as const;

describe('21 remissions under 6-MP', () => {
  const steps = kaplanMeier(REMISSION.map((weeks) => ({ days: Math.abs(weeks), settled: weeks > 0 })));

  it('give the printed curve and errors', () => {
    expect(steps.length).toBe(TABLE.length);
    TABLE.forEach(([weeks, atRisk, left, error], at) => {
      expect([steps[at].days, steps[at].atRisk]).toEqual([weeks, atRisk]);
      expect(steps[at].left).toBeCloseTo(left, 3);
      expect(steps[at].standardError).toBeCloseTo(error, 4);
    });
  });

  it('give the log-log interval and the printed median of 23 weeks', () => {
    LOG_LOG.forEach(([low, high], at) => {
      expect(Math.abs((steps[at].low ?? 0) - low)).toBeLessThan(0.001);
      expect(Math.abs((steps[at].high ?? 0) - high)).toBeLessThan(0.001);
    });
    expect(medianDays(steps)).toBe(23);
  });

  it('give the interval of the median as packages print it on that scale, 13 weeks to no end (from memory)', () => {
    expect(medianRange(steps)).toEqual({ low: 13, high: null });
  });
});

describe('corners', () => {
  it('without anyone undecided it is the plain share left', () => {
    const steps = kaplanMeier([4, 1, 3, 2].map((days) => ({ days, settled: true })));
    [0.75, 0.5, 0.25, 0].forEach((left, at) => expect(steps[at].left).toBeCloseTo(left, 12));
    expect(steps.at(-1)).toMatchObject({ low: null, high: null });
    expect(medianRange(steps)).toEqual({ low: 1, high: null });
    expect(medianDays(steps)).toBe(2);
  });

  it('has no step and no median where nothing settled', () => {
    const steps = kaplanMeier([{ days: 5, settled: false }]);
    expect(steps).toEqual([]);
    expect(medianDays(steps)).toBeNull();
  });
});

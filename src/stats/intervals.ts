/**
 * Quantiles, a mean with its standard error, and intervals of a proportion.
 * Intervals: Wilson 1927 (J. Am. Stat. Assoc. 22: 209-212) and Jeffreys, both fit for small numbers
 * (Brown, Cai & DasGupta 2001, Stat. Sci. 16: 101-133).
 */
import { betaQuantile } from './beta';

export interface Interval {
  readonly low: number;
  readonly high: number;
}

export interface Mean {
  readonly mean: number;
  /** Standard deviation of the sample over the root of its size; 0 for one value. */
  readonly standardError: number;
}

/** 0.975 quantile of the normal distribution. */
export const Z95 = 1.959963984540054;

/** Wilson's 95 % interval of x successes in n tries, n > 0. */
export function wilson(x: number, n: number): Interval {
  const z2 = Z95 * Z95;
  const centre = (x + z2 / 2) / (n + z2);
  const half = (Z95 * Math.sqrt((x * (n - x)) / n + z2 / 4)) / (n + z2);
  return { low: x === 0 ? 0 : centre - half, high: x === n ? 1 : centre + half };
}

/** Jeffreys' 95 % interval: quantiles of Beta(x + 1/2, n - x + 1/2), reaching 0 at no success and 1 at no failure. */
export function jeffreys(x: number, n: number): Interval {
  const a = x + 0.5;
  const b = n - x + 0.5;
  return { low: x === 0 ? 0 : betaQuantile(0.025, a, b), high: x === n ? 1 : betaQuantile(0.975, a, b) };
}

/**
 * The value below which a share p of the sample lies, joining the sorted values by straight lines
 * (Hyndman & Fan 1996, Am. Stat. 50: 361-365, definition 7). NaN for no values.
 */
export function quantile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const place = p * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.ceil(place);
  const low = sorted[below] ?? Number.NaN;
  const high = sorted[above] ?? Number.NaN;
  return below === above ? low : low + (high - low) * (place - below);
}

export function meanOf(values: readonly number[]): Mean {
  const n = values.length;
  const mean = values.reduce((sum, x) => sum + x, 0) / n;
  const squares = values.reduce((sum, x) => sum + (x - mean) * (x - mean), 0);
  return { mean, standardError: n > 1 ? Math.sqrt(squares / (n - 1) / n) : 0 };
}

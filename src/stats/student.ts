/** Student's t, by way of the beta distribution (Abramowitz & Stegun 1964, 26.7.1). */
import { betaQuantile } from './beta';

/** The t that is exceeded, to either side, with a chance of 5 % in all; degrees of freedom > 0. */
export function student95(degrees: number): number {
  const x = betaQuantile(0.05, degrees / 2, 0.5);
  return Math.sqrt((degrees * (1 - x)) / x);
}

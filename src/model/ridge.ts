/**
 * Ridge height: h = cap (1 - exp(-g t / cap)), mm; g the first rise in mm/day, t the days since the verdict.
 * It is a function of time alone, so it is worked out when asked for and not kept. Rate and cap are judgement.
 */
import type { Rates } from './layout';

export function ridgeHeightMm(days: number, rates: Rates): number {
  return days <= 0 ? 0 : rates.ridgeCapMm * (1 - expMinus((rates.ridgeMmPerDay * days) / rates.ridgeCapMm));
}

/** exp(-x) for x >= 0 by halving and Taylor's series, to 1e-13: the same bits on every host, unlike Math.exp. */
export function expMinus(x: number): number {
  if (x > 700) return 0;
  let halvings = 0;
  while (x > 0.0625) {
    x /= 2;
    halvings++;
  }
  let term = 1;
  let sum = 1;
  for (let k = 1; k <= 8; k++) {
    term *= -x / k;
    sum += term;
  }
  for (let k = 0; k < halvings; k++) sum *= sum;
  return sum;
}

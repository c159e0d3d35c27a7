/**
 * Ridge height: h = cap (1 - exp(-g t / cap)), mm; g the first rise in mm/day, t the days since the verdict.
 * It is a function of time alone, so it is worked out when asked for and not kept. Rate and cap are judgement.
 *
 * The look-alike. Of the nuclei that bring a ridge a share is veiled: for some months the seam looks fused from above.
 * That is the 'incompatible fusion' of Hidaka, Yurugi, Sunagawa & Kinzie 1997 (Coral Reefs 16: 13-20): tissue closes
 * over a groove with spines, and a ridge of skeleton comes later, after 2 to 8 months. So no wall is drawn as long as
 * the veil lies, and then it rises as any other; readings count its height from the verdict on. The fate of the seam is a ridge from the verdict on, and colours never
 * cross it. The share is judgement.
 */
import { DAYS_PER_MONTH } from '../units/quantity';
import { DEFAULTS } from './defaults';
import type { Rates } from './layout';
import { draw, type Keys } from './noise';
import type { NucleusTable, SeamTable } from './seam-table';

export function ridgeHeightMm(days: number, rates: Rates): number {
  return days <= 0 ? 0 : rates.ridgeCapMm * (1 - expMinus((rates.ridgeMmPerDay * days) / rates.ridgeCapMm));
}

/** Day until which the n-th verdict of a pair, a ridge of day `day`, looks fused from above; 0 if it never does. */
export function veiledUntil(keys: Keys, rates: Rates, pair: number, n: number, day: number): number {
  if (draw(keys.veil, pair, n) >= rates.veiledShare) return 0;
  const { veilLeastMonths: least, veilMostMonths: most } = DEFAULTS;
  const months = least.value + (most.value - least.value) * draw(keys.veilDays, pair, n);
  return day + months * DAYS_PER_MONTH;
}

/** Day from which the wall of a ridge contact rises in the picture: its verdict, or the end of its veil. */
export function risesFrom(
  seam: Pick<SeamTable, 'settled' | 'nucleus'>,
  nuclei: Pick<NucleusTable, 'veiledUntil'>,
  row: number,
): number {
  return Math.max(seam.settled[row], nuclei.veiledUntil[seam.nucleus[row]]);
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

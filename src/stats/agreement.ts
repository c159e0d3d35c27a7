/**
 * Cohen's kappa: how far two people agree beyond what their own habits would give by chance.
 * kappa = (po - pe) / (1 - pe), po the share of equal calls, pe the sum of products of the two people's shares
 * (Cohen 1960, Educ. Psychol. Meas. 20: 37-46). Standard error for kappa other than 0, large samples: equation 13 of
 * Fleiss, Cohen & Everitt 1969 (Psychol. Bull. 72: 323-327).
 * Bias: with few calls the interval is too narrow, and it is cut off at -1 and 1.
 */
import { type Interval, Z95 } from './intervals';

export interface Agreement extends Interval {
  readonly kappa: number;
  readonly standardError: number;
  /** Share of equal calls. */
  readonly agreed: number;
}

/** `table[i][j]`: how often the first said i and the second j. Null where both always say the same one thing, or nothing. */
export function kappaOf(table: readonly (readonly number[])[]): Agreement | null {
  const count = table.flat().reduce((sum, n) => sum + n, 0);
  const share = table.map((row) => row.map((n) => n / count));
  const first = share.map((row) => row.reduce((sum, p) => sum + p, 0));
  const second = share.map((_, j) => share.reduce((sum, row) => sum + row[j], 0));
  const agreed = share.reduce((sum, row, i) => sum + row[i], 0);
  const byChance = first.reduce((sum, p, i) => sum + p * second[i], 0);
  if (count === 0 || byChance >= 1) return null;
  const kappa = (agreed - byChance) / (1 - byChance);
  let variance = -((kappa - byChance * (1 - kappa)) ** 2);
  for (const [i, row] of share.entries())
    for (const [j, p] of row.entries())
      variance +=
        i === j
          ? p * (1 - (first[i] + second[i]) * (1 - kappa)) ** 2
          : (1 - kappa) ** 2 * p * (second[i] + first[j]) ** 2;
  const standardError = Math.sqrt(Math.max(0, variance) / count) / (1 - byChance);
  return {
    kappa,
    standardError,
    agreed,
    low: Math.max(-1, kappa - Z95 * standardError),
    high: Math.min(1, kappa + Z95 * standardError),
  };
}

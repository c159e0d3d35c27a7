/**
 * Share not yet settled against time, with cases still undecided counted as such (Kaplan & Meier 1958, J. Am. Stat.
 * Assoc. 53: 457-481). Its error is Greenwood's (1926), its 95 % interval is taken on the scale log(-log S), so that it
 * stays within 0 and 1 (Kalbfleisch & Prentice 1980, The Statistical Analysis of Failure Time Data).
 */
import { Z95 } from './intervals';

export interface Lifetime {
  readonly days: number;
  /** False: still undecided when last seen. */
  readonly settled: boolean;
}

/** One step of the curve; where nothing is left, or the error cannot be told, the interval is null. */
export interface Step {
  readonly days: number;
  readonly atRisk: number;
  readonly settled: number;
  readonly left: number;
  readonly standardError: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** One step for each day on which something settled. A case last seen on that day was still at risk on it. */
export function kaplanMeier(lifetimes: readonly Lifetime[]): Step[] {
  const counts = new Map<number, { seen: number; settled: number }>();
  for (const { days, settled } of lifetimes) {
    const day = counts.get(days) ?? { seen: 0, settled: 0 };
    counts.set(days, { seen: day.seen + 1, settled: day.settled + (settled ? 1 : 0) });
  }
  const steps: Step[] = [];
  let atRisk = lifetimes.length;
  let left = 1;
  let greenwood = 0;
  for (const [days, { seen, settled }] of [...counts].sort(([a], [b]) => a - b)) {
    if (settled > 0) {
      left *= (atRisk - settled) / atRisk;
      greenwood += settled / (atRisk * (atRisk - settled));
      steps.push({ days, atRisk, settled, left, ...doubt(left, greenwood) });
    }
    atRisk -= seen;
  }
  return steps;
}

function doubt(left: number, greenwood: number): Pick<Step, 'standardError' | 'low' | 'high'> {
  if (left === 0) return { standardError: 0, low: null, high: null };
  const factor = Math.exp((Z95 * Math.sqrt(greenwood)) / -Math.log(left));
  return { standardError: left * Math.sqrt(greenwood), low: left ** factor, high: left ** (1 / factor) };
}

/** The first day by which half had settled; null where the curve does not come down so far. */
export function medianDays(steps: readonly Step[]): number | null {
  return steps.find(({ left }) => left <= 0.5)?.days ?? null;
}

/**
 * The 95 % interval of that day: where the curve's own interval comes down to half (Brookmeyer & Crowley 1982, Biometrics
 * 38: 29-41). Null for an end that the curve does not reach.
 */
export function medianRange(steps: readonly Step[]): {
  readonly low: number | null;
  readonly high: number | null;
} {
  return {
    low: steps.find(({ left, low }) => (low ?? left) <= 0.5)?.days ?? null,
    high: steps.find(({ high }) => high !== null && high <= 0.5)?.days ?? null,
  };
}

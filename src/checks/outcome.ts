/** What running a check gave: one row of the report. */
import type { Mean } from '../stats/intervals';
import { type Check, THREE_ERRORS } from './check';

export interface Outcome {
  readonly name: string;
  readonly claim: string;
  readonly source: string;
  readonly unit: string;
  readonly expected: number;
  readonly bound: 'about' | 'atLeast' | 'atMost';
  readonly found: number;
  /** 95 % of what another set of seeds may give; null where chance has no part. */
  readonly interval: readonly [number, number] | null;
  readonly tolerance: number;
  readonly because: string;
  readonly pass: boolean;
  /** Why it is known to fall short; null for a check that passes. */
  readonly known: string | null;
}

const Z95 = 1.96;

export function judge(check: Check): Outcome {
  const ran = check.run();
  const { mean: found, standardError }: Mean =
    typeof ran === 'number' ? { mean: ran, standardError: 0 } : ran;
  const tolerance = check.tolerance === THREE_ERRORS ? 3 * standardError : check.tolerance;
  const { name, claim, source, unit, expected, because, bound = 'about' } = check;
  const pass = isWithin(found - expected, bound, tolerance);
  return {
    name,
    claim,
    source,
    unit,
    expected,
    bound,
    found,
    interval: standardError > 0 ? [found - Z95 * standardError, found + Z95 * standardError] : null,
    tolerance,
    because,
    pass,
    known: pass ? null : (check.known ?? null),
  };
}

function isWithin(off: number, bound: Outcome['bound'], tolerance: number): boolean {
  if (bound === 'atLeast') return off >= -tolerance;
  if (bound === 'atMost') return off <= tolerance;
  return Math.abs(off) <= tolerance;
}

/**
 * A published or provable claim as data: what is claimed, who says so, what number follows, and how far ours may be off.
 * The tests, `npm run validate` and the page read the same list; a check is told apart by its name.
 */
import type { Mean } from '../stats/intervals';
import type { LatticeTable } from './lattice-table';
import type { Plot } from './plot';

/** In place of a source: what growers say and nobody has published. */
export const PRACTICE = 'common practice, no source';

/** A tolerance that is worked out from the spread found: three standard errors of the mean. */
export const THREE_ERRORS = 'three standard errors';

export interface Check {
  readonly name: string;
  readonly claim: string;
  /** Authors, year, journal, equation or table; or PRACTICE. */
  readonly source: string;
  readonly unit: string;
  readonly expected: number;
  /** What is found may be greater (or less) without limit; left out where it must be near `expected`. */
  readonly bound?: 'atLeast' | 'atMost';
  /** Greatest distance from `expected` that still passes, in `unit`. */
  readonly tolerance: number | typeof THREE_ERRORS;
  /** Why it may be off that far. */
  readonly because: string;
  /** Where it falls short: why that is known and left in. */
  readonly known?: string;
  /** What the engine gives, in `unit`; a mean over seeds with its standard error, a number where chance has no part. */
  readonly run: () => number | Mean;
}

/** Checks about one thing: they share runs, so they are run together. */
export interface Topic {
  readonly title: string;
  /** Fast enough for every test run; the others run in `npm run validate` alone. */
  readonly quick: boolean;
  readonly checks: readonly Check[];
  /** Pictures of the same runs, drawn after the checks. */
  readonly plots?: () => readonly Plot[];
  /** What a check about the lattice adds up. */
  readonly tables?: () => readonly LatticeTable[];
}

/** Runs of the engine cost seconds and several checks read the same ones: works out once. */
export function once<T>(work: () => T): () => T {
  let kept: { readonly value: T } | undefined;
  return () => (kept ??= { value: work() }).value;
}

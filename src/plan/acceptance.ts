/**
 * The chance that a pair takes, from what a grower says of it: a number, tries, or kinship.
 * Tries are read as Beta(took + 0.05, tried - took + 0.95): the prior is judgement, an unknown pair counts as one
 * try that nearly failed.
 */
import { DEFAULTS } from '../model/defaults';
import { betaQuantile } from '../stats/beta';
import type { Pair, Related } from './plan';

const BY_KINSHIP: Readonly<Record<Related, number>> = {
  unrelated: DEFAULTS.acceptanceUnrelated.value,
  unknown: DEFAULTS.acceptanceUnknown.value,
  kin: DEFAULTS.acceptanceKin.value,
  self: DEFAULTS.acceptanceSelf.value,
};

/** What the engine draws with. A pair that the plan does not list is unknown. */
export function acceptanceMean(pair: Pair | undefined): number {
  const said = pair?.acceptance;
  if (said === undefined) return BY_KINSHIP[pair?.related ?? 'unknown'];
  if (typeof said === 'number') return said;
  const { took, missed } = posterior(said);
  return took / (took + missed);
}

/** 95 % of what the tries allow; null where the grower gave no tries. */
export function acceptanceRange(pair: Pair | undefined): { low: number; high: number } | null {
  const said = pair?.acceptance;
  if (typeof said !== 'object') return null;
  const { took, missed } = posterior(said);
  return { low: betaQuantile(0.025, took, missed), high: betaQuantile(0.975, took, missed) };
}

function posterior(tries: { readonly took: number; readonly tried: number }): {
  took: number;
  missed: number;
} {
  return {
    took: tries.took + DEFAULTS.priorTook.value,
    missed: tries.tried - tries.took + DEFAULTS.priorMissed.value,
  };
}

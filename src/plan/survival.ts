/**
 * The chance that a cutting lives, by its area: logit p = a + b log10(area in mm2), the form usual in the field (e.g.
 * Madin et al. 2023, Ecology, doi 10.1002/ecy.4017). Both numbers are judgement
 * (model/defaults.ts) where the plan holds none fitted to the grower's own cuttings.
 */
import { DEFAULTS } from '../model/defaults';
import type { Survival } from './plan';

/** A margin around a rare patch that is thinner than this is warned of, mm: judgement. */
export const LEAST_MARGIN_MM = 3;

const JUDGED: Survival = {
  atOneMm2: DEFAULTS.survivalAtOneMm2.value,
  perDecade: DEFAULTS.survivalPerDecade.value,
};

/** 0 for no area. */
export function survivalOf(areaMm2: number, { atOneMm2, perDecade }: Survival = JUDGED): number {
  if (areaMm2 <= 0) return 0;
  const logit = atOneMm2 + perDecade * Math.log10(areaMm2);
  return 1 / (1 + Math.exp(-logit));
}

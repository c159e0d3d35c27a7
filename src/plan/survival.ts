/**
 * The chance that a cutting lives, by its area: logit p = a + b log10(area in mm2), the form usual in the field (e.g.
 * Madin et al. 2023, Ecology, doi 10.1002/ecy.4017). Both numbers are judgement: model/defaults.ts.
 */
import { DEFAULTS } from '../model/defaults';

/** A margin around a rare patch that is thinner than this is warned of, mm: judgement. */
export const LEAST_MARGIN_MM = 3;

/** 0 for no area. */
export function survivalOf(areaMm2: number): number {
  if (areaMm2 <= 0) return 0;
  const logit = DEFAULTS.survivalAtOneMm2.value + DEFAULTS.survivalPerDecade.value * Math.log10(areaMm2);
  return 1 / (1 + Math.exp(-logit));
}

/** What a cut around a patch comes to, in words. */
import { short } from '../../plan/piece-name';
import type { Plan } from '../../plan/plan';
import { LEAST_MARGIN_MM, survivalOf } from '../../plan/survival';
import type { CutOut } from './patch';

/** Distances run from cell to cell: a margin that was asked for in full is not thin, mm. */
const INEXACT_MM = 0.2;

export function isThin({ patch }: CutOut): boolean {
  return patch !== null && patch.marginMm < LEAST_MARGIN_MM - INEXACT_MM;
}

/** 'Fern 12.5 mm², margin 3 mm. Cutting of 96 mm²: lives with a chance of 94 %.' */
export function patchWords(plan: Plan, cutOut: CutOut): string {
  return `${withinWords(plan, cutOut)} ${cuttingWords(plan, cutOut.areaMm2)}`;
}

export function cuttingWords({ survival }: Plan, areaMm2: number): string {
  const whose = survival ? ', by your own cuttings' : '';
  return `Cutting of ${Math.round(areaMm2)} mm²: lives with a chance of ${chanceWords(survivalOf(areaMm2, survival))}${whose}.`;
}

function withinWords(plan: Plan, { patch }: CutOut): string {
  if (patch === null) return 'No patch lies whole in it.';
  const name = plan.varieties.at(patch.variety - 1)?.name ?? 'One colour';
  return `${name} ${short(patch.areaMm2)} mm², margin ${short(patch.marginMm)} mm.`;
}

/** Never a certainty: the curve is a guess. */
function chanceWords(chance: number): string {
  const share = Math.round(100 * chance);
  if (share > 99) return 'over 99 %';
  return share < 1 ? 'under 1 %' : `${share} %`;
}

/** Numbers of a lesson's claims, in their units. */
import type { Claim } from '../../lessons/lesson';

/** '93 %', '12.1 mm', '4.2 times'; of a claim on a difference that difference. */
export function claimNumber(claim: Claim, value: number): string {
  if (claim.by) return `${value.toFixed(2)} times`;
  const isLength = claim.amount.of === 'vein-width' || claim.amount.of === 'radius';
  return isLength ? `${value.toFixed(1)} mm` : `${(100 * value).toFixed(1)} %`;
}

export function boundsWords(claim: Claim): string {
  return `${claimNumber(claim, claim.from)} to ${claimNumber(claim, claim.to)}`;
}

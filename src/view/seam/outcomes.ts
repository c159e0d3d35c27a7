/** The five things a stretch of seam can be: word, place in a reading, what it means. The order is that of all lists. */
import type { SeamMm } from '../../measure/reading';

export const OUTCOMES = ['fused', 'ridge', 'lapped', 'dead', 'undecided'] as const;
export type Outcome = (typeof OUTCOMES)[number];

export const MEANING: Readonly<Record<Outcome, string>> = {
  fused: 'One tissue and skeleton: the colours can run into each other here.',
  ridge: 'Both sides build a wall and neither passes it.',
  lapped: 'One variety grows over the other.',
  dead: 'Bare pale skeleton that neither side settles again.',
  undecided: 'Touched, but not yet settled.',
};

export function lengthMm(seam: SeamMm, outcome: Outcome): number {
  return seam[`${outcome}Mm`];
}

/** Share of the seam, or null while there is none. */
export function share(seam: SeamMm, outcome: Outcome): number | null {
  return seam.lengthMm > 0 ? lengthMm(seam, outcome) / seam.lengthMm : null;
}

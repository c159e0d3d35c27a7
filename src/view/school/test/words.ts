/** The kinds of seam in the words of the test. */
import type { Call, SeamKind } from '../../../lessons/seam-kinds';

export const CALL_WORDS: Readonly<Record<Call, { readonly label: string; readonly means: string }>> = {
  fused: { label: 'Fused', means: 'one tissue, no line' },
  ridge: { label: 'Ridge', means: 'a wall stands' },
  lapped: { label: 'Lapped', means: 'one lies over the other' },
  dead: { label: 'Dead', means: 'a bare pale line' },
  undecided: { label: 'Undecided', means: 'touching, too soon to tell' },
};

export const KIND_WORDS: Readonly<Record<SeamKind, string>> = {
  fused: 'fused',
  ridge: 'a ridge',
  lapped: 'lapped',
  dead: 'dead',
  undecided: 'undecided',
  veiled: 'a ridge that still looks fused',
};

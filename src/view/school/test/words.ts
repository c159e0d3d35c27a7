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

/** What to look for, told to whoever missed one. */
export const SIGN_WORDS: Readonly<Record<SeamKind, string>> = {
  fused:
    'Look along it to the rim: there, each colour has crossed to the other side, and nothing stands or lies over.',
  ridge: 'Look for a crest along the line: one side of it is lit, the other in shade.',
  lapped:
    'Look for a lip on one side only, which throws its shade on the other, and for a seam that has left the middle.',
  dead: 'Look for a pale strip without polyps, level or sunk.',
  undecided:
    'Two colours lie side by side: no crest, no lip, no pale strip, and none has crossed at the rim.',
  veiled:
    'Colours are fringed close to the line and nowhere else. It is drawn so by the model: in a tank, cut one open.',
};

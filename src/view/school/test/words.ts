/** The kinds of seam in the words of the test. */
import type { Lesson } from '../../../lessons/lesson';
import { BARE_LINE } from '../../../lessons/pages/bare-line';
import { FUSED_OR_WALL } from '../../../lessons/pages/fused-or-wall';
import { LAPPED } from '../../../lessons/pages/lapped';
import { LOOK_ALIKE } from '../../../lessons/pages/look-alike';
import { MEETING } from '../../../lessons/pages/meeting';
import type { Call, Seen, SeamKind } from '../../../lessons/seam-kinds';

export const CALL_WORDS: Readonly<Record<Call, { readonly label: string; readonly means: string }>> = {
  fused: { label: 'Fused', means: 'one tissue, no line' },
  ridge: { label: 'Ridge', means: 'a crest along the line' },
  lapped: { label: 'Lapped', means: 'one lies over the other' },
  dead: { label: 'Dead', means: 'a bare line, no polyps' },
  undecided: { label: 'Undecided', means: 'too soon to tell' },
};

/** Said before the test, and where it ends. */
export const RULE =
  'Where no eye can tell a seam from above yet, because it is too young or only looks fused, ‘undecided’ counts as right too.';

const KIND_WORDS: Readonly<Record<SeamKind, string>> = {
  fused: 'fused',
  ridge: 'a ridge',
  lapped: 'lapped',
  dead: 'dead',
  undecided: 'undecided',
  veiled: 'a ridge that still looks fused',
};

/** 'a ridge, too young to show' */
export function kindWords({ is, isEarly }: Seen): string {
  return isEarly && is !== 'veiled' ? `${KIND_WORDS[is]}, too young to show` : KIND_WORDS[is];
}

/** What to look for; tests/unit/seam-tiles.test.ts looks for it on the tiles of many sets. */
const SIGN_WORDS: Readonly<Record<SeamKind, string>> = {
  fused:
    'Follow the seam along: specks or tongues of one colour reach into the other, and neither crest nor lip parts the two.',
  ridge: 'A crest stands along the line. Turn the light across it: one face is lit, the other in shade.',
  lapped:
    'The surface drops on one side: there it ends in a lip. Turn the light across it: the lip throws shade on that side only.',
  dead: 'A strip without polyps lies between the colours, pale while it is fresh.',
  undecided:
    'At the ring two colours lie side by side: no crest, no lip, no pale strip, and no specks of one in the other there.',
  veiled:
    'No crest, no lip, no pale strip and no specks: from above it is like a seam that has just begun to fuse. In a tank, wait, or cut one open.',
};

const EARLY_WORDS: Readonly<Partial<Record<SeamKind, string>>> = {
  fused: 'Hardly any colour has crossed yet',
  ridge: 'Its crest is too low to be seen',
  lapped: 'Its lip has not come over yet',
};

export function signWords({ is, isEarly }: Seen): string {
  const early = isEarly ? EARLY_WORDS[is] : undefined;
  return early ? `${early}: ‘undecided’ is right too.` : SIGN_WORDS[is];
}

const LESSON_OF: Readonly<Record<SeamKind, Lesson>> = {
  fused: FUSED_OR_WALL,
  ridge: FUSED_OR_WALL,
  lapped: LAPPED,
  dead: BARE_LINE,
  undecided: MEETING,
  veiled: LOOK_ALIKE,
};

/** The lessons that teach what the test asks for, in the order of School. */
export const TAUGHT: readonly Lesson[] = [MEETING, FUSED_OR_WALL, LAPPED, BARE_LINE, LOOK_ALIKE];

/** The lesson that teaches it. */
export function lessonOf({ is, isEarly }: Seen): Lesson {
  return isEarly && is !== 'veiled' ? MEETING : LESSON_OF[is];
}

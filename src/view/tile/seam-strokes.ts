/**
 * With what each outcome's line is stroked on the tile, from the lowest stroke up. A light and a dark stroke lie on each
 * other, for one alone would be lost on some variety's colour. Where tissue is one, its colours are the picture: two
 * fine rails on a thin ground let them be seen, where walls and bare lines may cover what they part.
 */
import type { SeamOutcome } from '../../skin/seam-trace';

export interface Stroke {
  /** Along the seam's own course, or along the shape that tells the outcome. */
  readonly on: 'course' | 'shape';
  readonly colour: string;
  readonly opacity: number;
  readonly widthPx: number;
  /** Lengths of dash and gap; none for a line that runs through. */
  readonly dash?: string;
}

const DARK = '#101418';
const WHITE = '#ffffff';

/** A coloured line in a white casing in a dark one. */
function cased(colour: string, widthPx: number, dash?: string): readonly Stroke[] {
  const shape = { on: 'shape', ...(dash !== undefined && { dash }) } as const;
  return [
    { ...shape, colour: DARK, opacity: 0.6, widthPx: widthPx + 3.6 },
    { ...shape, colour: WHITE, opacity: 1, widthPx: widthPx + 2 },
    { ...shape, colour, opacity: 1, widthPx },
  ];
}

export const SEAM_STROKES: Readonly<Record<SeamOutcome, readonly Stroke[]>> = {
  fused: [
    { on: 'course', colour: '#04261b', opacity: 0.65, widthPx: 4 },
    { on: 'shape', colour: '#b4fadd', opacity: 1, widthPx: 1 },
  ],
  ridge: cased('#d2571e', 2),
  lapped: cased('#a04a90', 1.6),
  dead: cased('#6f6548', 3.4, '0.1 7'),
  undecided: [
    { on: 'course', colour: DARK, opacity: 0.7, widthPx: 4.4 },
    { on: 'shape', colour: WHITE, opacity: 1, widthPx: 2, dash: '6 6' },
  ],
};

/** The lessons in the order of School. A new one: a file in pages/ and a line here. */
import type { Lesson } from './lesson';
import { BARE_LINE } from './pages/bare-line';
import { CUT_AND_GAP } from './pages/cut-and-gap';
import { FUSED_OR_WALL } from './pages/fused-or-wall';
import { LAPPED } from './pages/lapped';
import { LOOK_ALIKE } from './pages/look-alike';
import { MEETING } from './pages/meeting';
import { MOST_DO_NOT_TAKE } from './pages/most-do-not-take';
import { RARE_SPECK } from './pages/rare-speck';
import { RECUT } from './pages/recut';
import { RIM_AND_RATE } from './pages/rim-and-rate';
import { UNEQUAL_RATES } from './pages/unequal-rates';
import { WHEN_TO_STOP } from './pages/when-to-stop';

export const LESSONS: readonly Lesson[] = [
  RIM_AND_RATE,
  MEETING,
  FUSED_OR_WALL,
  LAPPED,
  BARE_LINE,
  LOOK_ALIKE,
  MOST_DO_NOT_TAKE,
  CUT_AND_GAP,
  UNEQUAL_RATES,
  RECUT,
  RARE_SPECK,
  WHEN_TO_STOP,
];

/** The same line in earlier months of the run: their surfaces are today's growth lines. */
import { section, type Section } from '../../measure/section';
import type { Frame } from '../../model/frame';
import type { SectionLine } from '../tile/section-line';
import { isAlike } from './outlines';

/** Months between two growth lines: closer ones would run into each other. */
const EVERY_MONTHS = 2;

/** Newest first; a month whose frame was dropped to save memory has no line. */
export function olderSections(
  frames: readonly (Frame | null)[],
  month: number,
  line: SectionLine,
  now: Section,
): Section[] {
  const found: Section[] = [];
  for (let before = month - EVERY_MONTHS; before >= 0; before -= EVERY_MONTHS) {
    const frame = frames.at(before);
    if (!frame) continue;
    const then = section(frame, line.from, line.to);
    if (isAlike(then, now)) found.push(then);
  }
  return found;
}

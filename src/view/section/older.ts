/** The same line in earlier months of the run: their surfaces are today's growth lines. */
import { section, type Section } from '../../measure/section';
import type { Frame } from '../../model/frame';
import type { Step } from '../../plan/plan';
import { dayOfMonth } from '../../units/quantity';
import type { SectionLine } from '../tile/section-line';
import { isAlike } from './outlines';

/** Months between two growth lines: closer ones would run into each other. */
const EVERY_MONTHS = 2;

/**
 * Newest first; a month whose frame was dropped to save memory has no line, nor has one before the last step that cut or
 * moved what grew: its surface does not lie in the skeleton of today.
 */
export function olderSections(
  frames: readonly (Frame | null)[],
  month: number,
  line: SectionLine,
  now: Section,
  steps: readonly Step[],
): Section[] {
  const since = lastCutDay(steps, dayOfMonth(month));
  const found: Section[] = [];
  for (let before = month - EVERY_MONTHS; before >= 0; before -= EVERY_MONTHS) {
    if (dayOfMonth(before) < since) break;
    const frame = frames.at(before);
    if (!frame) continue;
    const then = section(frame, line.from, line.to);
    if (isAlike(then, now)) found.push(then);
  }
  return found;
}

/** A step acts at the start of its day. */
function lastCutDay(steps: readonly Step[], day: number): number {
  const done = steps.filter((step) => step.on !== false && step.kind !== 'add' && step.day <= day);
  return Math.max(0, ...done.map((step) => step.day));
}

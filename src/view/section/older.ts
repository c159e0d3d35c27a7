/** The same line in earlier months of the run: their surfaces are today's growth lines. */
import { section, type Section, type Slice } from '../../measure/section';
import type { Frame } from '../../model/frame';
import type { Step } from '../../plan/plan';
import { dayOfMonth } from '../../units/quantity';
import type { SectionLine } from '../tile/section-line';
import { isAlike } from './outlines';

/** Months between two growth lines: closer ones would run into each other. */
const EVERY_MONTHS = 2;

const CRUMB_MM = 0.75;

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
    if (isAlike(then, now)) found.push({ ...then, slices: withoutCrumbs(then.slices) });
  }
  return found;
}

/**
 * Gaps and specks a few cells wide are left out: a line that runs along a rim crosses it again and again, and would be
 * drawn as a comb.
 */
function withoutCrumbs(slices: readonly Slice[]): Slice[] {
  const kept = [...slices];
  for (const isGap of [true, false]) {
    const isCrumb = ({ layers }: Slice): boolean => (layers.length === 0) === isGap;
    for (let start = 0; start < kept.length;) {
      let end = start;
      while (end < kept.length && isCrumb(kept[end]) === isCrumb(kept[start])) end++;
      const isInside = start > 0 && end < kept.length;
      if (isInside && isCrumb(kept[start]) && kept[end - 1].toMm - kept[start].fromMm < CRUMB_MM) {
        const { surfaceMm, layers } = kept[start - 1];
        for (let k = start; k < end; k++) kept[k] = { ...kept[k], surfaceMm, layers };
      }
      start = end;
    }
  }
  return kept;
}

/** A step acts at the start of its day. */
function lastCutDay(steps: readonly Step[], day: number): number {
  const done = steps.filter((step) => step.on !== false && step.kind !== 'add' && step.day <= day);
  return Math.max(0, ...done.map((step) => step.day));
}

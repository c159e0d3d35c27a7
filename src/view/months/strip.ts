/** Geometry of the months' strip: seam by outcome over time, stacked, in pixels of the drawing. */
import type { Reading } from '../../measure/reading';
import { lengthMm, OUTCOMES, type Outcome } from '../seam/outcomes';

export interface Band {
  readonly outcome: Outcome;
  readonly path: string;
}

export interface Box {
  readonly width: number;
  readonly height: number;
}

export function xOfMonth(month: number, months: number, box: Box): number {
  return (month / months) * box.width;
}

/** The month nearest to a place, within the plan. */
export function monthAt(x: number, months: number, box: Box): number {
  return Math.max(0, Math.min(months, Math.round((x / Math.max(1, box.width)) * months)));
}

const tidy = (value: number): string => value.toFixed(1);

/** What the full height of the strip is; 0 where no seam is. */
export function longestMm(readings: readonly Reading[]): number {
  return Math.max(...readings.map(({ seam }) => seam.lengthMm), 0);
}

/**
 * One closed path per outcome that occurs, fused at the bottom; the longest seam fills the height. Drawn up to a month,
 * on a scale that holds for all.
 */
export function bands(all: readonly Reading[], months: number, box: Box, upTo = months): Band[] {
  const longest = longestMm(all);
  const readings = all.slice(0, upTo + 1);
  if (longest === 0 || readings.length < 2) return [];
  const floor = readings.map(() => 0);
  const toY = (mm: number) => box.height - (mm / longest) * box.height;
  return OUTCOMES.flatMap((outcome) => {
    const below = [...floor];
    readings.forEach((reading, month) => (floor[month] += lengthMm(reading.seam, outcome)));
    if (readings.every((reading) => lengthMm(reading.seam, outcome) < 0.05)) return [];
    const x = (month: number) => tidy(xOfMonth(month, months, box));
    const up = floor.map((mm, month) => `${x(month)} ${tidy(toY(mm))}`);
    const down = below.map((mm, month) => `${x(month)} ${tidy(toY(mm))}`).reverse();
    return { outcome, path: `M${[...up, ...down].join('L')}Z` };
  });
}

/** Months that get a number under the strip: every one, or every second, third, sixth, so that they do not crowd. */
export function ticks(months: number, width: number): number[] {
  const room = Math.max(1, Math.floor(width / 34));
  const stride = [1, 2, 3, 4, 6, 12].find((step) => months / step <= room) ?? 12;
  return Array.from({ length: Math.floor(months / stride) + 1 }, (_, index) => index * stride);
}

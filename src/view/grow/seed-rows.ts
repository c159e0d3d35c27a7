/** The numbers of a month as the page lists them, and what 16 other seeds say of each. */
import type { Range } from '../../jobs/seed-range';
import type { Reading } from '../../measure/reading';
import type { Plan } from '../../plan/plan';
import { DAYS_PER_MONTH } from '../../units/quantity';
import { share } from '../seam/outcomes';
import { coverShare } from './tile-area';

export interface SeedRow {
  readonly name: string;
  /** Printed once, behind the name: all numbers of the row are in it. */
  readonly unit: string;
  readonly words: string;
  readonly decimals: number;
  readonly pick: (reading: Reading) => number | null;
}

const hundredfold = (value: number | null) => (value === null ? null : value * 100);
const inMonths = (day: number | null) => (day === null ? null : day / DAYS_PER_MONTH);

export function seedRows(plan: Plan, month: number): SeedRow[] {
  return [
    {
      name: 'fused',
      unit: '%',
      words: 'Share of the seam that has become one tissue, in %.',
      decimals: 0,
      pick: (reading) => hundredfold(share(reading.seam, 'fused')),
    },
    {
      name: 'swirl',
      unit: '0 to 1',
      words: 'How finely and evenly the fused colours run through each other, from 0 to 1.',
      decimals: 2,
      pick: (reading) => reading.swirl,
    },
    {
      name: 'vein width',
      unit: 'mm',
      words: 'Width of straight strips with as much colour border per fused area, in mm.',
      decimals: 1,
      pick: (reading) => reading.veinWidthMm,
    },
    {
      name: 'balance',
      unit: '0 to 1',
      words: 'How evenly the colours share the tissue: 1 is even, 0 is one colour alone.',
      decimals: 2,
      pick: (reading) => reading.balance,
    },
    {
      name: 'tile covered',
      unit: '%',
      words: 'Share of the tile under tissue, in %.',
      decimals: 0,
      pick: (reading) => hundredfold(coverShare(reading, plan)),
    },
    {
      name: 'ridge height',
      unit: 'mm',
      words: 'Mean height of the walls along their length, in mm.',
      decimals: 1,
      pick: (reading) => reading.ridgeHeightMm,
    },
    {
      name: 'first touch',
      unit: 'month',
      words: 'Month in which two varieties first met.',
      decimals: 1,
      pick: (reading) => inMonths(reading.firstTouchDay),
    },
    {
      name: `month ${month}’s seam settled by`,
      unit: 'month',
      words:
        'Month by which 95 % of the seam that stands at the month shown had become something; it moves on while the seam grows.',
      decimals: 1,
      pick: (reading) => inMonths(reading.settledDay),
    },
  ];
}

export function printed(value: number | null, row: SeedRow): string {
  return value === null ? '–' : value.toFixed(row.decimals);
}

/** The middle 80 %, or 'same' where it is one number as printed. */
export function spread(range: Range | null, row: SeedRow): string {
  if (range === null) return '–';
  const [low, high] = [printed(range.low, row), printed(range.high, row)];
  return low === high ? 'same' : `${low}–${high}`;
}

/** Where a number exists on some seeds only: on how many of those grown so far. */
export function onFewWords(range: Range | null, grown: number): string | null {
  return range !== null && range.count < grown ? `on ${range.count} of ${grown} seeds` : null;
}

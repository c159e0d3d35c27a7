/** Readings of colonies from a plain table: colony, group, date or year, area_mm2 or radius_mm. */
import { dayOfDate, DAYS_PER_MONTH } from '../units/quantity';
import {
  aboveZeroIn,
  type Fields,
  numberIn,
  readTable,
  type Row,
  type Table,
  Unfit,
  wordIn,
} from './csv-table';
import type { RadiusReading } from './rim-rate';

/** Months since 1970 of a date, which is one day of the calendar and has no clock. */
function monthsOfDate(word: string): number {
  const day = dayOfDate(word);
  if (Number.isNaN(day)) {
    throw new Unfit(`date must be a day as year-month-day, such as 2026-03-31, but is '${word}'`);
  }
  return day / DAYS_PER_MONTH;
}

function monthsOfYear(year: number): number {
  if (year >= 1 && year <= 9999) return 12 * year;
  throw new Unfit(`year must be from 1 to 9999, but is ${year}`);
}

function readingIn(fields: Fields): RadiusReading {
  const months =
    'date' in fields ? monthsOfDate(wordIn(fields, 'date')) : monthsOfYear(numberIn(fields, 'year'));
  const radiusMm =
    'radius_mm' in fields
      ? aboveZeroIn(fields, 'radius_mm')
      : Math.sqrt(aboveZeroIn(fields, 'area_mm2') / Math.PI);
  return { colony: wordIn(fields, 'colony'), group: wordIn(fields, 'group'), months, radiusMm };
}

/** A colony read again on one day is bad unless it says the same, of which one is enough. */
export function radiusTable(text: string): Table<RadiusReading> {
  const columns = [['colony'], ['group'], ['date', 'year'], ['area_mm2', 'radius_mm']];
  const { rows, bad } = readTable(text, columns, readingIn);
  const first = new Map<string, Row<RadiusReading>>();
  const doubts = rows.flatMap((row) => {
    const { group, colony, months, radiusMm } = row.value;
    const key = JSON.stringify([group, colony, months]);
    const known = first.get(key);
    if (known === undefined) first.set(key, row);
    return known === undefined || known.value.radiusMm === radiusMm
      ? []
      : [{ line: row.line, why: `line ${known.line} says otherwise of this colony on that day` }];
  });
  return { rows: [...first.values()], bad: [...bad, ...doubts].sort((a, b) => a.line - b.line) };
}

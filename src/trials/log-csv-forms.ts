/**
 * In which order a table writes day and month, and whether its numbers have a point or a comma: told by the table where
 * it leaves one answer only, else asked of the person.
 */
import { dayOfDate } from '../units/quantity';
import { type Delimiter, Unfit } from './csv-table';

/** 'ymd' is 2026-03-31 and always understood; the others say what 03/04/2026 is. */
export const DATE_ORDERS = ['ymd', 'dmy', 'mdy'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

export const DECIMALS = ['point', 'comma'] as const;
export type Decimal = (typeof DECIMALS)[number];

export interface Proposal<T> {
  readonly answer: T | 'ask';
  /** A sentence for the person. */
  readonly why: string;
}

/** A field and where it stands. */
export interface Placed {
  readonly line: number;
  readonly word: string;
}

function shown({ line, word }: Placed): string {
  return `${word} in line ${line}`;
}

/** Spreadsheets add a midnight to a day. */
const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?:[T ]00:00(?::00(?:\.0+)?)?Z?)?$/u;
const YEAR_LAST = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4})(?: 00:00(?::00)?)?$/u;
const SHORT_YEAR = /^\d{1,2}([-/.])\d{1,2}\1\d{2}$/u;
const DAY_NUMBER = /^\d{5}$/u;

function dateFrom(year: string, month: string, day: string): string | null {
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return Number.isNaN(dayOfDate(date)) ? null : date;
}

function localDate(word: string, order: DateOrder): string | null {
  const found = YEAR_LAST.exec(word);
  if (!found || order === 'ymd') return null;
  const [, first, , second, year] = found;
  return order === 'dmy' ? dateFrom(year, second, first) : dateFrom(year, first, second);
}

const ORDER_WORDS = { ymd: 'year first', dmy: 'day first', mdy: 'month first' } as const;

/** The date as year-month-day. Throws Unfit for what is none, or is none in this order. */
export function dateIn(word: string, order: DateOrder, called: string): string {
  const [, year, , month, day] = YEAR_FIRST.exec(word) ?? [];
  const date = year === undefined ? localDate(word, order) : dateFrom(year, month, day);
  if (date !== null) return date;
  const start = `${called} must be a day such as 2026-03-31, but is '${word}'`;
  if (SHORT_YEAR.test(word)) throw new Unfit(`${start}: write the year with four digits`);
  if (DAY_NUMBER.test(word))
    throw new Unfit(`${start}: a spreadsheet's day number; format the column as dates`);
  if (!YEAR_LAST.test(word)) throw new Unfit(start);
  if (order === 'ymd') throw new Unfit(`${start}: say whether the day or the month comes first`);
  throw new Unfit(
    `${start}, which is no day of the calendar with the ${ORDER_WORDS[order].split(' ')[0]} first`,
  );
}

/** The order that all local dates of the table fit, if there is just one. */
export function dateOrderOf(dates: readonly Placed[]): Proposal<DateOrder> {
  const local = dates.filter(({ word }) => YEAR_LAST.test(word));
  if (local.length === 0) return { answer: 'ymd', why: 'No date has its year last, so none can be misread.' };
  const only = (order: 'dmy' | 'mdy', other: 'dmy' | 'mdy') =>
    local.find(({ word }) => localDate(word, order) !== null && localDate(word, other) === null);
  const [dayFirst, monthFirst] = [only('dmy', 'mdy'), only('mdy', 'dmy')];
  if (dayFirst && monthFirst) {
    return {
      answer: 'ask',
      why: `The dates are of two kinds: ${shown(dayFirst)} has its day first, ${shown(monthFirst)} its month.`,
    };
  }
  if (dayFirst) return { answer: 'dmy', why: `Day first, for ${shown(dayFirst)} can be nothing else.` };
  if (monthFirst) return { answer: 'mdy', why: `Month first, for ${shown(monthFirst)} can be nothing else.` };
  return { answer: 'ask', why: `Each date can be read both ways, such as ${shown(local[0])}.` };
}

const POINT = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/iu;
const COMMA = /^[+-]?(?:\d+,?\d*|,\d+)(?:e[+-]?\d+)?$/iu;
/** 1,234 is a thousand to some and little more than one to others; 0,234 is no thousand. */
const THOUSAND = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/u;

/** Throws Unfit for what is no number from `least` to `most` in this way of writing. */
export function numberIn(
  word: string,
  decimal: Decimal,
  called: string,
  [least, most]: readonly [number, number],
): number {
  const isNumber = (decimal === 'point' ? POINT : COMMA).test(word);
  const value = isNumber ? Number(word.replace(',', '.')) : Number.NaN;
  if (value >= least && value <= most) return value;
  const like = decimal === 'point' ? 'with a point' : 'with a comma, as in the rest of the table,';
  const must = Number.isFinite(value) ? '' : ` ${like}`;
  throw new Unfit(`${called} must be a number${must} from ${least} to ${most}, but is '${word}'`);
}

/**
 * Whether numbers have a point or a comma, if the table leaves no doubt. Where the comma parts fields, numbers have a
 * point: spreadsheets that write a decimal comma part fields otherwise.
 */
export function decimalOf(numbers: readonly Placed[], delimiter: Delimiter): Proposal<Decimal> {
  const points = numbers.filter(({ word }) => word.includes('.') && POINT.test(word));
  const commas = numbers.filter(({ word }) => word.includes(',') && COMMA.test(word));
  if (commas.length === 0) {
    const isSure =
      points.length === 0 || delimiter === ',' || points.some(({ word }) => !THOUSAND.test(word));
    return isSure ? { answer: 'point', why: 'No number has a comma.' } : unsure(points[0]);
  }
  if (points.length > 0) {
    return {
      answer: 'ask',
      why: `Some numbers have a point, such as ${shown(points[0])}, others a comma, such as ${shown(commas[0])}.`,
    };
  }
  const sure = commas.find(({ word }) => !THOUSAND.test(word));
  return sure
    ? { answer: 'comma', why: `Numbers have a comma, such as ${shown(sure)}, and none has a point.` }
    : unsure(commas[0]);
}

function unsure(number: Placed): Proposal<Decimal> {
  return { answer: 'ask', why: `${shown(number)} may be over a thousand, or have three decimals.` };
}

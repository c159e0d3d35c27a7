/**
 * Units and their conversions. One month is 365.25 / 12 days, here and nowhere else.
 * Lengths are mm, areas mm2, times days or months; names carry the unit.
 */
export const DAYS_PER_MONTH = 365.25 / 12;

/** The day after which month `month` is read: floor(30.4375 m). */
export function dayOfMonth(month: number): number {
  return Math.floor(DAYS_PER_MONTH * month);
}

const DAY_MS = 86_400_000;

/** Days from 1970-01-01 to a day of the calendar, '2026-03-31'; NaN for what is none. */
export function dayOfDate(date: string): number {
  const ms = /^\d{4}-\d{2}-\d{2}$/u.test(date) ? Date.parse(date) : Number.NaN;
  // the calendar rolls a 31 February on into March
  return Number.isNaN(ms) || dateOfDay(ms / DAY_MS) !== date ? Number.NaN : ms / DAY_MS;
}

export function dateOfDay(day: number): string {
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}

/** mm per month as mm per day. */
export function perDay(perMonth: number): number {
  return perMonth / DAYS_PER_MONTH;
}

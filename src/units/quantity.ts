/**
 * Units and their conversions. One month is 365.25 / 12 days, here and nowhere else.
 * Lengths are mm, areas mm2, times days or months; names carry the unit.
 */
export const DAYS_PER_MONTH = 365.25 / 12;

/** The day after which month `month` is read: floor(30.4375 m). */
export function dayOfMonth(month: number): number {
  return Math.floor(DAYS_PER_MONTH * month);
}

/** mm per month as mm per day. */
export function perDay(perMonth: number): number {
  return perMonth / DAYS_PER_MONTH;
}

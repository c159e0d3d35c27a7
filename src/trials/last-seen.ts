/** What was seen last of a tile and of its pairs. */
import { dayOfDate, DAYS_PER_MONTH } from '../units/quantity';
import type { Log, Measured, Seen, Trial, TrialReading } from './trial';

export interface SeenOn extends Seen {
  readonly on: string;
}

/** Every two varieties of a tile, in the order in which they are listed. */
export function pairsOf(varieties: readonly string[]): (readonly [string, string])[] {
  return varieties.flatMap((a, k) => varieties.slice(k + 1).map((b) => [a, b] as const));
}

export function isOf({ a, b }: Seen, one: string, other: string): boolean {
  return (a === one && b === other) || (a === other && b === one);
}

/** Readings by date; the last of a day is the last that was noted. */
export function inTime(readings: readonly TrialReading[]): TrialReading[] {
  return [...readings].sort((a, b) => (a.on === b.on ? 0 : a.on < b.on ? -1 : 1));
}

/** What was seen of the pair when it was last looked at; empty where it never was. */
export function lastSeen({ readings }: Trial, one: string, other: string): SeenOn[] {
  const reading = inTime(readings).findLast(({ seen }) => seen.some((row) => isOf(row, one, other)));
  return (reading?.seen ?? [])
    .filter((row) => isOf(row, one, other))
    .map((row) => ({ ...row, on: reading?.on ?? '' }));
}

export function lastMeasured({ readings }: Trial, variety: string): Measured | null {
  const reading = inTime(readings).findLast(({ measured }) =>
    measured.some((row) => row.variety === variety),
  );
  return reading?.measured.find((row) => row.variety === variety) ?? null;
}

/** The day on which the tile was last read, or set where it never was. */
export function lastDay({ readings, setOn }: Trial): string {
  return readings.reduce((last, { on }) => (on > last ? on : last), setOn);
}

/** The day on which any tile was last read or set; empty for none. */
export function lastDayOf({ trials }: Log): string {
  return trials.reduce((last, trial) => (lastDay(trial) > last ? lastDay(trial) : last), '');
}

/** The variety was noted as died or lost on the tile at the last. */
export function isGone(trial: Trial, variety: string): boolean {
  const state = lastMeasured(trial, variety)?.state;
  return state === 'died' || state === 'lost';
}

export function isLiving(trial: Trial): boolean {
  return trial.varieties.some((variety) => !isGone(trial, variety));
}

/** A tile that nobody has read for half a year has left the bench, as a rule (judgement). */
const UNREAD_DAYS = 183;

/** Whole months since the last look at a tile that is no longer read; null for one that is. */
export function monthsUnread(trial: Trial, today: string): number | null {
  const days = daysBetween(lastDay(trial), today);
  return days < UNREAD_DAYS ? null : Math.floor(days / DAYS_PER_MONTH);
}

/** Whole days from one date to another. */
export function daysBetween(from: string, to: string): number {
  return dayOfDate(to) - dayOfDate(from);
}

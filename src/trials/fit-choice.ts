/**
 * Which part of a log a fit takes. An event touches what was going on in its tank on that day or in the month after
 * (judgement: 30 days for tissue to go on as before): growth between two readings, a seam up to its verdict, a cutting up
 * to the day on which it counts as alive. What is touched can be left out, or fitted by itself.
 */
import { dayOfDate } from '../units/quantity';
import { grouped } from './grouped';
import { nameKey } from './name-key';
import type { Log, TankEvent, Trial } from './trial';

export interface FitChoice {
  /** Kinds of events of which what they touched is left out. */
  readonly leaveOut: readonly TankEvent['kind'][];
  readonly split: 'none' | 'tank' | 'event';
}

export const WHOLE_LOG: FitChoice = { leaveOut: [], split: 'none' };

const AFTERMATH_DAYS = 30;

/** What was not fitted, and why. */
export interface LeftOut {
  readonly why: string;
  readonly count: number;
}

export function tallied(whys: readonly string[]): LeftOut[] {
  return [...grouped(whys, (why) => why)].map(([why, all]) => ({ why, count: all.length }));
}

/** Where a thing belongs: a part of the log, '' where it is not split; or why it is left out. */
export type Placed = { readonly part: string } | { readonly why: string };

/** Days are since the tile was set. */
export type Placing = (trial: Trial, fromDay: number, toDay: number) => Placed;

export function placing({ events }: Log, { leaveOut, split }: FitChoice): Placing {
  const byTank = grouped(events, ({ tank }) => nameKey(tank));
  const tagsOf = new Map(events.map((event) => [event, new Set(event.tags.map(nameKey))]));
  const touching = (trial: Trial, fromDay: number, toDay: number): readonly TankEvent[] => {
    const set = dayOfDate(trial.setOn);
    return (byTank.get(nameKey(trial.tank)) ?? []).filter((event) => {
      const day = dayOfDate(event.on) - set;
      const tags = tagsOf.get(event);
      if (day >= toDay || day + AFTERMATH_DAYS < fromDay) return false;
      return tags === undefined || tags.size === 0 || tags.has(nameKey(trial.tag));
    });
  };
  return (trial, fromDay, toDay) => {
    const touched = touching(trial, fromDay, toDay);
    const kind = leaveOut.find((one) => touched.some((event) => event.kind === one));
    if (kind !== undefined) return { why: `touched by an event: ${kind}` };
    if (split === 'tank') return { part: trial.tank === '' ? 'no tank noted' : trial.tank };
    if (split === 'event') return { part: touched.length > 0 ? 'touched by an event' : 'no event' };
    return { part: '' };
  };
}

/** First and last of some days; null for none. */
export interface Dates {
  readonly from: string;
  readonly to: string;
}

export function datesOf(days: readonly string[]): Dates | null {
  if (days.length === 0) return null;
  return days.reduce(({ from, to }, day) => ({ from: day < from ? day : from, to: day > to ? day : to }), {
    from: days[0],
    to: days[0],
  });
}

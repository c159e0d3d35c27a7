/**
 * How ridges rise, from a log: height against time since the ridge began, all ridges together, by the law by which the
 * model raises them, h = cap (1 - exp(-g t / cap)) (model/ridge.ts). A ridge began between the last look that showed none
 * and the first that did: the middle is taken, and where more than two months lie between it is left out.
 */
import { levelling } from '../stats/levelling';
import { DAYS_PER_MONTH } from '../units/quantity';
import { type Dates, datesOf, type FitChoice, type LeftOut, placing, tallied, WHOLE_LOG } from './fit-choice';
import { grouped } from './grouped';
import { daysBetween, inTime, isOf, pairsOf } from './last-seen';
import type { Log, Trial } from './trial';

export interface RidgeHeight {
  readonly trial: Trial;
  readonly on: string;
  readonly months: number;
  readonly heightMm: number;
}

export interface RidgeFit {
  readonly part: string;
  readonly heights: readonly RidgeHeight[];
  readonly seams: number;
  /** How fast a ridge rises at first, with its standard error; null where too few were measured. */
  readonly firstMmPerMonth: number | null;
  readonly firstError: number | null;
  /** Where it levels off; null where the heights show no end yet. */
  readonly capMm: number | null;
  readonly capError: number | null;
  /** Fitted height, mm, after so many months. */
  readonly heightAt: (months: number) => number;
  readonly dates: Dates | null;
  readonly leftOut: readonly LeftOut[];
}

interface Sorted {
  readonly part: string;
  readonly height: (RidgeHeight & { readonly seam: string }) | null;
  readonly why: string | null;
}

/** Judgement: over two months a ridge rises half a millimetre, as much as it is read to. */
const LONGEST_GAP_DAYS = 62;
const LEAST_HEIGHTS = 5;
/** A cap is told where it lies more than two of its standard errors above nothing and below twice the highest ridge. */
const BEYOND = 2;

export function ridgeFits(log: Log, choice: FitChoice = WHOLE_LOG): RidgeFit[] {
  const place = placing(log, choice);
  const sorted = log.trials.flatMap((trial) =>
    pairsOf(trial.varieties).flatMap(([a, b]) => heightsOf(trial, a, b, place)),
  );
  return [...grouped(sorted, ({ part }) => part)].map(([part, own]) => fitOf(part, own));
}

function heightsOf(trial: Trial, a: string, b: string, place: ReturnType<typeof placing>): Sorted[] {
  const looks = inTime(trial.readings).flatMap(({ on, seen }) => {
    const rows = seen.filter((row) => isOf(row, a, b) && row.saw !== 'cant-tell');
    return rows.length === 0 ? [] : [{ on, ridge: rows.find(({ saw }) => saw === 'ridge') }];
  });
  const first = looks.findIndex(({ ridge }) => ridge !== undefined);
  if (first === -1) return [];
  const noneOn = first === 0 ? trial.setOn : looks[first - 1].on;
  const [none, seen] = [daysBetween(trial.setOn, noneOn), daysBetween(trial.setOn, looks[first].on)];
  return looks.slice(first).flatMap(({ on, ridge }): Sorted[] => {
    if (ridge?.ridgeMm === undefined) return [];
    const day = daysBetween(trial.setOn, on);
    const placed = place(trial, none, day);
    if ('why' in placed) return [{ part: '', height: null, why: placed.why }];
    const { part } = placed;
    if (seen - none > LONGEST_GAP_DAYS)
      return [{ part, height: null, why: 'height of a ridge that began on a day not known' }];
    const months = (day - (none + seen) / 2) / DAYS_PER_MONTH;
    const seam = `${trial.id} ${a} ${b}`;
    return [{ part, height: { trial, on, months, heightMm: ridge.ridgeMm, seam }, why: null }];
  });
}

function fitOf(part: string, sorted: readonly Sorted[]): RidgeFit {
  const heights = sorted.flatMap(({ height }) => (height === null ? [] : [height]));
  const told = heights.length < LEAST_HEIGHTS ? null : levelling(heights.map(({ months }) => months), heights.map(({ heightMm }) => heightMm)); // prettier-ignore
  const highest = Math.max(0, ...heights.map(({ heightMm }) => heightMm));
  const hasCap = told !== null && told.most > BEYOND * told.mostError && told.most < 2 * highest;
  return {
    part,
    heights,
    seams: new Set(heights.map(({ seam }) => seam)).size,
    firstMmPerMonth: told?.first ?? null,
    firstError: told?.firstError ?? null,
    capMm: hasCap ? told.most : null,
    capError: hasCap ? told.mostError : null,
    heightAt: (months) => (told === null ? NaN : told.most * -Math.expm1(-told.rate * months)),
    dates: datesOf(heights.map(({ on }) => on)),
    leftOut: tallied(sorted.flatMap(({ why }) => (why === null ? [] : [why]))),
  };
}

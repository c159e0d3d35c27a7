/**
 * Rim rate of each variety from a log: the radius of all of it on a tile, or of the disc of its area, from reading to
 * reading (rim-rate.ts). A radius read by eye (half the mean width) and one from an area are not compared with each other.
 * Of a piece that has met a neighbour only the free sides grow, so its radius gains less than the rim: of two side by
 * side, half the mean width gains three quarters of it. How much less hangs on shapes that a log does not hold, so what
 * grew after the last look at which none of its pairs had met is left out, where a later look says that one has.
 * Known bias: of pieces that were to meet, those that grew slowly by chance stay in longer. A square's area radius gains up
 * to 13 % more at first, for a square has more rim than the disc of its area (4 s over 2 pi s / sqrt(pi)).
 */
import { area } from '../units/polygon';
import { DAYS_PER_MONTH } from '../units/quantity';
import { type Dates, datesOf, type FitChoice, type LeftOut, placing, tallied, WHOLE_LOG } from './fit-choice';
import { grouped } from './grouped';
import { daysBetween, inTime, isOf } from './last-seen';
import { type Growth, type RimRate, robustRate, weightsAbout } from './rim-rate';
import type { Log, LogVariety, Measured, Trial } from './trial';

/** From one reading of a tile to the next; days since it was set. */
export interface GrowthSpan extends Growth {
  readonly trial: Trial;
  readonly fromDay: number;
  readonly toDay: number;
  readonly fromMm: number;
  readonly toMm: number;
  /** 1 on the line, 0 for what is taken for a loss. */
  readonly weight: number;
  /** Rate less the fitted one, mm per month. */
  readonly residual: number;
}

export interface RimFit {
  readonly variety: LogVariety;
  /** Of a split log: the tank, or whether an event touched it. */
  readonly part: string;
  /** Null where no tile was measured twice before it met a neighbour. */
  readonly rate: Omit<RimRate, 'group'> | null;
  /** Why there is no rate. */
  readonly why: string | null;
  readonly spans: readonly GrowthSpan[];
  readonly tiles: number;
  readonly dates: Dates | null;
  readonly leftOut: readonly LeftOut[];
}

interface Size {
  readonly on: string;
  readonly day: number;
  readonly mm: number;
  readonly byEye: boolean;
}

type Step = Omit<GrowthSpan, 'weight' | 'residual'>;
interface Sorted {
  readonly part: string;
  /** Growth between two sizes that can be compared. */
  readonly step: Step | null;
  /** Why it is left out. */
  readonly why: string | null;
  readonly days: readonly string[];
}

const MET = 'size after it had met a neighbour';

/** In the order of the log's varieties, each with its parts. */
export function rimFits(log: Log, choice: FitChoice = WHOLE_LOG): RimFit[] {
  const place = placing(log, choice);
  const stepsOf = new Map<string, Sorted[]>(log.varieties.map(({ id }) => [id, []]));
  for (const trial of log.trials) {
    for (const id of trial.varieties) {
      const own = stepsOf.get(id);
      const { sizes, dead } = sizesOf(trial, id);
      const freeTo = lastFree(trial, id);
      if (dead > 0)
        own?.push(...Array.from({ length: dead }, () => outOf('', 'size of what had died or was lost')));
      for (const [at, to] of sizes.slice(1).entries()) {
        const from = sizes[at];
        const placed = place(trial, from.day, to.day);
        if ('why' in placed) own?.push(outOf('', placed.why));
        else if (from.byEye !== to.byEye) own?.push(outOf(placed.part, 'radius by eye against an area'));
        else {
          const step = stepOf(trial, from, to);
          const isFree = to.day <= freeTo;
          own?.push({
            part: placed.part,
            step,
            why: isFree ? null : MET,
            days: isFree ? [from.on, to.on] : [],
          });
        }
      }
    }
  }
  return log.varieties.flatMap((variety) => {
    const own = stepsOf.get(variety.id) ?? [];
    const parts = [...grouped(own, ({ part }) => part)];
    return (parts.length === 0 ? [['', own] as const] : parts).map(([part, sorted]) =>
      fitOf(variety, part, sorted),
    );
  });
}

function outOf(part: string, why: string): Sorted {
  return { part, step: null, why, days: [] };
}

function stepOf(trial: Trial, from: Size, to: Size): Step {
  const months = (to.day - from.day) / DAYS_PER_MONTH;
  return {
    trial,
    colony: trial.id,
    months,
    rate: (to.mm - from.mm) / months,
    fromDay: from.day,
    toDay: to.day,
    fromMm: from.mm,
    toMm: to.mm,
  };
}

function fitOf(variety: LogVariety, part: string, sorted: readonly Sorted[]): RimFit {
  const steps = sorted.flatMap(({ step, why }) => (step === null || why !== null ? [] : [step]));
  const met = sorted.flatMap(({ step, why }) => (step === null || why === null ? [] : [step]));
  const leftOut = tallied(sorted.flatMap(({ why }) => (why === null ? [] : [why])));
  const rate = steps.length === 0 ? null : robustRate(steps);
  const centre = rate?.rimMmPerMonth ?? 0;
  const weights = weightsAbout(steps, centre);
  return {
    variety,
    part,
    rate,
    why: rate === null ? whyNone(met, leftOut) : null,
    spans: steps.map((step, at) => ({ ...step, weight: weights[at], residual: step.rate - centre })),
    tiles: new Set(steps.map(({ colony }) => colony)).size,
    dates: datesOf(sorted.flatMap(({ days }) => days)),
    leftOut,
  };
}

function whyNone(met: readonly Step[], leftOut: readonly LeftOut[]): string {
  if (leftOut.length === 0) return 'no tile was measured twice';
  if (met.length === 0)
    return `nothing that was measured counts: ${leftOut.map(({ why }) => why).join(', ')}`;
  const gained = robustRate(met).rimMmPerMonth;
  const least = gained > 0 ? `; the rim gains at least the ${gained.toFixed(2)} mm a month of these` : '';
  return `all sizes were read after it had met a neighbour${least}`;
}

/** The last day on which no pair of the variety had met for sure; endless where the log does not say that one ever did. */
function lastFree(trial: Trial, id: string): number {
  const { layout } = trial;
  const others = trial.varieties.filter((other) => other !== id);
  if (others.length > 0 && 'gapMm' in layout && layout.gapMm === 0) return 0;
  const readings = inTime(trial.readings);
  return others.reduce((least, other) => {
    const looks = readings.flatMap(({ on, seen }) => {
      const told = seen.filter((row) => isOf(row, id, other) && row.saw !== 'cant-tell');
      return told.length === 0 ? [] : [{ on, hasMet: told.some(({ saw }) => saw !== 'not-met') }];
    });
    const met = looks.findIndex(({ hasMet }) => hasMet);
    if (met === -1) return least;
    return Math.min(least, met === 0 ? 0 : daysBetween(trial.setOn, looks[met - 1].on));
  }, Infinity);
}

/** The sizes of a variety on a tile by day, the last of each day, and how many were of dead or lost pieces. */
function sizesOf(trial: Trial, id: string): { sizes: Size[]; dead: number } {
  const byDay = new Map<string, Size>();
  let dead = 0;
  for (const { on, measured } of inTime(trial.readings)) {
    const row = measured.find(({ variety }) => variety === id);
    const mm = row && radiusOf(row);
    if (row === undefined || mm === undefined) continue;
    if (row.state === 'died' || row.state === 'lost') dead++;
    else byDay.set(on, { on, day: daysBetween(trial.setOn, on), mm, byEye: row.radiusMm !== undefined });
  }
  return { sizes: [...byDay.values()], dead };
}

/** Radius, or that of the disc of the same area. */
function radiusOf({ radiusMm, areaMm2, outline }: Measured): number | undefined {
  if (radiusMm !== undefined) return radiusMm;
  const mm2 = areaMm2 ?? (outline && area(outline));
  return mm2 === undefined ? undefined : Math.sqrt(mm2 / Math.PI);
}

/**
 * Survival of cuttings by size, from a log: each variety on each tile is a cutting of the size it was set with, and lived
 * where it was still seen alive 90 days on (judgement: losses to the cut come in the first weeks). One lost from its tile
 * is no death. Of tiles set in the last 90 days of the log only the dead could be told yet, so none of these counts. Groups by themselves, as many as there are, and then all together.
 */
import { Z95 } from '../stats/intervals';
import { logistic, type Logistic } from '../stats/logistic';
import { area } from '../units/polygon';
import { type Dates, datesOf, type FitChoice, type LeftOut, placing, tallied, WHOLE_LOG } from './fit-choice';
import { grouped } from './grouped';
import { daysBetween, inTime } from './last-seen';
import { WHY } from './survival-fit';
import { trialPlan } from './trial-plan';
import type { Log, LogVariety, Measured, Trial } from './trial';

const LIVED_DAYS = 90;
/** A size read so soon after the tile was set is the size it was set with. */
const AT_SET_DAYS = 7;
const TOO_YOUNG = `set less than ${LIVED_DAYS} days before the log's last reading`;
const CURVE_POINTS = 41;

export interface CuttingPoint {
  readonly trial: Trial;
  readonly variety: LogVariety;
  readonly areaMm2: number;
  readonly alive: boolean;
  /** The fitted chance, and alive (1 or 0) less it; null without a fit. */
  readonly chance: number | null;
  readonly residual: number | null;
}

export interface SurvivalCurvePoint {
  readonly areaMm2: number;
  readonly chance: number;
  readonly low: number;
  readonly high: number;
}

export interface LoggedSurvival {
  /** Null: all groups together. '' : no group noted. */
  readonly group: string | null;
  readonly part: string;
  readonly n: number;
  /** On log10 of the size in mm2. */
  readonly fit: Logistic | null;
  /** Why there is none. */
  readonly why: string | null;
  readonly points: readonly CuttingPoint[];
  /** The curve with its 95 % band, over the sizes there were. */
  readonly curve: readonly SurvivalCurvePoint[];
  readonly dates: Dates | null;
  readonly leftOut: readonly LeftOut[];
}

interface Sorted {
  readonly group: string;
  readonly part: string;
  readonly cutting: Pick<CuttingPoint, 'trial' | 'variety' | 'areaMm2' | 'alive'> | null;
  readonly why: string | null;
}

export function survivalOfLog(log: Log, choice: FitChoice = WHOLE_LOG): LoggedSurvival[] {
  const place = placing(log, choice);
  const varieties = new Map(log.varieties.map((variety) => [variety.id, variety]));
  const lastRead = datesOf(log.trials.flatMap(({ readings }) => readings.map(({ on }) => on)))?.to;
  const sorted = log.trials.flatMap((trial) => {
    const isYoung = lastRead !== undefined && daysBetween(trial.setOn, lastRead) < LIVED_DAYS;
    const placed = place(trial, 0, LIVED_DAYS);
    return trial.varieties.flatMap((id): Sorted[] => {
      const variety = varieties.get(id);
      if (!variety) return [];
      const { group } = variety;
      if ('why' in placed) return [{ group, part: '', cutting: null, why: placed.why }];
      const { part } = placed;
      if (isYoung) return [{ group, part, cutting: null, why: TOO_YOUNG }];
      const alive = livedOf(trial, id);
      if (typeof alive === 'string') return [{ group, part, cutting: null, why: alive }];
      const areaMm2 = sizeAtSet(log, trial, id);
      if (areaMm2 === null) return [{ group, part, cutting: null, why: 'size at setting not noted' }];
      return [{ group, part, cutting: { trial, variety, areaMm2, alive }, why: null }];
    });
  });
  return [...grouped(sorted, ({ part }) => part)].flatMap(([part, inPart]) => {
    const groups = [...grouped(inPart, ({ group }) => group)];
    return [
      ...groups.map(([group, own]) => fitOf(group, part, own)),
      ...(groups.length > 1 ? [fitOf(null, part, inPart)] : []),
    ];
  });
}

/** Whether it lived for 90 days, or why that cannot be told. */
function livedOf(trial: Trial, id: string): boolean | string {
  let lastAlive = 0;
  for (const { on, seen, measured } of inTime(trial.readings)) {
    const day = daysBetween(trial.setOn, on);
    const state = measured.find(({ variety }) => variety === id)?.state;
    if (state === 'died') {
      if (lastAlive >= LIVED_DAYS) return true;
      return day <= LIVED_DAYS ? false : `died, but not seen whether within ${LIVED_DAYS} days`;
    }
    if (state === 'lost')
      return lastAlive >= LIVED_DAYS ? true : `lost from the tile within ${LIVED_DAYS} days`;
    const isSeen =
      measured.some(({ variety }) => variety === id) || seen.some(({ a, b }) => a === id || b === id);
    if (isSeen) lastAlive = day;
  }
  return lastAlive >= LIVED_DAYS ? true : `not read ${LIVED_DAYS} days on`;
}

/** As measured at setting, else as the layout says; null where neither does. */
function sizeAtSet(log: Log, trial: Trial, id: string): number | null {
  for (const { on, measured } of inTime(trial.readings)) {
    if (daysBetween(trial.setOn, on) > AT_SET_DAYS) break;
    const row = measured.find(({ variety }) => variety === id);
    const mm2 = row && areaOf(row);
    if (mm2 !== undefined && mm2 > 0) return mm2;
  }
  if (!('plan' in trial.layout)) {
    const { pieceMm } = trial.layout;
    return pieceMm === undefined ? null : pieceMm * pieceMm;
  }
  const opened = trialPlan(log, trial);
  if ('refusals' in opened) return null;
  const [piece, another] = opened.plan.pieces.filter((one) => 'variety' in one && one.variety === id);
  if (piece === undefined || another !== undefined || 'patches' in piece) return null;
  return 'disc' in piece ? (Math.PI / 4) * piece.disc.diameterMm ** 2 : area(piece.outline);
}

function areaOf({ radiusMm, areaMm2, outline }: Measured): number | undefined {
  if (radiusMm !== undefined) return Math.PI * radiusMm * radiusMm;
  return areaMm2 ?? (outline && area(outline));
}

function fitOf(group: string | null, part: string, sorted: readonly Sorted[]): LoggedSurvival {
  const cuttings = sorted.flatMap(({ cutting }) => (cutting === null ? [] : [cutting]));
  const found =
    cuttings.length === 0
      ? 'one-answer'
      : logistic(cuttings.map(({ areaMm2, alive }) => ({ x: Math.log10(areaMm2), yes: alive })));
  const fit = typeof found === 'string' ? null : found;
  return {
    group,
    part,
    n: cuttings.length,
    fit,
    why: typeof found !== 'string' ? null : cuttings.length === 0 ? 'no cutting can be counted' : WHY[found],
    points: cuttings.map((cutting) => {
      const chance = fit && shareOf(fit.intercept + fit.slope * Math.log10(cutting.areaMm2));
      return { ...cutting, chance, residual: chance === null ? null : (cutting.alive ? 1 : 0) - chance };
    }),
    curve:
      fit === null
        ? []
        : curveOf(
            fit,
            cuttings.map(({ areaMm2 }) => Math.log10(areaMm2)),
          ),
    dates: datesOf(cuttings.map(({ trial }) => trial.setOn)),
    leftOut: tallied(sorted.flatMap(({ why }) => (why === null ? [] : [why]))),
  };
}

function shareOf(logit: number): number {
  return 1 / (1 + Math.exp(-logit));
}

function curveOf(
  { intercept, slope, interceptError, slopeError, covariance }: Logistic,
  logs: readonly number[],
): SurvivalCurvePoint[] {
  const from = logs.reduce((least, x) => Math.min(least, x), Infinity);
  const to = logs.reduce((most, x) => Math.max(most, x), -Infinity);
  return Array.from({ length: CURVE_POINTS }, (_, k) => {
    const x = from + ((to - from) * k) / (CURVE_POINTS - 1);
    const logit = intercept + slope * x;
    const variance = interceptError ** 2 + 2 * x * covariance + x * x * slopeError ** 2;
    const half = Z95 * Math.sqrt(Math.max(0, variance));
    return {
      areaMm2: 10 ** x,
      chance: shareOf(logit),
      low: shareOf(logit - half),
      high: shareOf(logit + half),
    };
  });
}

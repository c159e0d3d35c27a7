/** What a log teaches, as `npm run fit` writes it: the shapes of the plain tables' fits, with more beside. */
import type { FitChoice } from '../trials/fit-choice';
import { logFits, type LogFits } from '../trials/log-fits';
import { type PairCell, pairTable } from '../trials/pair-table';
import type { Log } from '../trials/trial';
import { alignedRows, type Line } from './aligned-rows';

export interface LogEstimates {
  readonly log: string;
  readonly trials: number;
  readonly readings: number;
  readonly pairs: readonly object[];
  readonly radius: readonly object[];
  readonly survival: readonly object[];
  readonly contest: readonly { readonly items: readonly object[] }[];
  readonly lifetimes: readonly object[];
  readonly ridge: readonly object[];
}

export function logEstimates(log: Log, choice: FitChoice): LogEstimates {
  const { rim, survival, aggression, days, ridge } = logFits(log, choice);
  return {
    log: log.name,
    trials: log.trials.length,
    readings: log.trials.reduce((sum, { readings }) => sum + readings.length, 0),
    pairs: pairTable(log).noted.map(pairOf),
    radius: rim.map(radiusOf),
    survival: survival.map(survivalOf),
    contest: aggression.map(contestOf),
    lifetimes: days.map(daysOf),
    ridge: ridge.map(ridgeOf),
  };
}

const NO_GROUP = 'no group noted';

/** A part is named where the log is split. */
function inPart(part: string): { readonly part?: string } {
  return part === '' ? {} : { part };
}

function pairOf(cell: PairCell) {
  const {
    a,
    b,
    kind,
    took,
    tried,
    undecided,
    share,
    chance,
    low,
    high,
    priorWorth,
    aOver,
    bOver,
    medianDays,
  } = cell;
  const counts = { kind, took, tried, undecided, share, chance, low, high, priorWorth };
  return { a: a.name, b: b.name, ...counts, aOver, bOver, medianDays };
}

function radiusOf({ variety, part, rate, why, tiles, dates, leftOut }: LogFits['rim'][number]) {
  const none = { n: 0, rimMmPerMonth: null, low: null, high: null, q98MmPerYear: null };
  return {
    group: variety.name,
    ...inPart(part),
    ...(rate ?? none),
    tiles,
    ...dates,
    leftOut,
    ...(why === null ? {} : { why }),
  };
}

function survivalOf({ group, part, n, fit, why, dates, leftOut }: LogFits['survival'][number]) {
  return {
    group: group === null ? 'all groups' : group === '' ? NO_GROUP : group,
    ...inPart(part),
    n,
    intercept: fit?.intercept ?? null,
    slope: fit?.slope ?? null,
    seIntercept: fit?.interceptError ?? null,
    seSlope: fit?.slopeError ?? null,
    ...dates,
    leftOut,
    ...(why === null ? {} : { why }),
  };
}

function contestOf({ part, standings, tie, n, dates, leftOut }: LogFits['aggression'][number]) {
  const items = standings.map(({ variety, ability, se, won, lost, tied, why }) => ({
    name: variety.name,
    ability,
    se,
    won,
    lost,
    tied,
    ...(why === null ? {} : { why }),
  }));
  return { ...inPart(part), items, tie, n, ...dates, leftOut };
}

function daysOf({
  kind,
  group,
  part,
  n,
  settled,
  medianDays,
  low,
  high,
  steps,
  dates,
  leftOut,
}: LogFits['days'][number]) {
  const counts = { n, settled, medianDays, low, high };
  return { group: group ?? kindWords(kind), ...inPart(part), ...counts, steps, ...dates, leftOut };
}

function ridgeOf({
  part,
  heights,
  seams,
  firstMmPerMonth,
  firstError,
  capMm,
  capError,
  dates,
  leftOut,
}: LogFits['ridge'][number]) {
  const told = { firstMmPerMonth, firstError, capMm, capError };
  return { ...inPart(part), n: heights.length, seams, ...told, ...dates, leftOut };
}

function kindWords(kind: LogFits['days'][number]['kind']): string {
  return kind === 'across' ? 'across groups' : NO_GROUP;
}

const HEADINGS = {
  pairs: 'Pairs',
  radius: 'Rim rate',
  survival: 'Survival of cuttings by size',
  contest: 'Who lies over whom',
  lifetimes: 'Days to the verdict',
  ridge: 'Height of ridges',
} as const;

/** For people: a table for each. */
export function estimateTables(estimates: LogEstimates): string {
  const contest = estimates.contest.flatMap(({ items }) => items);
  const tables = { ...estimates, contest };
  return (['pairs', 'radius', 'survival', 'contest', 'lifetimes', 'ridge'] as const)
    .map(
      (key) =>
        `${HEADINGS[key]}\n${tables[key].length === 0 ? 'nothing noted\n' : alignedRows(tables[key].map(lineOf))}`,
    )
    .join('\n');
}

/** Without the lists, which stand in the JSON. */
function lineOf(row: object): Line {
  return Object.fromEntries(Object.entries(row).filter(([, value]) => !Array.isArray(value)));
}

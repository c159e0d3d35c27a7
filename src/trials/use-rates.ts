/**
 * 'Use these rates': what a log teaches, written into a plan. Varieties of the two are matched by hand, with a
 * proposal by name. Each value that may change is told with what it rests on, and each that stays with the reason; the
 * grower takes them one by one.
 */
import { DEFAULTS } from '../model/defaults';
import { changeNote, changePair, changeSurvival, changeVariety, type Edit } from '../plan/edit';
import { pairOf, type Plan, type Variety } from '../plan/plan';
import { rounded } from '../plan/rounding';
import { engineAggressions } from './engine-aggression';
import type { FitChoice } from './fit-choice';
import { lastDayOf, pairsOf } from './last-seen';
import { type AggressionFit, aggressionFits, type LoggedStanding } from './log-contests';
import { rimFits } from './log-rim';
import { type LoggedSurvival, survivalOfLog } from './log-survival';
import { nameKey } from './name-key';
import { openWords } from './open-tries';
import { pairTable } from './pair-table';
import type { Log } from './trial';

/** Ids of the log's varieties by those of the plan's. */
export type VarietyMap = ReadonlyMap<string, string>;

export const RATE_KINDS = ['rim rate', 'aggression', 'pair', 'survival'] as const;
export type RateKind = (typeof RATE_KINDS)[number];

interface Line {
  readonly kind: RateKind;
  /** 'Fern: rim rate', 'Fern with Garnet'. */
  readonly subject: string;
  /** What the plan says now. */
  readonly was: string;
}

export interface KeptLine extends Line {
  /** Why what the plan says stays. */
  readonly why: string;
}

export interface RateLine extends Line {
  /** Tells it from the others, whatever the varieties are called. */
  readonly id: string;
  readonly becomes: string;
  /** What the new value rests on. */
  readonly why: string;
  /** It rests on few, or may as well be nothing. */
  readonly isUnsure: boolean;
  readonly put: (plan: Plan) => Plan;
}

export interface LogRates {
  /** What can be taken into the plan, and what cannot. */
  readonly lines: readonly RateLine[];
  readonly kept: readonly KeptLine[];
  /** Tiles of the log that hold one of the matched varieties. */
  readonly trials: number;
}

export interface RatesFrom {
  readonly log: Log;
  readonly map: VarietyMap;
  readonly leaveOut?: FitChoice['leaveOut'];
}

export interface UsedRates {
  /** The very same plan where nothing is taken. */
  readonly edit: Edit;
  /** 'Taken from 6 trials of My trials on 2026-11-26: 1 rim rate, 2 pairs.' */
  readonly words: string;
  /** The plan's note has no room for date and number of trials. */
  readonly isUnmarked: boolean;
}

/** Varieties of the same name, whatever its capitals and blanks. */
export function matchedByName(plan: Plan, log: Log): VarietyMap {
  const logged = new Map(log.varieties.map(({ id, name }) => [nameKey(name), id]));
  return new Map(
    plan.varieties.flatMap(({ id, name }) => {
      const found = logged.get(nameKey(name));
      return found === undefined ? [] : [[id, found] as const];
    }),
  );
}

const RIM_RANGE = [0.2, 15] as const;
const MARK = /^Rates from .* on \d{4}-\d{2}-\d{2}\.$/u;
const MOST_NOTE = 2000;

/** Below this many tiles, tries or contests a value is marked: of 4 tries the range of a share still spans half of all. */
const FEW = 5;
/** Of fewer cuttings the size at which half live hangs on one or two that died. */
const FEW_CUTTINGS = 20;
/** Of fewer contests who is the stronger is not told. */
const LEAST_CONTESTS = 3;

interface Work {
  readonly plan: Plan;
  readonly lines: RateLine[];
  readonly kept: KeptLine[];
}

export function ratesFor(plan: Plan, { log, map, leaveOut = [] }: RatesFrom): LogRates {
  const choice: FitChoice = { leaveOut, split: 'none' };
  const work: Work = { plan, lines: [], kept: [] };
  addRims(work, log, map, choice);
  addAggressions(work, log, map, choice);
  addPairs(work, log, map);
  addSurvival(work, log, map, choice);
  const logged = new Set(map.values());
  const trials = log.trials.filter(({ varieties }) => varieties.some((id) => logged.has(id))).length;
  return { lines: work.lines, kept: work.kept, trials };
}

/** The lines that were chosen written into the plan, which is marked with the day and the number of trials. */
export function withRates(
  plan: Plan,
  lines: readonly RateLine[],
  { log, trials, on }: { readonly log: Log; readonly trials: number; readonly on: string },
): UsedRates {
  const words = `Use rates of ${times(trials, 'trial')}`;
  if (lines.length === 0) return { edit: { plan, words }, words: 'Nothing was taken.', isUnmarked: false };
  const from = `${times(trials, 'trial')} of ${log.name.replaceAll(/\s+/gu, ' ')} on ${on}`;
  const changed = lines.reduce((next, { put }) => put(next), plan);
  const note = noteWith(changed, `Rates from ${from}.`);
  return {
    edit: { plan: note === null ? changed : changeNote(changed, note).plan, words },
    words: `Taken from ${from}: ${countWords(lines)}.`,
    isUnmarked: note === null,
  };
}

function countWords(lines: readonly RateLine[]): string {
  return RATE_KINDS.flatMap((kind) => {
    const count = lines.filter((line) => line.kind === kind).length;
    if (count === 0) return [];
    return kind === 'survival' ? ['survival by size'] : [times(count, kind)];
  }).join(', ');
}

/** The mark is the note's last line, in the place of an older one; null where there is no room. */
function noteWith({ note: was = '' }: Plan, mark: string): string | null {
  const lines = was.split('\n').filter((line) => !MARK.test(line));
  const note = [...(lines.join('') === '' ? [] : lines), mark].join('\n');
  return note.length <= MOST_NOTE ? note : null;
}

function matched({ varieties }: Plan, map: VarietyMap): (readonly [Variety, string])[] {
  return varieties.flatMap((variety) => {
    const id = map.get(variety.id);
    return id === undefined ? [] : [[variety, id] as const];
  });
}

function addRims(work: Work, log: Log, map: VarietyMap, choice: FitChoice): void {
  const fits = new Map(rimFits(log, choice).map((fit) => [fit.variety.id, fit]));
  for (const [variety, id] of matched(work.plan, map)) {
    const { rate, tiles, why: none } = fits.get(id) ?? { rate: null, tiles: 0, why: null };
    const line = {
      kind: 'rim rate' as const,
      subject: `${variety.name}: rim rate`,
      was: `${variety.rimMmPerMonth} mm/month`,
    };
    const keep = (why: string) => work.kept.push({ ...line, why });
    if (rate === null) keep(none ?? 'no tile was measured twice');
    else if (rate.low === null || rate.high === null)
      keep('one gain between two readings only: its doubt cannot be told');
    else if (rate.rimMmPerMonth <= 0) keep('what was measured did not grow');
    else {
      const fitted = Math.round(rate.rimMmPerMonth * 100) / 100;
      const rimMmPerMonth = within(RIM_RANGE, fitted);
      const doubt = `${rate.low.toFixed(2)} to ${rate.high.toFixed(2)} (95 %), ${times(rate.n, 'gain')} on ${times(tiles, 'tile')}`;
      const why =
        fitted === rimMmPerMonth
          ? doubt
          : `${doubt}; fitted ${fitted}, but a plan takes ${RIM_RANGE.join(' to ')}`;
      work.lines.push({
        ...line,
        id: `rim ${variety.id}`,
        becomes: `${rimMmPerMonth} mm/month`,
        why,
        isUnsure: tiles < FEW || rate.low <= 0,
        put: (plan) => changeVariety(plan, variety.id, { rimMmPerMonth }).plan,
      });
    }
  }
}

function addAggressions(work: Work, log: Log, map: VarietyMap, choice: FitChoice): void {
  const both = matched(work.plan, map);
  const ids = new Set(both.map(([, id]) => id));
  const fits = aggressionFits(log, choice);
  const placedIn = ({ standings }: AggressionFit) =>
    standings.filter((standing) => ids.has(standing.variety.id) && unplaced(standing) === null).length;
  // varieties of two fits cannot be compared: the one that says most of this plan counts
  const fit = fits.reduce((best, one) => (placedIn(one) > placedIn(best) ? one : best));
  const standings = new Map(fit.standings.map((standing) => [standing.variety.id, standing]));
  const elsewhere = new Set(
    fits.flatMap((one) => (one === fit ? [] : one.standings.map(({ variety }) => variety.id))),
  );
  const placed: { variety: Variety; ability: number; standing: LoggedStanding }[] = [];
  for (const [variety, id] of both) {
    const standing = standings.get(id);
    const why = standing
      ? unplaced(standing)
      : elsewhere.has(id)
        ? 'never met the others, nor any that did'
        : 'no ridge, lap or dead seam noted';
    if (why !== null) work.kept.push({ ...aggressionOf(variety), why });
    else if (standing && standing.ability !== null)
      placed.push({ variety, ability: standing.ability, standing });
  }
  if (placed.length === 1) {
    const [{ variety }] = placed;
    work.kept.push({
      ...aggressionOf(variety),
      why: 'only differences count, and no other can be placed',
    });
  }
  if (placed.length < 2) return;
  const centre = placed.reduce((sum, { variety }) => sum + variety.aggression, 0) / placed.length;
  const values = engineAggressions(
    placed.map(({ ability }) => ability),
    fit.tie ?? 0,
    centre,
  );
  for (const [at, { variety, standing }] of placed.entries()) {
    const aggression = Math.round(values[at] * 100) / 100;
    const { won, lost, tied } = standing;
    work.lines.push({
      ...aggressionOf(variety),
      id: `aggression ${variety.id}`,
      becomes: `${aggression}`,
      why: `over others ${won}, under ${lost}, ridges ${tied}; only differences count`,
      isUnsure: won + lost + tied < FEW,
      put: (plan) => changeVariety(plan, variety.id, { aggression }).plan,
    });
  }
}

/**
 * Why a variety's aggression is not known. One that never lay over another, or never under, has an ability of its own in a
 * fit with ridges, but how far it is from the others nothing in the log says.
 */
function unplaced({ ability, why, won, lost, tied }: LoggedStanding): string | null {
  if (ability === null) return why ?? 'it cannot be placed';
  const contests = won + lost + tied;
  if (contests < LEAST_CONTESTS) return `only ${times(contests, 'contest')}: too few to tell`;
  if (won === 0 && lost === 0) return 'only ridges: it never lay over or under another';
  if (won === 0) return `it never lay over another, of ${contests} contests: how weak it is cannot be told`;
  if (lost === 0)
    return `it never lay under another, of ${contests} contests: how strong it is cannot be told`;
  return null;
}

function aggressionOf({ name, aggression }: Variety): Line {
  return { kind: 'aggression', subject: `${name}: aggression`, was: `${aggression}` };
}

function addPairs(work: Work, log: Log, map: VarietyMap): void {
  const table = pairTable(log);
  const lastRead = lastDayOf(log);
  const both = matched(work.plan, map);
  const names = new Map(both.map(([variety]) => [variety.id, variety.name]));
  for (const [one, other] of pairsOf([...names.keys()])) {
    const [first, second] = [map.get(one), map.get(other)];
    if (first === undefined || second === undefined || first === second) continue;
    const cell = table.cell(first, second);
    const { took, tried } = cell;
    const open = openWords(cell, lastRead);
    const line = {
      kind: 'pair' as const,
      subject: `${names.get(one) ?? one} with ${names.get(other) ?? other}`,
      was: acceptanceWords(work.plan, one, other),
    };
    if (tried === 0) {
      work.kept.push({ ...line, why: open || 'never tried' });
      continue;
    }
    work.lines.push({
      ...line,
      id: `pair ${one} ${other}`,
      becomes: `took ${took} of ${tried}`,
      why: [times(tried, 'trial'), open].filter(Boolean).join(', '),
      isUnsure: tried < FEW,
      put: (plan) => changePair(plan, one, other, { acceptance: { took, tried } }).plan,
    });
  }
}

function acceptanceWords(plan: Plan, a: string, b: string): string {
  const pair = pairOf(plan, a, b);
  const said = pair?.acceptance;
  if (said === undefined) return pair?.related ?? 'unknown';
  return typeof said === 'number' ? `${rounded(100 * said)} %` : `took ${said.took} of ${said.tried}`;
}

/** That of the one group of which all matched varieties are, else of all groups together. */
function addSurvival(work: Work, log: Log, map: VarietyMap, choice: FitChoice): void {
  if (map.size === 0) return;
  const ids = new Set(map.values());
  const groups = [...new Set(log.varieties.filter(({ id }) => ids.has(id)).map(({ group }) => group))];
  const fits = survivalOfLog(log, choice);
  const own = groups.length === 1 ? fits.find(({ group }) => group === groups[0]) : undefined;
  const found = own?.fit ? own : (fits.find(({ group }) => group === null) ?? fits.at(0));
  const { atOneMm2, perDecade } = work.plan.survival ?? {
    atOneMm2: DEFAULTS.survivalAtOneMm2.value,
    perDecade: DEFAULTS.survivalPerDecade.value,
  };
  const line = {
    kind: 'survival' as const,
    subject: 'Survival of cuttings by size',
    was: halfWords(atOneMm2, perDecade),
  };
  const why = unusable(found);
  if (why !== null || !found?.fit) {
    work.kept.push({ ...line, why: why ?? 'no cutting can be counted' });
    return;
  }
  const { intercept, slope } = found.fit;
  const of = found.group === null ? 'all groups' : found.group === '' ? 'no group noted' : found.group;
  work.lines.push({
    ...line,
    id: 'survival',
    becomes: halfWords(intercept, slope),
    why: `${times(found.n, 'cutting')}, ${of}`,
    isUnsure: found.n < FEW_CUTTINGS,
    put: (plan) => changeSurvival(plan, { atOneMm2: rounded(intercept), perDecade: rounded(slope) }).plan,
  });
}

function unusable(survival: LoggedSurvival | undefined): string | null {
  if (!survival) return 'no cutting can be counted';
  if (!survival.fit) return survival.why;
  const { intercept, slope } = survival.fit;
  if (slope <= 0) return 'larger cuttings did not live more often';
  return Math.max(Math.abs(intercept), slope) > 100 ? 'too steep for a plan' : null;
}

/** The size of which half live. */
function halfWords(atOneMm2: number, perDecade: number): string {
  return `half live at ${Number((10 ** (-atOneMm2 / perDecade)).toPrecision(2))} mm2`;
}

function within([least, most]: readonly [number, number], value: number): number {
  return Math.min(most, Math.max(least, value));
}

function times(count: number, thing: string): string {
  return `${count} ${count === 1 ? thing : `${thing}s`}`;
}

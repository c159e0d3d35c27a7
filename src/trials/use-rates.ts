/**
 * 'Use these rates': what a log teaches, written into a plan. Varieties of the two are matched by hand, with a
 * proposal by name. Each value that changes is told with what it rests on, and each that stays with the reason.
 */
import { DEFAULTS } from '../model/defaults';
import { changeNote, changePair, changeSurvival, changeVariety, type Edit } from '../plan/edit';
import { pairOf, type Plan, type Variety } from '../plan/plan';
import { rounded } from '../plan/rounding';
import { engineAggressions } from './engine-aggression';
import type { FitChoice } from './fit-choice';
import { pairsOf } from './last-seen';
import { type AggressionFit, aggressionFits, type LoggedStanding } from './log-contests';
import { rimFits } from './log-rim';
import { type LoggedSurvival, survivalOfLog } from './log-survival';
import { nameKey } from './name-key';
import { pairTable } from './pair-table';
import type { Log } from './trial';

/** Ids of the log's varieties by those of the plan's. */
export type VarietyMap = ReadonlyMap<string, string>;

export interface RateLine {
  /** 'Fern: rim rate', 'Fern with Garnet'. */
  readonly subject: string;
  /** What the plan says now, and what it would say; null where it stays as it is. */
  readonly was: string;
  readonly becomes: string | null;
  /** What the new value rests on, or why the old one stays. */
  readonly why: string;
}

export interface UsedRates {
  /** The very same plan where nothing changes. */
  readonly edit: Edit;
  readonly lines: readonly RateLine[];
  /** Tiles of the log that hold one of the matched varieties. */
  readonly trials: number;
}

export interface RatesFrom {
  readonly log: Log;
  readonly map: VarietyMap;
  /** The day that the plan is marked with. */
  readonly on: string;
  readonly leaveOut?: FitChoice['leaveOut'];
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

interface Work {
  plan: Plan;
  readonly lines: RateLine[];
}

export function useRates(plan: Plan, { log, map, on, leaveOut = [] }: RatesFrom): UsedRates {
  const choice: FitChoice = { leaveOut, split: 'none' };
  const work: Work = { plan, lines: [] };
  setRims(work, log, map, choice);
  setAggressions(work, log, map, choice);
  setPairs(work, log, map);
  setSurvival(work, log, map, choice);
  const logged = new Set(map.values());
  const trials = log.trials.filter(({ varieties }) => varieties.some((id) => logged.has(id))).length;
  const changed = work.lines.filter(({ becomes }) => becomes !== null).length;
  if (changed > 0)
    mark(work, `Rates from ${times(trials, 'trial')} of ${log.name.replaceAll(/\s+/gu, ' ')} on ${on}.`);
  const words = `Use rates of ${times(trials, 'trial')}`;
  return { edit: { plan: changed > 0 ? work.plan : plan, words }, lines: work.lines, trials };
}

/** The mark becomes the note's last line, in the place of an older one; where there is no room, the note stays. */
function mark(work: Work, words: string): void {
  const was = work.plan.note ?? '';
  const lines = was.split('\n').filter((line) => !MARK.test(line));
  const note = [...(lines.join('') === '' ? [] : lines), words].join('\n');
  if (note.length <= MOST_NOTE) work.plan = changeNote(work.plan, note).plan;
  else {
    const why = 'too full to be marked with date and number of trials';
    work.lines.push({ subject: 'Note of the plan', was, becomes: null, why });
  }
}

function matched({ varieties }: Plan, map: VarietyMap): (readonly [Variety, string])[] {
  return varieties.flatMap((variety) => {
    const id = map.get(variety.id);
    return id === undefined ? [] : [[variety, id] as const];
  });
}

function setRims(work: Work, log: Log, map: VarietyMap, choice: FitChoice): void {
  const fits = new Map(rimFits(log, choice).map((fit) => [fit.variety.id, fit]));
  for (const [variety, id] of matched(work.plan, map)) {
    const { rate, tiles, why: none } = fits.get(id) ?? { rate: null, tiles: 0, why: null };
    const subject = `${variety.name}: rim rate`;
    const was = `${variety.rimMmPerMonth} mm/month`;
    const keep = (why: string) => work.lines.push({ subject, was, becomes: null, why });
    if (rate === null) keep(none ?? 'no tile was measured twice');
    else if (rate.low === null || rate.high === null)
      keep('one gain between two readings only: its doubt cannot be told');
    else if (rate.rimMmPerMonth <= 0) keep('what was measured did not grow');
    else {
      const fitted = Math.round(rate.rimMmPerMonth * 100) / 100;
      const rimMmPerMonth = within(RIM_RANGE, fitted);
      work.plan = changeVariety(work.plan, variety.id, { rimMmPerMonth }).plan;
      const doubt = `${rate.low.toFixed(2)} to ${rate.high.toFixed(2)} (95 %), ${times(rate.n, 'gain')} on ${times(tiles, 'tile')}`;
      const why =
        fitted === rimMmPerMonth
          ? doubt
          : `${doubt}; fitted ${fitted}, but a plan takes ${RIM_RANGE.join(' to ')}`;
      work.lines.push({ subject, was, becomes: `${rimMmPerMonth} mm/month`, why });
    }
  }
}

function setAggressions(work: Work, log: Log, map: VarietyMap, choice: FitChoice): void {
  const both = matched(work.plan, map);
  const ids = new Set(both.map(([, id]) => id));
  const fits = aggressionFits(log, choice);
  const placedIn = ({ standings }: AggressionFit) =>
    standings.filter(({ variety, ability }) => ids.has(variety.id) && ability !== null).length;
  // varieties of two fits cannot be compared: the one that says most of this plan counts
  const fit = fits.reduce((best, one) => (placedIn(one) > placedIn(best) ? one : best));
  const standings = new Map(fit.standings.map((standing) => [standing.variety.id, standing]));
  const elsewhere = new Set(
    fits.flatMap((one) => (one === fit ? [] : one.standings.map(({ variety }) => variety.id))),
  );
  const placed: { variety: Variety; ability: number; standing: LoggedStanding }[] = [];
  for (const [variety, id] of both) {
    const standing = standings.get(id);
    if (standing && standing.ability !== null) placed.push({ variety, ability: standing.ability, standing });
    else
      work.lines.push({
        ...aggressionOf(variety),
        becomes: null,
        why:
          standing?.why ??
          (elsewhere.has(id) ? 'never met the others, nor any that did' : 'no ridge, lap or dead seam noted'),
      });
  }
  if (placed.length === 1) {
    const [{ variety }] = placed;
    work.lines.push({
      ...aggressionOf(variety),
      becomes: null,
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
    work.plan = changeVariety(work.plan, variety.id, { aggression }).plan;
    const { won, lost, tied } = standing;
    const why = `over others ${won}, under ${lost}, ridges ${tied}; only differences count`;
    work.lines.push({ ...aggressionOf(variety), becomes: `${aggression}`, why });
  }
}

function aggressionOf({ name, aggression }: Variety): Pick<RateLine, 'subject' | 'was'> {
  return { subject: `${name}: aggression`, was: `${aggression}` };
}

function setPairs(work: Work, log: Log, map: VarietyMap): void {
  const table = pairTable(log);
  const both = matched(work.plan, map);
  const names = new Map(both.map(([variety]) => [variety.id, variety.name]));
  for (const [one, other] of pairsOf([...names.keys()])) {
    const [first, second] = [map.get(one), map.get(other)];
    if (first === undefined || second === undefined || first === second) continue;
    const { took, tried, undecided } = table.cell(first, second);
    const subject = `${names.get(one) ?? one} with ${names.get(other) ?? other}`;
    const was = acceptanceWords(work.plan, one, other);
    if (tried === 0) {
      const why = undecided > 0 ? `${times(undecided, 'trial')} not settled` : 'never tried';
      work.lines.push({ subject, was, becomes: null, why });
      continue;
    }
    work.plan = changePair(work.plan, one, other, { acceptance: { took, tried } }).plan;
    const open = undecided > 0 ? `, ${undecided} not settled` : '';
    work.lines.push({
      subject,
      was,
      becomes: `took ${took} of ${tried}`,
      why: `${times(tried, 'trial')}${open}`,
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
function setSurvival(work: Work, log: Log, map: VarietyMap, choice: FitChoice): void {
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
  const line = { subject: 'Survival of cuttings by size', was: halfWords(atOneMm2, perDecade) };
  const why = unusable(found);
  if (why !== null || !found?.fit) {
    work.lines.push({ ...line, becomes: null, why: why ?? 'no cutting can be counted' });
    return;
  }
  const { intercept, slope } = found.fit;
  work.plan = changeSurvival(work.plan, { atOneMm2: rounded(intercept), perDecade: rounded(slope) }).plan;
  const of = found.group === null ? 'all groups' : found.group === '' ? 'no group noted' : found.group;
  work.lines.push({
    ...line,
    becomes: halfWords(intercept, slope),
    why: `${times(found.n, 'cutting')}, ${of}`,
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

/**
 * Every change that a person can make to the log: a pure function that gives the new log and what Undo calls it.
 * The new log shares all that did not change; where nothing changes it is the very same log.
 */
import { nextId } from '../plan/ids';
import { inTime } from './last-seen';
import type { Log, LogVariety, TankEvent, Trial, TrialReading } from './trial';

export interface LogEdit {
  readonly log: Log;
  /** What Undo says it takes back: 'Read tile A-14'. */
  readonly words: string;
}

/** The list with the thing in the place of the one with its id, or at its end. */
function withThing<T extends { readonly id: string }>(list: readonly T[], thing: T): readonly T[] {
  return list.some(({ id }) => id === thing.id)
    ? list.map((other) => (other.id === thing.id ? thing : other))
    : [...list, thing];
}

function without<T extends { readonly id: string }>(list: readonly T[], id: string): readonly T[] {
  return list.some((thing) => thing.id === id) ? list.filter((thing) => thing.id !== id) : list;
}

export function freshVarietyId(log: Log): string {
  return nextId('v', log.varieties);
}

export function freshTrialId(log: Log): string {
  return nextId('t', log.trials);
}

export function freshReadingId(trial: Trial): string {
  return nextId('r', trial.readings);
}

export function freshEventId(log: Log): string {
  return nextId('e', log.events);
}

export function setVariety(log: Log, variety: LogVariety): LogEdit {
  return {
    log: { ...log, varieties: withThing(log.varieties, variety) },
    words: `Note variety ${variety.name}`,
  };
}

/** How many trials hold the variety: such a one is not removed. */
export function trialsWith(log: Log, variety: string): number {
  return log.trials.filter(({ varieties }) => varieties.includes(variety)).length;
}

export function removeVariety(log: Log, id: string): LogEdit {
  const varieties = trialsWith(log, id) > 0 ? log.varieties : without(log.varieties, id);
  const name = log.varieties.find((variety) => variety.id === id)?.name ?? id;
  return {
    log: varieties === log.varieties ? log : { ...log, varieties },
    words: `Remove variety ${name}`,
  };
}

export function setTrial(log: Log, trial: Trial): LogEdit {
  return { log: { ...log, trials: withThing(log.trials, trial) }, words: `Note tile ${trial.tag}` };
}

export function removeTrial(log: Log, id: string): LogEdit {
  const trials = without(log.trials, id);
  const tag = log.trials.find((trial) => trial.id === id)?.tag ?? id;
  return { log: trials === log.trials ? log : { ...log, trials }, words: `Remove tile ${tag}` };
}

/** Readings stay in the order of their dates; of one day, in that in which they came. */
export function setReading(log: Log, trialId: string, reading: TrialReading): LogEdit {
  const trial = log.trials.find(({ id }) => id === trialId);
  if (!trial) return { log, words: 'Read a tile' };
  const readings = inTime(withThing(trial.readings, reading));
  return { ...setTrial(log, { ...trial, readings }), words: `Read tile ${trial.tag} on ${reading.on}` };
}

export function removeReading(log: Log, trialId: string, readingId: string): LogEdit {
  const trial = log.trials.find(({ id }) => id === trialId);
  const readings = trial ? without(trial.readings, readingId) : [];
  if (!trial || readings === trial.readings) return { log, words: 'Remove a reading' };
  return { ...setTrial(log, { ...trial, readings }), words: `Remove a reading of tile ${trial.tag}` };
}

export function setEvent(log: Log, event: TankEvent): LogEdit {
  return { log: { ...log, events: withThing(log.events, event) }, words: `Note an event of ${event.on}` };
}

export function removeEvent(log: Log, id: string): LogEdit {
  const events = without(log.events, id);
  return { log: events === log.events ? log : { ...log, events }, words: 'Remove an event' };
}

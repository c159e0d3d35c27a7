/** A value that is known and one that a row says: what is open is filled in, what contradicts is Unfit. */
import { nextId } from '../plan/ids';
import { Unfit } from './csv-table';
import type { VarietyRow } from './log-csv-row';
import { nameKey } from './name-key';
import { type LogVariety, MAX_LOG_VARIETIES } from './trial';

type Value = string | number | undefined;

export function filled<T extends Value>(known: T, said: T | undefined, what: string): T {
  if (said === undefined || said === known) return known;
  if (known === undefined || known === '') return said;
  throw new Unfit(`${what} is '${said}', but '${known}' stands there already`);
}

/** The very same object where nothing in it differs. */
export function sameOr<T extends object>(known: T, next: T): T {
  const keys = Object.keys(next) as (keyof T)[];
  return keys.every((key) => Object.is(known[key], next[key])) ? known : next;
}

/** Without the names whose value is undefined. */
export function defined<T extends object>(thing: T): T {
  return Object.fromEntries(Object.entries(thing).filter(([, value]) => value !== undefined)) as T;
}

const NOTE_LETTERS = 2000;

/** Notes of one reading from several rows stand below each other, each once. */
export function withNote(known: string | undefined, said: string | undefined): string | undefined {
  if (said === undefined || `\n${known ?? ''}\n`.includes(`\n${said}\n`)) return known;
  if (known === undefined || known === '') return said;
  const both = `${known}\n${said}`;
  if (both.length <= NOTE_LETTERS) return both;
  throw new Unfit(`note and what stands there already have more than ${NOTE_LETTERS} letters`);
}

/** Varieties by the key of their name, in the order of the log. */
export type Roll = ReadonlyMap<string, LogVariety>;

export function rollOf(varieties: readonly LogVariety[]): Roll {
  return new Map(varieties.map((variety) => [nameKey(variety.name), variety]));
}

/** The variety of that name, new where the log has none; the roll is the very same where nothing is new. */
export function withVariety(roll: Roll, said: VarietyRow): { roll: Roll; variety: LogVariety } {
  const key = nameKey(said.name);
  const known = roll.get(key);
  if (known && Object.keys(said).length === 1) return { roll, variety: known };
  if (!known && roll.size >= MAX_LOG_VARIETIES) {
    throw new Unfit(
      `${said.name} would be one variety more than the ${MAX_LOG_VARIETIES} that a log may hold`,
    );
  }
  const before: LogVariety = known ?? { id: nextId('v', [...roll.values()]), name: said.name, group: '' };
  const next = defined({
    ...before,
    group: filled(before.group, said.group, `group of ${said.name}`),
    colour: filled(before.colour, said.colour, `colour of ${said.name}`),
    worth: filled(before.worth, said.worth, `worth of ${said.name}`),
  });
  const variety = known ? sameOr(known, next) : next;
  return { roll: variety === known ? roll : new Map(roll).set(key, variety), variety };
}

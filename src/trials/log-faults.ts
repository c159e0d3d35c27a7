/**
 * What cannot be in a log though each value has its form: the schema knows neither which varieties there are nor what
 * stands on the same tile. Place, found and allowed speak of the file; the cure is a sentence for who sees the page.
 */
import { repeats } from '../plan/ids';
import { placeInFile } from '../plan/pair-faults';
import type { Refusal } from '../plan/plan';
import { isOf } from './last-seen';
import { nameKey } from './name-key';
import type { Log, LogVariety, Measured, Seen, Trial, TrialReading } from './trial';

/** A person reads the first few. */
const MOST_FAULTS = 50;
/** Shares such as 0.1 have no exact sum. */
const ROUNDING = 1e-9;

export function logFaults(log: Log): Refusal[] {
  const faults = [
    ...repeatedIds('varieties', log.varieties),
    ...sharedNames(log.varieties),
    ...repeatedIds('trials', log.trials),
    ...sharedTags(log.trials),
    ...repeatedIds('events', log.events),
  ];
  const names = namesOf(log.varieties);
  for (const [index, trial] of log.trials.entries()) {
    if (faults.length >= MOST_FAULTS) break;
    faults.push(...faultsOf(trial, names, placeInFile('trials', index, trial.id)));
  }
  return faults.slice(0, MOST_FAULTS);
}

/** Why the trial cannot stand in the log, in the place of the one with its id or beside the others. */
export function trialFaults(log: Log, trial: Trial): Refusal[] {
  const others = log.trials.filter(({ id }) => id !== trial.id);
  return [
    ...sharedTags([...others, trial]).filter(({ where }) => where.startsWith(`trials[${others.length}]`)),
    ...faultsOf(trial, namesOf(log.varieties), placeInFile('trials', others.length, trial.id)),
  ];
}

/** Why the variety cannot stand in the log, in the place of the one with its id or beside the others. */
export function varietyFaults(log: Log, variety: LogVariety): Refusal[] {
  const others = log.varieties.filter(({ id }) => id !== variety.id);
  const own = `varieties[${others.length}]`;
  return sharedNames([...others, variety]).filter(({ where }) => where.startsWith(own));
}

type Names = ReadonlyMap<string, string>;

function namesOf(varieties: readonly LogVariety[]): Names {
  return new Map(varieties.map(({ id, name }) => [id, name]));
}

function repeatedIds(list: string, things: readonly { readonly id: string }[]): Refusal[] {
  return repeats(things).map(({ thing: { id }, index, first }) => ({
    where: placeInFile(list, index, id),
    found: `the id ${id} again, as in ${list}[${first}]`,
    allowed: 'each id once',
    cure: `Two entries of ${list} have the same id ${id} in the file: give one of them another`,
  }));
}

/** A table of pairs shows names and no ids, and so does CSV. */
function sharedNames(varieties: readonly LogVariety[]): Refusal[] {
  const unnamed = varieties.flatMap(({ id, name }, index) =>
    nameKey(name) === ''
      ? [
          {
            where: `${placeInFile('varieties', index, id)}.name`,
            found: 'no name',
            allowed: 'a name',
            cure: 'A variety has no name: give it one',
          },
        ]
      : [],
  );
  const shared = repeats(varieties.map(({ name }) => ({ id: nameKey(name) })))
    .filter(({ thing }) => thing.id !== '')
    .map(({ index, first }) => ({
      where: `${placeInFile('varieties', index, varieties[index].id)}.name`,
      found: `the name ${varieties[index].name} again, as in varieties[${first}]`,
      allowed: 'names that differ by more than capitals and blanks',
      cure: `Two varieties are named ${varieties[index].name}: give one of them another name`,
    }));
  return [...unnamed, ...shared];
}

/** Who holds such a tile could not say which of the two it is, and CSV would make one of them. */
function sharedTags(trials: readonly Trial[]): Refusal[] {
  return repeats(trials.map(({ tag, setOn }) => ({ id: `${setOn} ${nameKey(tag)}` }))).map(
    ({ index, first }) => {
      const { id, tag, setOn } = trials[index];
      return {
        where: `${placeInFile('trials', index, id)}.tag`,
        found: `the tag ${tag} on ${setOn} again, as in trials[${first}]`,
        allowed: 'a tag once among the tiles set on a day',
        cure: `Two tiles with the tag “${tag}” were set on ${setOn}: give one of them another tag`,
      };
    },
  );
}

function faultsOf(trial: Trial, names: Names, where: string): Refusal[] {
  return [
    ...tagFaults(trial, where),
    ...trial.varieties.flatMap((_, index) => crewFaults(trial, index, names, where)),
    ...repeats(trial.readings).map(({ thing, index }) => ({
      where: placeInFile(`${where}.readings`, index, thing.id),
      found: `the id ${thing.id} again`,
      allowed: 'each id once',
      cure: `Two readings of tile ${trial.tag} have the same id ${thing.id} in the file: give one of them another`,
    })),
    ...trial.readings.flatMap((reading, index) =>
      readingFaults({ trial, reading, names, where: placeInFile(`${where}.readings`, index, reading.id) }),
    ),
  ];
}

function tagFaults({ tag, setOn }: Trial, where: string): Refusal[] {
  if (nameKey(tag) !== '') return [];
  return [
    {
      where: `${where}.tag`,
      found: 'an empty tag',
      allowed: 'what stands on the tile',
      cure: `The tile set on ${setOn} has no tag: write what stands on it`,
    },
  ];
}

function crewFaults({ tag, varieties }: Trial, index: number, names: Names, where: string): Refusal[] {
  const id = varieties[index];
  const place = `${where}.varieties[${index}]`;
  if (!names.has(id)) {
    return [
      {
        where: place,
        found: `the variety ${id}, which is not there`,
        allowed: 'a variety of the log',
        cure: `On tile ${tag} is a variety “${id}” that is not in the log: add it, or choose another`,
      },
    ];
  }
  if (varieties.indexOf(id) === index) return [];
  return [
    {
      where: place,
      found: `the variety ${id} again`,
      allowed: 'each variety once',
      cure: `${names.get(id) ?? id} stands twice among the varieties of tile ${tag}: take one of the two out`,
    },
  ];
}

interface Read {
  readonly trial: Trial;
  readonly reading: TrialReading;
  readonly names: Names;
  readonly where: string;
}

function readingFaults(read: Read): Refusal[] {
  const { trial, reading, where } = read;
  const early = reading.on < trial.setOn;
  return [
    ...(early
      ? [
          {
            where: `${where}.on`,
            found: reading.on,
            allowed: `${trial.setOn}, when the tile was set, or later`,
            cure: `${subject(read)} is from before the tile was set, on ${trial.setOn}: change one of the two dates`,
          },
        ]
      : []),
    ...reading.seen.flatMap((_, index) => pairFaults(read, index)),
    ...reading.measured.flatMap((_, index) => sizeFaults(read, index)),
  ];
}

function subject({ trial, reading }: Read): string {
  return `The reading of tile ${trial.tag} on ${reading.on}`;
}

function nameIn(names: Names, id: string): string {
  return names.get(id) ?? `“${id}”`;
}

function strangers(read: Read, ids: readonly string[], where: string): Refusal[] {
  const { varieties } = read.trial;
  return [...new Set(ids)]
    .filter((id) => !varieties.includes(id))
    .map((id) => ({
      where,
      found: `the variety ${id}, which is not on the tile`,
      allowed: `one of ${varieties.join(', ')}`,
      cure: `${subject(read)} speaks of ${nameIn(read.names, id)}, which is not on the tile: add it to the tile, or take that out`,
    }));
}

function pairFaults(read: Read, index: number): Refusal[] {
  const { seen: list } = read.reading;
  const seen = list[index];
  const where = placeInFile(`${read.where}.seen`, index, `${seen.a} with ${seen.b}`);
  const pair = `${nameIn(read.names, seen.a)} with ${nameIn(read.names, seen.b)}`;
  return [
    ...strangers(read, [seen.a, seen.b], where),
    ...seenFaults(seen, list.slice(0, index)).map(({ found, allowed, cure }) => ({
      where,
      found,
      allowed,
      cure: `${subject(read)}, ${pair}: ${cure}`,
    })),
  ];
}

function sizeFaults(read: Read, index: number): Refusal[] {
  const { measured: list } = read.reading;
  const measured = list[index];
  const where = placeInFile(`${read.where}.measured`, index, measured.variety);
  const name = nameIn(read.names, measured.variety);
  const faults = strangers(read, [measured.variety], where);
  if (sizesOf(measured) > 1) {
    faults.push({
      where,
      found: `${sizesOf(measured)} sizes`,
      allowed: 'one of radiusMm, areaMm2 and outline',
      cure: `${subject(read)} gives ${name} ${sizesOf(measured)} sizes: keep the radius, the area or the outline`,
    });
  }
  if (list.findIndex(({ variety }) => variety === measured.variety) < index) {
    faults.push({
      where,
      found: `${measured.variety} a second time`,
      allowed: 'each variety once in a reading',
      cure: `${subject(read)} measures ${name} twice: keep one of the two`,
    });
  }
  return faults;
}

function sizesOf({ radiusMm, areaMm2, outline }: Measured): number {
  return [radiusMm, areaMm2, outline].filter((size) => size !== undefined).length;
}

/** The same outcome of the same pair, the same one above. */
export function isSameOutcome(one: Seen, other: Seen): boolean {
  return one.saw === other.saw && one.over === other.over && isOf(one, other.a, other.b);
}

interface SeenFault {
  readonly found: string;
  readonly allowed: string;
  readonly cure: string;
}

/** What is wrong with one outcome of a pair, after those that the same reading already holds. */
export function seenFaults(seen: Seen, before: readonly Seen[]): SeenFault[] {
  const faults: SeenFault[] = [];
  const { saw, over } = seen;
  if (over !== undefined && saw !== 'lapped' && saw !== 'dead') {
    faults.push({
      found: `${saw}, with ${over} over the other`,
      allowed: 'over beside lapped or dead only',
      cure: 'only a lapped or a dead seam has one over the other: change what was seen, or leave that out',
    });
  } else if (over !== undefined && over !== seen.a && over !== seen.b) {
    faults.push({
      found: `${over} over the other`,
      allowed: `${seen.a} or ${seen.b}`,
      cure: 'the one over the other is neither of the two: choose one of them',
    });
  }
  const pair = before.filter((other) => isOf(other, seen.a, seen.b));
  if (pair.some((other) => isSameOutcome(seen, other))) {
    faults.push({
      found: `${saw} a second time`,
      allowed: 'each outcome of a pair once in a reading',
      cure: `${saw} is said twice: make one of the two`,
    });
    return faults;
  }
  const sum = [...pair, seen].reduce((all, { share = 1 }) => all + share, 0);
  if (pair.length > 0 && sum > 1 + ROUNDING) {
    faults.push({
      found: `shares that come to ${Number(sum.toFixed(3))}`,
      allowed: 'shares of a pair that come to 1 at most; one left out is the whole',
      cure: `what was seen comes to ${Number((100 * sum).toFixed(1))} % of the seam: lower a share, or give one where it is left out`,
    });
  }
  return faults;
}

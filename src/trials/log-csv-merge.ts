/**
 * Rows of a CSV put into a log. What the log already holds is not doubled, what it leaves open is filled in, and what
 * contradicts it is a bad row: neither side is overwritten in silence. A row is taken whole or not at all.
 */
import { highestNumber } from '../plan/ids';
import { type BadRow, type Row, Unfit } from './csv-table';
import { type Roll, rollOf, withVariety } from './log-csv-fill';
import type { LogRow, TileRow } from './log-csv-row';
import { freshTile, readerKey, type Tile, tileOf, withRow } from './log-csv-tile';
import { nameKey } from './name-key';
import { type Log, MAX_EVENTS, MAX_TRIALS, type TankEvent, type Trial } from './trial';

export interface LogImport {
  readonly log: Log;
  readonly added: {
    /** By name, so that a name typed wrongly is seen. */
    readonly varieties: readonly string[];
    readonly trials: number;
    readonly readings: number;
    readonly events: number;
  };
  /** Rows that said something new, and rows of which the log already held all. */
  readonly taken: number;
  readonly known: number;
  readonly bad: readonly BadRow[];
}

/** What became of a row: true where it said something new. */
type Put = () => boolean;

export function mergeRows(rows: readonly Row<LogRow>[], into: Log): LogImport {
  const bad: BadRow[] = [];
  const news = new Map<number, boolean>();
  const attempt = (line: number, put: Put): boolean => {
    try {
      news.set(line, put());
      return true;
    } catch (error) {
      if (!(error instanceof Unfit)) throw error;
      bad.push({ line, why: error.message });
      return false;
    }
  };

  let roll = rollOf(into.varieties);
  const head = new Head(into);
  const events = new EventPile(into.events);
  for (const { line, value } of rows) {
    if (value.kind === 'event') attempt(line, () => events.put(value.event));
    if (value.kind === 'log') attempt(line, () => head.put(value.name, value.note));
    if (value.kind === 'variety') {
      attempt(line, () => {
        const before = roll;
        roll = withVariety(roll, value.variety).roll;
        return roll !== before;
      });
    }
  }

  const tileRows = rows.flatMap(({ line, value }) => (value.kind === 'tile' ? [{ line, value }] : []));
  const tiles = new Tiles(into.trials, tileRows);
  for (const { line, value } of tiles.inOrder) {
    attempt(line, () => {
      const before = roll;
      const put = tiles.put(line, value, roll);
      roll = put.roll;
      return put.isNews || roll !== before;
    });
  }
  for (const line of tiles.linesWithoutVariety()) {
    news.delete(line);
    bad.push({ line, why: 'no good row says which varieties are on this tile' });
  }

  const trials = tiles.trials();
  const readings = (all: readonly Trial[]) => all.reduce((sum, { readings }) => sum + readings.length, 0);
  const isNews = news.size > 0 && [...news.values()].includes(true);
  const varieties = [...roll.values()];
  const taken = [...news.values()].filter(Boolean).length;
  return {
    log: isNews ? { ...into, ...head.words, varieties, trials, events: events.all } : into,
    added: {
      varieties: varieties.slice(into.varieties.length).map(({ name }) => name),
      trials: trials.length - into.trials.length,
      readings: readings(trials) - readings(into.trials),
      events: events.all.length - into.events.length,
    },
    taken,
    known: news.size - taken,
    bad: bad.sort((a, b) => a.line - b.line),
  };
}

/** Name and note of the log: an empty one takes them from the table, any other keeps its own. */
class Head {
  words: Pick<Log, 'name' | 'note'>;
  readonly #isKept: boolean;
  #isNamed = false;

  constructor({ name, note, varieties, trials, events }: Log) {
    this.words = note === undefined ? { name } : { name, note };
    this.#isKept = varieties.length + trials.length + events.length > 0;
  }

  put(name: string, note: string | undefined): boolean {
    if (this.#isKept) return false;
    if (this.#isNamed) throw new Unfit('the log is named twice');
    this.#isNamed = true;
    this.words = note === undefined ? { name } : { name, note };
    return true;
  }
}

/** Events have no name: as many that are alike as the table has are in the log afterwards. */
class EventPile {
  readonly all: TankEvent[];
  #number: number;
  readonly #left = new Map<string, number>();

  constructor(events: readonly TankEvent[]) {
    this.all = [...events];
    this.#number = highestNumber('e', events);
    for (const event of events) this.#count(event, 1);
  }

  put(event: Omit<TankEvent, 'id'>): boolean {
    if (this.#count(event, -1) >= 0) return false;
    if (this.all.length >= MAX_EVENTS) throw new Unfit(`the log holds ${MAX_EVENTS} events, the most it may`);
    this.#number += 1;
    this.all.push({ id: `e${this.#number}`, ...event });
    return true;
  }

  #count({ on, tank, kind, tags, note }: Omit<TankEvent, 'id'>, by: number): number {
    const key = JSON.stringify([on, nameKey(tank), kind, tags.map(nameKey).sort(), note]);
    const left = (this.#left.get(key) ?? 0) + by;
    this.#left.set(key, left);
    return left;
  }
}

type PlacedRow = Row<TileRow>;

/** The tiles of a log by tag and date while rows are put into them. */
class Tiles {
  /** Rows that list the varieties of their tile come first: they say which names may follow. */
  readonly inOrder: readonly PlacedRow[];
  readonly #old: readonly Trial[];
  readonly #tiles: Map<string, Tile>;
  /** Keys of new tiles as the table first names them. */
  readonly #fresh = new Set<string>();
  readonly #lines = new Map<string, number[]>();
  readonly #days = new Map<string, Set<string>>();
  readonly #numbers = new Map<string, number[]>();

  constructor(trials: readonly Trial[], rows: readonly PlacedRow[]) {
    this.#old = trials;
    this.#tiles = new Map(trials.map((trial) => [tileKey(trial.tag, trial.setOn), tileOf(trial)]));
    const isListing = ({ value }: PlacedRow) => value.varieties !== undefined;
    this.inOrder = [...rows.filter(isListing), ...rows.filter((row) => !isListing(row))];
    for (const { tag, setOn } of [...trials, ...rows.map(({ value }) => value)]) {
      if (setOn === undefined) continue;
      const days = this.#days.get(nameKey(tag)) ?? new Set();
      this.#days.set(nameKey(tag), days.add(setOn));
    }
    for (const { value } of rows) {
      const days = this.#daysOf(value);
      if (days.length !== 1) continue;
      const key = tileKey(value.tag, days[0]);
      if (!this.#tiles.has(key)) this.#fresh.add(key);
      if (value.reading) this.#note(`${key} ${readerKey(value.reading)}`, value.reading.nth);
    }
  }

  put(line: number, row: TileRow, roll: Roll): { roll: Roll; isNews: boolean } {
    const days = this.#daysOf(row);
    if (days.length !== 1) {
      const which =
        days.length === 0 ? 'no good row says when it was set' : `it was set on ${days.join(' and on ')}`;
      throw new Unfit(`set_on is empty, and of tile ${row.tag} ${which}`);
    }
    const key = tileKey(row.tag, days[0]);
    const known = this.#tiles.get(key);
    if (!known && this.#tiles.size >= MAX_TRIALS) {
      throw new Unfit(`the log holds ${MAX_TRIALS} tiles, the most it may`);
    }
    const before = known ?? freshTile(row.tag, days[0]);
    const next = withRow(
      before,
      roll,
      row,
      (reading) =>
        (this.#numbers.get(`${key} ${readerKey(reading)}`) ?? []).filter((nth) => nth < reading.nth).length,
    );
    this.#tiles.set(key, next.tile);
    const lines = this.#lines.get(key) ?? [];
    lines.push(line);
    this.#lines.set(key, lines);
    return { roll: next.roll, isNews: !known || next.tile.trial !== known.trial };
  }

  linesWithoutVariety(): number[] {
    return [...this.#fresh].flatMap((key) =>
      this.#tiles.get(key)?.trial.varieties.length === 0 ? (this.#lines.get(key) ?? []) : [],
    );
  }

  /** Those that the log held, in their order, then the new ones. */
  trials(): readonly Trial[] {
    const first = highestNumber('t', this.#old) + 1;
    const fresh = [...this.#fresh]
      .flatMap((key) => this.#tiles.get(key)?.trial ?? [])
      .filter(({ varieties }) => varieties.length > 0)
      .map((trial, k) => ({ ...trial, id: `t${first + k}` }));
    const old = this.#old.map((trial) => {
      const known = this.#tiles.get(tileKey(trial.tag, trial.setOn))?.trial;
      return known?.id === trial.id ? known : trial;
    });
    return [...old, ...fresh].map(inTime);
  }

  /** The date that the row gives, or those of all tiles with its tag. */
  #daysOf({ tag, setOn }: TileRow): string[] {
    return setOn === undefined ? [...(this.#days.get(nameKey(tag)) ?? [])] : [setOn];
  }

  #note(reader: string, nth: number): void {
    const numbers = this.#numbers.get(reader) ?? [];
    if (!numbers.includes(nth)) numbers.push(nth);
    this.#numbers.set(reader, numbers);
  }
}

function tileKey(tag: string, setOn: string): string {
  return `${setOn} ${nameKey(tag)}`;
}

/** The trial with its readings by date, those of a day in the order in which they came. */
function inTime(trial: Trial): Trial {
  const isInTime = trial.readings.every(({ on }, at, all) => at === 0 || all[at - 1].on <= on);
  if (isInTime) return trial;
  return { ...trial, readings: [...trial.readings].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)) };
}

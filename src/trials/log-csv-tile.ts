/** What a row of a CSV says of a tile, put into its trial. Nothing is changed where the row does not fit. */
import { planText } from '../plan/file';
import { highestNumber } from '../plan/ids';
import { MAX_VARIETIES, type Plan } from '../plan/plan';
import { Faults, Unfit } from './csv-table';
import { grouped } from './grouped';
import { defined, filled, type Roll, sameOr, withNote, withVariety } from './log-csv-fill';
import type { LayoutRow, MeasuredRow, ReadingRow, SeenRow, TileRow, VarietyRow } from './log-csv-row';
import { isOf } from './last-seen';
import { isSameOutcome, seenFaults } from './log-faults';
import { nameKey } from './name-key';
import {
  MAX_MEASURED,
  MAX_READINGS,
  MAX_SEEN,
  type Measured,
  type Seen,
  type Trial,
  type TrialReading,
} from './trial';

/** A tile while rows are put into it. */
export interface Tile {
  readonly trial: Trial;
  /** The list of its varieties is given; else each that a row names is one of them. */
  readonly isListed: boolean;
  /** Ids of the readings that the log held before, by day and reader. */
  readonly before: ReadonlyMap<string, readonly string[]>;
  /** The highest number among ids of readings. */
  readonly lastNumber: number;
  /** Ids of readings that rows spoke of, by day, reader and number. */
  readonly ids: ReadonlyMap<string, string>;
}

/** How many readings of that day and reader the table numbers lower. */
export type Rank = (reading: ReadingRow) => number;

/** Which reading is meant, but for its number. */
export function readerKey({ on, by = '' }: Pick<TrialReading, 'on' | 'by'>): string {
  return `${on} ${nameKey(by)}`;
}

export function freshTile(tag: string, setOn: string): Tile {
  const trial: Trial = { id: 't', tag, setOn, varieties: [], layout: {}, tank: '', readings: [] };
  return { trial, isListed: false, before: new Map(), lastNumber: 0, ids: new Map() };
}

export function tileOf(trial: Trial): Tile {
  const readings = [...grouped(trial.readings, readerKey)];
  return {
    trial,
    isListed: true,
    before: new Map(readings.map(([key, own]) => [key, own.map(({ id }) => id)])),
    lastNumber: highestNumber('r', trial.readings),
    ids: new Map(),
  };
}

/** Tile and roll, the very same where the row says nothing new. Throws Unfit with all that does not fit. */
export function withRow(tile: Tile, roll: Roll, row: TileRow, rank: Rank): { tile: Tile; roll: Roll } {
  const { trial } = tile;
  const crew = new Crew(tile, roll, row.varieties);
  const faults = new Faults();
  const member = (said: VarietyRow | undefined) => said && faults.hear(() => crew.member(said));
  const variety = member(row.variety);
  member(row.neighbour === undefined ? undefined : { name: row.neighbour });
  const seen = faults.hear(() => row.reading?.seen && seenOf(row.reading.seen, crew));
  const size = row.reading?.measured;
  const measured = size && variety !== undefined ? { variety, ...size } : undefined;
  const { reading } = row;
  const tank = faults.hear(() => conditionsWith(trial, row));
  const read =
    reading &&
    faults.hear(() => {
      const notes = [row.note, ...(tank?.otherwise ?? [])];
      return withReading(tile, reading, rank(reading), { seen, measured, notes });
    });
  const layout = faults.hear(() => layoutWith(trial.layout, row.layout));
  const { readings, ...counted } = read ?? { readings: trial.readings };
  const next = defined({
    ...trial,
    varieties: crew.varieties,
    ...tank?.conditions,
    layout: faults.none(layout),
    note: reading ? trial.note : withNote(trial.note, row.note),
    readings,
  });
  const isListed = tile.isListed || row.varieties !== undefined;
  return {
    tile: sameOr(tile, { ...tile, trial: sameOr(trial, next), isListed, ...counted }),
    roll: crew.roll,
  };
}

/**
 * A tile has one tank, light, flow and temperature. Those of a later day that differ (it was moved, the water was
 * measured) are kept in the words of that day's reading.
 */
function conditionsWith(
  trial: Trial,
  { conditions, reading }: TileRow,
): { conditions: Partial<Trial>; otherwise: string[] } {
  const own: { -readonly [K in keyof TileRow['conditions']]: string } = {};
  const otherwise: string[] = [];
  for (const name of ['tank', 'light', 'flow', 'temperature'] as const) {
    const [known, said] = [trial[name], conditions[name]];
    const differs = known !== undefined && known !== '' && said !== undefined && said !== known;
    if (differs && reading) otherwise.push(`${name} ${said}`);
    else if (said !== undefined) own[name] = filled(known ?? '', said, name);
  }
  return { conditions: own, otherwise };
}

/** The varieties of a tile and of the log while one row is read. */
class Crew {
  roll: Roll;
  varieties: readonly string[];
  readonly #isListed: boolean;

  constructor({ trial, isListed }: Tile, roll: Roll, listed: readonly string[] | undefined) {
    this.roll = roll;
    this.varieties = trial.varieties;
    this.#isListed = isListed || listed !== undefined;
    if (listed === undefined) return;
    const ids = [...new Set(listed.map((name) => this.#idOf({ name })))];
    if (!isListed) this.varieties = ids;
    else if (ids.length !== this.varieties.length || !ids.every((id) => this.varieties.includes(id))) {
      throw new Unfit(`varieties lists others than tile ${trial.tag} has already`);
    }
  }

  member(said: VarietyRow): string {
    const id = this.#idOf(said);
    if (this.varieties.includes(id)) return id;
    if (this.#isListed) throw new Unfit(`${said.name} is not among the varieties of the tile`);
    if (this.varieties.length >= MAX_VARIETIES) {
      throw new Unfit(
        `${said.name} would be one variety more than the ${MAX_VARIETIES} that a tile may hold`,
      );
    }
    this.varieties = [...this.varieties, id];
    return id;
  }

  #idOf(said: VarietyRow): string {
    const { roll, variety } = withVariety(this.roll, said);
    this.roll = roll;
    return variety.id;
  }
}

function layoutWith(known: Trial['layout'], { planned, ...pieces }: LayoutRow): Trial['layout'] {
  if ('plan' in known) {
    if (Object.keys(pieces).length > 0) throw new Unfit('piece_mm and gap_mm: the tile has a plan already');
    if (planned === undefined || isSamePlan(known, planned)) return known;
    throw new Unfit('plan: the tile has another plan already');
  }
  if (planned === undefined) {
    return sameOr(
      known,
      defined({
        pieceMm: filled(known.pieceMm, pieces.pieceMm, 'piece_mm'),
        gapMm: filled(known.gapMm, pieces.gapMm, 'gap_mm'),
      }),
    );
  }
  if (Object.keys(known).length > 0) throw new Unfit('plan: the tile has piece_mm or gap_mm already');
  return planned;
}

interface Planned {
  readonly plan: unknown;
  readonly seed: string;
}

function isSamePlan(one: Planned, other: Planned): boolean {
  return one.seed === other.seed && planText(one.plan as Plan) === planText(other.plan as Plan);
}

function seenOf({ a, b, over, ...rest }: SeenRow, crew: Crew): Seen {
  const [one, other] = [crew.member({ name: a }), crew.member({ name: b })];
  if (over === undefined) return { a: one, b: other, ...rest };
  return { a: one, b: other, over: over === a ? one : other, ...rest };
}

interface Said {
  readonly seen: Seen | undefined;
  readonly measured: Measured | undefined;
  readonly notes: readonly (string | undefined)[];
}

function withReading(
  { trial, before, lastNumber, ids }: Tile,
  row: ReadingRow,
  rank: number,
  { seen, measured, notes }: Said,
): Pick<Tile, 'ids' | 'lastNumber'> & Pick<Trial, 'readings'> {
  if (row.on < trial.setOn) throw new Unfit(`on is ${row.on}, before the tile was set on ${trial.setOn}`);
  const reader = readerKey(row);
  const key = `${reader} ${row.nth}`;
  const id = ids.get(key) ?? before.get(reader)?.at(rank);
  const known = trial.readings.find((other) => other.id === id);
  if (!known && trial.readings.length >= MAX_READINGS) {
    throw new Unfit(`the tile has ${MAX_READINGS} readings already, the most that it may have`);
  }
  const start: TrialReading = known ?? {
    id: `r${lastNumber + 1}`,
    on: row.on,
    ...(row.by === undefined ? {} : { by: row.by }),
    seen: [],
    measured: [],
  };
  const next = defined({
    ...start,
    seen: seen ? withSeen(start.seen, seen, row) : start.seen,
    measured: measured ? withMeasured(start.measured, measured) : start.measured,
    photo: filled(start.photo, row.photo, 'photo'),
    note: notes.reduce(withNote, start.note),
  });
  const reading = known ? sameOr(known, next) : next;
  const readings = !known
    ? [...trial.readings, reading]
    : reading === known
      ? trial.readings
      : trial.readings.map((other) => (other === known ? reading : other));
  return {
    readings,
    lastNumber: known ? lastNumber : lastNumber + 1,
    ids: ids.has(key) ? ids : new Map(ids).set(key, reading.id),
  };
}

function withSeen(list: readonly Seen[], said: Seen, row: ReadingRow): readonly Seen[] {
  const known = list.find((other) => isSameOutcome(said, other));
  if (known) {
    const share = filled(known.share ?? 1, said.share ?? 1, 'share');
    const ridgeMm = filled(known.ridgeMm, said.ridgeMm, 'ridge_mm');
    const next = defined({
      ...known,
      share: known.share === undefined && share === 1 ? undefined : share,
      ridgeMm,
    });
    const seen = sameOr(known, next);
    return seen === known ? list : list.map((other) => (other === known ? seen : other));
  }
  if (list.length >= MAX_SEEN) throw new Unfit(`a reading may hold ${MAX_SEEN} outcomes of pairs at most`);
  const [fault] = seenFaults(said, list);
  if (fault) {
    const there = list.filter((other) => isOf(other, said.a, said.b)).map(({ saw }) => saw);
    throw new Unfit(
      `${row.seen?.a} with ${row.seen?.b} is ${said.saw}, but ${there.join(' and ')} stands there already: ${fault.cure}`,
    );
  }
  return [...list, said];
}

function withMeasured(list: readonly Measured[], said: Measured): readonly Measured[] {
  const known = list.find(({ variety }) => variety === said.variety);
  if (!known) {
    if (list.length >= MAX_MEASURED) throw new Unfit(`a reading may hold ${MAX_MEASURED} sizes at most`);
    return [...list, said];
  }
  const state = filled(known.state, said.state, 'state');
  const measured = sameOr(known, defined({ ...known, ...sizeWith(known, said), state }));
  return measured === known ? list : list.map((other) => (other === known ? measured : other));
}

function sizeWith(known: MeasuredRow, said: MeasuredRow): MeasuredRow {
  const size = ({ radiusMm, areaMm2, outline }: MeasuredRow) => defined({ radiusMm, areaMm2, outline });
  const [there, here] = [JSON.stringify(size(known)), JSON.stringify(size(said))];
  if (here === '{}' || here === there) return {};
  if (there === '{}') return size(said);
  throw new Unfit('the size is another than the one that stands there already');
}

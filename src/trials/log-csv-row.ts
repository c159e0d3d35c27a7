/**
 * One row of the log's CSV: of a tile (tag filled), an event (event filled), a variety (no tag, variety filled) or the
 * log itself (log filled). Each value is read by itself here; whether it fits the log is for trials/log-csv-merge.ts.
 */
import * as v from 'valibot';
import { checkPlan, readJson } from '../plan/file';
import { colour, id, MAX_VARIETIES, type Plan, type Xy } from '../plan/plan';
import { Unfit } from './csv-table';
import type { LogColumn } from './log-csv-columns';
import { dateIn, type DateOrder, type Decimal, numberIn } from './log-csv-forms';
import { nameKey } from './name-key';
import { EVENT_KINDS, type LogVariety, type Measured, SAW, type Saw, type TankEvent } from './trial';

/** How a table is written, by column and as its headings call them. */
export interface Cells {
  /** Empty where the table has no such column. */
  readonly word: (column: LogColumn) => string;
  readonly called: (column: LogColumn) => string;
  readonly dateOrder: DateOrder;
  readonly decimal: Decimal;
}

/** A variety by its name, and what the row says of it. */
export type VarietyRow = Partial<Omit<LogVariety, 'id' | 'name'>> & { readonly name: string };

export interface SeenRow {
  readonly a: string;
  readonly b: string;
  readonly saw: Saw;
  readonly over?: string;
  readonly share?: number;
  readonly ridgeMm?: number;
}

export type MeasuredRow = Omit<Measured, 'variety'>;

export interface LayoutRow {
  readonly pieceMm?: number;
  readonly gapMm?: number;
  readonly planned?: { readonly plan: Plan; readonly seed: string };
}

export interface ReadingRow {
  readonly on: string;
  readonly by?: string;
  /** The second reading of a day by the same person is 2. */
  readonly nth: number;
  readonly seen?: SeenRow;
  readonly measured?: MeasuredRow;
  readonly photo?: string;
}

export interface TileRow {
  readonly kind: 'tile';
  readonly tag: string;
  readonly setOn?: string;
  readonly varieties?: readonly string[];
  readonly conditions: Partial<Record<'tank' | 'light' | 'flow' | 'temperature', string>>;
  readonly layout: LayoutRow;
  /** Whose size was read, and what is said of it besides. */
  readonly variety?: VarietyRow;
  /** What stands beside it. */
  readonly neighbour?: string;
  readonly reading?: ReadingRow;
  /** Of the reading, or of the tile where there is none. */
  readonly note?: string;
}

export type LogRow =
  | TileRow
  | { readonly kind: 'variety'; readonly variety: VarietyRow }
  | { readonly kind: 'event'; readonly event: Omit<TankEvent, 'id'> }
  | { readonly kind: 'log'; readonly name: string; readonly note?: string };

export function logRowIn(cells: Cells): LogRow {
  if (cells.word('event') !== '') return { kind: 'event', event: eventIn(cells) };
  if (cells.word('tag') !== '') return tileIn(cells);
  const of = (['saw', 'with', 'on', 'set_on'] as const).find((column) => cells.word(column) !== '');
  if (of !== undefined) throw new Unfit(`${cells.called('tag')} is empty: which tile is it?`);
  const variety = varietyIn(cells);
  if (variety !== undefined) return { kind: 'variety', variety };
  const name = lineIn(cells, 'log', 200);
  if (name === undefined) throw new Unfit('it names no tile, no variety and no event');
  return { kind: 'log', name, ...given('note', textIn(cells, 'note', 2000)) };
}

/** The entry where there is a value: what is not said leaves no name behind. */
function given<K extends string, T>(key: K, value: T | undefined): { readonly [key in K]?: T } {
  return value === undefined ? {} : ({ [key]: value } as { readonly [key in K]: T });
}

function textIn(cells: Cells, column: LogColumn, most: number): string | undefined {
  const word = cells.word(column);
  if (word === '') return undefined;
  if (word.length <= most) return word;
  throw new Unfit(`${cells.called(column)} has ${word.length} letters; it may have ${most}`);
}

/** Words that stand on one line. */
function lineIn(cells: Cells, column: LogColumn, most: number): string | undefined {
  const word = textIn(cells, column, most);
  if (word?.includes('\n')) throw new Unfit(`${cells.called(column)} goes over several lines`);
  return word;
}

function needed<T>(cells: Cells, column: LogColumn, value: T | undefined): T {
  if (value === undefined) throw new Unfit(`${cells.called(column)} is empty`);
  return value;
}

function dayIn(cells: Cells, column: LogColumn): string | undefined {
  const word = cells.word(column);
  return word === '' ? undefined : dateIn(word, cells.dateOrder, cells.called(column));
}

function numberOf(cells: Cells, column: LogColumn, least: number, most: number): number | undefined {
  const word = cells.word(column);
  return word === '' ? undefined : numberIn(word, cells.decimal, cells.called(column), [least, most]);
}

/** A share, or a percentage with its sign. */
function shareIn(cells: Cells): number | undefined {
  const word = cells.word('share');
  if (!word.endsWith('%')) return numberOf(cells, 'share', 0, 1);
  const percent = numberIn(word.slice(0, -1).trim(), cells.decimal, cells.called('share'), [0, 100]);
  return percent / 100;
}

/** 'Not met yet', 'not_met' and 'not-met' are one word. */
function plain(word: string): string {
  return nameKey(word.replaceAll(/['’]/gu, '').replaceAll(/[\s_-]+/gu, ' '));
}

function choice<T extends string>(
  cells: Cells,
  column: LogColumn,
  words: readonly T[],
  others: Partial<Readonly<Record<T, readonly string[]>>>,
): T | undefined {
  const word = cells.word(column);
  if (word === '') return undefined;
  const said = plain(word);
  const meant = words.find((one) => plain(one) === said || others[one]?.includes(said));
  if (meant !== undefined) return meant;
  const allowed = words.map((one) => one.replace('-', ' ')).join(', ');
  throw new Unfit(`${cells.called(column)} must be one of ${allowed}, but is '${word}'`);
}

const OTHER_SAW = {
  fused: ['fuse', 'fusion', 'took'],
  ridge: ['wall', 'ridged', 'walled'],
  lapped: ['lap', 'overgrown'],
  dead: ['died back', 'dieback'],
  'not-met': ['not met yet', 'no contact', 'not touching'],
  'cant-tell': ['cannot tell', 'unclear', 'unsure'],
} as const;

const OTHER_STATES = { alive: ['living'], died: ['dead'], lost: ['gone', 'missing'] } as const;

/** Names between semicolons; a list whose names hold semicolons is written as in JSON. */
function listIn(cells: Cells, column: LogColumn, most: number, letters: number): string[] | undefined {
  const word = cells.word(column);
  if (word === '') return undefined;
  const called = cells.called(column);
  const names = (word.startsWith('[') ? namesInJson(word, called) : word.split(';'))
    .map((name) => name.trim())
    .filter((name) => name !== '');
  const long = names.find((name) => name.length > letters || name.includes('\n'));
  if (long !== undefined)
    throw new Unfit(`${called} holds a name of more than ${letters} letters or one line`);
  if (names.length > most) throw new Unfit(`${called} names ${names.length}; it may name ${most}`);
  return names.length === 0 ? undefined : names;
}

function namesInJson(word: string, called: string): string[] {
  const read = readJson(word);
  const names = 'value' in read ? v.safeParse(v.array(v.string()), read.value) : null;
  if (names?.success) return names.output;
  throw new Unfit(`${called} begins with [ and is no list such as ["Fern","Garnet"]`);
}

function tagsIn(cells: Cells): string[] {
  return listIn(cells, 'tag', 1000, 100) ?? [];
}

function eventIn(cells: Cells): Omit<TankEvent, 'id'> {
  return {
    on: needed(cells, 'on', dayIn(cells, 'on')),
    tank: lineIn(cells, 'tank', 200) ?? '',
    kind: needed(cells, 'event', choice(cells, 'event', EVENT_KINDS, { move: ['moved'], pest: ['pests'] })),
    tags: tagsIn(cells),
    ...given('note', textIn(cells, 'note', 2000)),
  };
}

function varietyIn(cells: Cells): VarietyRow | undefined {
  const name = lineIn(cells, 'variety', 200);
  if (name === undefined) return undefined;
  const shade = textIn(cells, 'colour', 40);
  const isColour = shade === undefined || v.is(colour, shade);
  if (!isColour) {
    throw new Unfit(`${cells.called('colour')} must be a colour such as #2f7d4f, but is '${String(shade)}'`);
  }
  return {
    name,
    ...given('group', lineIn(cells, 'group', 200)),
    ...given('colour', shade),
    ...given('worth', numberOf(cells, 'worth', 0, 1_000_000)),
  };
}

function tileIn(cells: Cells): TileRow {
  const tag = needed(cells, 'tag', lineIn(cells, 'tag', 100));
  const setOn = dayIn(cells, 'set_on');
  const variety = varietyIn(cells);
  const reading = readingIn(cells, variety?.name);
  const varieties = listIn(cells, 'varieties', MAX_VARIETIES, 200);
  if (setOn === undefined && reading === undefined && varieties === undefined) {
    throw new Unfit('it says neither when the tile was set nor when it was read');
  }
  return {
    kind: 'tile',
    tag,
    ...given('setOn', setOn),
    ...given('varieties', varieties),
    conditions: {
      ...given('tank', lineIn(cells, 'tank', 200)),
      ...given('light', lineIn(cells, 'light', 200)),
      ...given('flow', lineIn(cells, 'flow', 200)),
      ...given('temperature', lineIn(cells, 'temperature', 200)),
    },
    layout: layoutIn(cells),
    ...given('variety', variety),
    ...given('neighbour', lineIn(cells, 'with', 200)),
    ...given('reading', reading),
    ...given('note', textIn(cells, 'note', 2000)),
  };
}

function layoutIn(cells: Cells): LayoutRow {
  const pieces = {
    ...given('pieceMm', numberOf(cells, 'piece_mm', 1, 300)),
    ...given('gapMm', numberOf(cells, 'gap_mm', 0, 100)),
  };
  const word = cells.word('plan');
  if (word === '') return pieces;
  if (Object.keys(pieces).length > 0) {
    throw new Unfit(`${cells.called('plan')} and the size or the gap of pieces are given: keep one`);
  }
  const read = readJson(word);
  const opened = 'value' in read ? checkPlan(read.value) : null;
  if (opened && 'plan' in opened && opened.seed !== null) {
    return { planned: { plan: opened.plan, seed: opened.seed } };
  }
  const why = opened && 'refusals' in opened ? opened.refusals[0].cure : 'It needs the plan and its seed';
  throw new Unfit(`${cells.called('plan')} is no plan file on one line. ${why}`);
}

/** What stands in these columns was seen on a day. */
const OF_A_DAY = [
  ...(['saw', 'over', 'share', 'ridge_mm'] as const),
  ...(['radius_mm', 'area_mm2', 'outline', 'state', 'by', 'photo', 'reading'] as const),
] as const;

function readingIn(cells: Cells, variety: string | undefined): ReadingRow | undefined {
  const on = dayIn(cells, 'on');
  if (on === undefined) {
    const dated = OF_A_DAY.find((column) => cells.word(column) !== '');
    if (dated === undefined) return undefined;
    throw new Unfit(`${cells.called('on')} is empty, but ${cells.called(dated)} was read on some day`);
  }
  const photo = lineIn(cells, 'photo', 40);
  const isId = photo === undefined || v.is(id, photo);
  if (!isId) {
    throw new Unfit(`${cells.called('photo')} must be the id of a photo, but is '${String(photo)}'`);
  }
  const nth = numberOf(cells, 'reading', 1, 1000) ?? 1;
  if (!Number.isInteger(nth)) throw new Unfit(`${cells.called('reading')} must be a whole number`);
  return {
    on,
    ...given('by', lineIn(cells, 'by', 20)),
    nth,
    ...given('seen', seenIn(cells, variety)),
    ...given('measured', measuredIn(cells, variety)),
    ...given('photo', photo),
  };
}

function seenIn(cells: Cells, a: string | undefined): SeenRow | undefined {
  const saw = choice(cells, 'saw', SAW, OTHER_SAW);
  const b = lineIn(cells, 'with', 200);
  const over = lineIn(cells, 'over', 200);
  const share = shareIn(cells);
  const ridgeMm = numberOf(cells, 'ridge_mm', 0, 50);
  if (saw === undefined) {
    const left = (['with', 'over', 'share', 'ridge_mm'] as const).find((column) => cells.word(column) !== '');
    if (left === undefined) return undefined;
    throw new Unfit(`${cells.called('saw')} is empty, but ${cells.called(left)} speaks of a seam`);
  }
  return {
    a: needed(cells, 'variety', a),
    b: needed(cells, 'with', b),
    saw,
    ...given('over', over),
    ...given('share', share),
    ...given('ridgeMm', ridgeMm),
  };
}

function measuredIn(cells: Cells, variety: string | undefined): MeasuredRow | undefined {
  const sizes = {
    ...given('radiusMm', numberOf(cells, 'radius_mm', 0, 1000)),
    ...given('areaMm2', numberOf(cells, 'area_mm2', 0, 1_000_000)),
    ...given('outline', outlineIn(cells)),
  };
  if (Object.keys(sizes).length > 1) {
    const [radius, area, outline] = (['radius_mm', 'area_mm2', 'outline'] as const).map(cells.called);
    throw new Unfit(`it gives two sizes: keep one of ${radius}, ${area} and ${outline}`);
  }
  const state = choice(cells, 'state', ['alive', 'died', 'lost'] as const, OTHER_STATES);
  if (state === undefined && Object.keys(sizes).length === 0) return undefined;
  needed(cells, 'variety', variety);
  return { ...sizes, ...given('state', state) };
}

/** 'x y; x y; …' in mm, in either way of writing numbers. */
function outlineIn(cells: Cells): Xy[] | undefined {
  const word = cells.word('outline');
  if (word === '') return undefined;
  const called = cells.called('outline');
  const corners = word.split(';').map((corner): Xy => {
    const numbers = corner.trim().split(/\s+/u);
    if (numbers.length !== 2) throw new Unfit(`${called} must be corners such as 0 0; 10 0; 10 8`);
    const [x, y] = numbers.map((number) => numberIn(number, cells.decimal, called, [-1000, 1000]));
    return [x, y];
  });
  if (corners.length >= 3 && corners.length <= 2000) return corners;
  throw new Unfit(`${called} has ${corners.length} corners; it must have 3 to 2000`);
}

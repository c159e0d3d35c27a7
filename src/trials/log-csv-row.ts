/**
 * One row of the log's CSV: of a tile (tag filled), an event (event filled), a variety (no tag, variety filled) or the
 * log itself (log filled). Each value is read by itself here; whether it fits the log is for trials/log-csv-merge.ts.
 */
import * as v from 'valibot';
import { checkPlan, readJson } from '../plan/file';
import { colour, id, MAX_VARIETIES, type Plan, type Xy } from '../plan/plan';
import { Faults, Unfit } from './csv-table';
import {
  type Cells,
  cellIn,
  choice,
  dayIn,
  type Heard,
  lineIn,
  listIn,
  needed,
  numberOf,
  textIn,
} from './log-csv-cells';
import { numberIn } from './log-csv-forms';
import { nameKey } from './name-key';
import { EVENT_KINDS, type LogVariety, type Measured, SAW, type Saw, type TankEvent } from './trial';

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

/** Throws Unfit with all that is wrong. */
export function logRowIn(cells: Cells): LogRow {
  const faults = new Faults();
  return faults.none(faults.hear(() => rowIn({ ...cells, faults })));
}

function rowIn(cells: Heard): LogRow {
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

/** A share, or a percentage with its sign. */
function shareIn(cells: Heard): number | undefined {
  if (!cells.word('share').endsWith('%')) return numberOf(cells, 'share', 0, 1);
  return cellIn(
    cells,
    'share',
    (word, called) => numberIn(word.slice(0, -1).trim(), cells.decimal, called, [0, 100]) / 100,
  );
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

function tagsIn(cells: Heard): string[] {
  return listIn(cells, 'tag', 1000, 100) ?? [];
}

function eventIn(cells: Heard): Omit<TankEvent, 'id'> {
  return {
    on: needed(cells, 'on', dayIn(cells, 'on')),
    tank: lineIn(cells, 'tank', 200) ?? '',
    kind: needed(cells, 'event', choice(cells, 'event', EVENT_KINDS, { move: ['moved'], pest: ['pests'] })),
    tags: tagsIn(cells),
    ...given('note', textIn(cells, 'note', 2000)),
  };
}

function varietyIn(cells: Heard): VarietyRow | undefined {
  const name = lineIn(cells, 'variety', 200);
  if (name === undefined) return undefined;
  const shade = cellIn(cells, 'colour', (word, called) => {
    if (v.is(colour, word)) return word;
    throw new Unfit(`${called} must be a colour such as #2f7d4f, but is '${String(word)}'`);
  });
  return {
    name,
    ...given('group', lineIn(cells, 'group', 200)),
    ...given('colour', shade),
    ...given('worth', numberOf(cells, 'worth', 0, 1_000_000)),
  };
}

function tileIn(cells: Heard): TileRow {
  const tag = needed(cells, 'tag', lineIn(cells, 'tag', 100));
  const setOn = dayIn(cells, 'set_on');
  const variety = varietyIn(cells);
  const reading = readingIn(cells, variety?.name);
  const varieties = listIn(cells, 'varieties', MAX_VARIETIES, 200);
  const isBare = (['set_on', 'on', 'varieties'] as const).every((column) => cells.word(column) === '');
  if (isBare && OF_A_DAY.every((column) => cells.word(column) === '')) {
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

function layoutIn(cells: Heard): LayoutRow {
  const pieces = {
    ...given('pieceMm', numberOf(cells, 'piece_mm', 1, 300)),
    ...given('gapMm', numberOf(cells, 'gap_mm', 0, 100)),
  };
  const planned = cellIn(cells, 'plan', (word, called) => {
    if (Object.keys(pieces).length > 0) {
      throw new Unfit(`${called} and the size or the gap of pieces are given: keep one`);
    }
    const read = readJson(word);
    const opened = 'value' in read ? checkPlan(read.value) : null;
    if (opened && 'plan' in opened && opened.seed !== null) return { plan: opened.plan, seed: opened.seed };
    const why = opened && 'refusals' in opened ? opened.refusals[0].cure : 'It needs the plan and its seed';
    throw new Unfit(`${called} is no plan file on one line. ${why}`);
  });
  return planned === undefined ? pieces : { planned };
}

/** What stands in these columns was seen on a day. */
const OF_A_DAY = [
  ...(['saw', 'over', 'share', 'ridge_mm'] as const),
  ...(['radius_mm', 'area_mm2', 'outline', 'state', 'by', 'photo', 'reading'] as const),
] as const;

function readingIn(cells: Heard, variety: string | undefined): ReadingRow | undefined {
  const on = dayIn(cells, 'on');
  const dated = OF_A_DAY.find((column) => cells.word(column) !== '');
  if (cells.word('on') === '' && dated === undefined) return undefined;
  const rest = {
    ...given('by', lineIn(cells, 'by', 20)),
    nth: nthIn(cells),
    ...given(
      'seen',
      cells.faults.hear(() => seenIn(cells, variety)),
    ),
    ...given(
      'measured',
      cells.faults.hear(() => measuredIn(cells, variety)),
    ),
    ...given(
      'photo',
      cellIn(cells, 'photo', (word, called) => {
        if (v.is(id, word)) return word;
        throw new Unfit(`${called} must be the id of a photo, but is '${String(word)}'`);
      }),
    ),
  };
  if (cells.word('on') !== '' || dated === undefined) return { on: needed(cells, 'on', on), ...rest };
  throw new Unfit(`${cells.called('on')} is empty, but ${cells.called(dated)} was read on some day`);
}

function nthIn(cells: Heard): number {
  const nth = numberOf(cells, 'reading', 1, 1000) ?? 1;
  return (
    cells.faults.hear(() => {
      if (Number.isInteger(nth)) return nth;
      throw new Unfit(`${cells.called('reading')} must be a whole number`);
    }) ?? 1
  );
}

function seenIn(cells: Heard, a: string | undefined): SeenRow | undefined {
  const saw = choice(cells, 'saw', SAW, OTHER_SAW);
  const b = lineIn(cells, 'with', 200);
  const over = lineIn(cells, 'over', 200);
  const share = shareIn(cells);
  const ridgeMm = numberOf(cells, 'ridge_mm', 0, 50);
  if (cells.word('saw') === '') {
    const left = (['with', 'over', 'share', 'ridge_mm'] as const).find((column) => cells.word(column) !== '');
    if (left === undefined) return undefined;
    throw new Unfit(`${cells.called('saw')} is empty, but ${cells.called(left)} speaks of a seam`);
  }
  const pair = {
    a: needed(cells, 'variety', a),
    b: needed(cells, 'with', b),
    saw: needed(cells, 'saw', saw),
  };
  return {
    ...pair,
    ...given('over', over && aboveOf(pair, over)),
    ...given('share', share),
    ...given('ridgeMm', ridgeMm),
  };
}

/** The name of the pair that is meant. */
function aboveOf({ a, b, saw }: Pick<SeenRow, 'a' | 'b' | 'saw'>, over: string): string {
  if (saw !== 'lapped' && saw !== 'dead') {
    throw new Unfit(`over is '${over}', but only a lapped or a dead seam has one over the other`);
  }
  const above = [a, b].find((name) => nameKey(name) === nameKey(over));
  if (above === undefined) throw new Unfit(`over must be ${a} or ${b}, but is '${over}'`);
  return above;
}

function measuredIn(cells: Heard, variety: string | undefined): MeasuredRow | undefined {
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
  if ((['radius_mm', 'area_mm2', 'outline', 'state'] as const).every((column) => cells.word(column) === ''))
    return undefined;
  needed(cells, 'variety', variety);
  return { ...sizes, ...given('state', state) };
}

/** 'x y; x y; …' in mm, in either way of writing numbers. */
function outlineIn(cells: Heard): Xy[] | undefined {
  return cellIn(cells, 'outline', (word, called) => {
    const corners = word.split(';').map((corner): Xy => {
      const numbers = corner.trim().split(/\s+/u);
      if (numbers.length !== 2) throw new Unfit(`${called} must be corners such as 0 0; 10 0; 10 8`);
      const [x, y] = numbers.map((number) => numberIn(number, cells.decimal, called, [-1000, 1000]));
      return [x, y];
    });
    if (corners.length >= 3 && corners.length <= 2000) return corners;
    throw new Unfit(`${called} has ${corners.length} corners; it must have 3 to 2000`);
  });
}

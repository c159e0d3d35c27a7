/**
 * The log from CSV: what a table is taken for (preview), and its good rows put into a log. Nothing that can be read two
 * ways is guessed: the order of a date's day and month and the mark of decimals are told by the table or asked.
 */
import { type Delimiter, readSheet, type Sheet, sheetOf, Unfit, type BadRow } from './csv-table';
import { guessMapping, type LogColumn, type Mapping } from './log-csv-columns';
import {
  type DateOrder,
  dateOrderOf,
  type Decimal,
  decimalOf,
  type Placed,
  type Proposal,
} from './log-csv-forms';
import { unguarded } from './log-csv-guard';
import { type LogImport, mergeRows } from './log-csv-merge';
import type { Cells } from './log-csv-cells';
import { logRowIn } from './log-csv-row';
import { EMPTY_LOG, type Log } from './trial';

/** How a table is read. */
export interface CsvReading {
  readonly delimiter: Delimiter;
  readonly mapping: Mapping;
  readonly dateOrder: DateOrder;
  readonly decimal: Decimal;
}

export interface CsvPreview {
  readonly delimiter: Delimiter;
  readonly headings: readonly string[];
  /** The first rows as they stand. */
  readonly rows: readonly { readonly line: number; readonly fields: readonly string[] }[];
  readonly rowCount: number;
  readonly mapping: Mapping;
  /** Headings of columns that hold something and are taken for nothing. */
  readonly passedOver: readonly string[];
  /** What the headings leave open and what else is to be looked at, in sentences. */
  readonly doubts: readonly string[];
  readonly dateOrder: Proposal<DateOrder>;
  readonly decimal: Proposal<Decimal>;
}

const PREVIEW_ROWS = 8;
/** More than twenty years of 10,000 readings. */
const MOST_LETTERS = 50_000_000;

const DATES: readonly LogColumn[] = ['set_on', 'on'];
const NUMBERS: readonly LogColumn[] = [
  ...(['piece_mm', 'gap_mm', 'share', 'ridge_mm', 'radius_mm', 'area_mm2', 'worth', 'outline'] as const),
];

function sheetIn(text: string, delimiter?: Delimiter): Sheet {
  if (text.length > MOST_LETTERS) throw new Unfit('The table is far longer than any log: save it in parts');
  const sheet = sheetOf(text, delimiter);
  if (sheet.headings.length === 0)
    throw new Unfit('The table is empty: its first line must name the columns');
  return sheet;
}

/** What the table is taken for; what the person chose already stands. Throws Unfit for a text that is no table. */
export function csvPreview(
  text: string,
  chosen: Partial<Pick<CsvReading, 'delimiter' | 'mapping'>> = {},
): CsvPreview {
  const sheet = sheetIn(text, chosen.delimiter);
  const { delimiter, headings, lines } = sheet;
  const guess = guessMapping(headings);
  const isChosen = chosen.mapping?.length === headings.length;
  const mapping = isChosen && chosen.mapping ? chosen.mapping : guess.mapping;
  return {
    delimiter,
    headings,
    rows: lines.slice(0, PREVIEW_ROWS).map(({ line, fields }) => ({ line, fields })),
    rowCount: lines.length,
    mapping,
    passedOver: passedOver(sheet, mapping),
    doubts: [...(isChosen ? [] : guess.doubts), ...lostLetters(text)],
    dateOrder: dateOrderOf(wordsOf(sheet, mapping, DATES)),
    decimal: decimalOf(
      wordsOf(sheet, mapping, NUMBERS).flatMap(({ line, word }) =>
        word.split(/[\s;%]+/u).map((one) => ({ line, word: one })),
      ),
      delimiter,
    ),
  };
}

function passedOver({ headings, lines }: Sheet, mapping: Mapping): string[] {
  return headings.flatMap((heading, at) => {
    const isLeft = mapping[at] === null && lines.some(({ fields }) => (fields[at] ?? '').trim() !== '');
    return isLeft ? [heading || `column ${at + 1}`] : [];
  });
}

/** What a page reads as UTF-8 though it is written otherwise has such a mark for each letter with an accent. */
function lostLetters(text: string): string[] {
  return text.includes('\uFFFD')
    ? ['Some letters cannot be read (\uFFFD): save the table as CSV in UTF-8']
    : [];
}

/** All that stands in the columns, without empty fields. */
function wordsOf({ lines }: Sheet, mapping: Mapping, columns: readonly LogColumn[]): Placed[] {
  const places = mapping.flatMap((column, at) => (column !== null && columns.includes(column) ? [at] : []));
  return lines.flatMap(({ line, fields }) =>
    places
      .map((at) => ({ line, word: unguarded((fields[at] ?? '').trim()) }))
      .filter(({ word }) => word !== ''),
  );
}

/** The good rows put into the log, the bad ones with their lines and reasons. Throws Unfit where no row could be good. */
export function readLogCsv(text: string, reading: CsvReading, into: Log): LogImport {
  const sheet = sheetIn(text, reading.delimiter);
  const { mapping } = reading;
  if (mapping.length !== sheet.headings.length) {
    throw new Unfit(`The table has ${sheet.headings.length} columns, and ${mapping.length} are told apart`);
  }
  const places = new Map<LogColumn, number>();
  for (const [at, column] of mapping.entries()) {
    if (column === null) continue;
    const other = places.get(column);
    if (other !== undefined) {
      const names = `“${sheet.headings[other]}” and “${sheet.headings[at]}”`;
      throw new Unfit(`Two columns are taken for ${column}, ${names}: choose one`);
    }
    places.set(column, at);
  }
  if (!(['tag', 'event', 'variety', 'log'] as const).some((column) => places.has(column))) {
    throw new Unfit('No column is taken for tag, event or variety: say which one names the tile');
  }
  const { rows, bad } = readSheet(sheet, (fields) => logRowIn(cellsOf(fields, sheet, places, reading)));
  const merged = mergeRows(rows, into);
  return { ...merged, bad: [...bad, ...merged.bad].sort((a, b) => a.line - b.line) };
}

function cellsOf(
  fields: readonly string[],
  { headings }: Sheet,
  places: ReadonlyMap<LogColumn, number>,
  { dateOrder, decimal }: CsvReading,
): Cells {
  return {
    word: (column) => unguarded(fields[places.get(column) ?? -1] ?? ''),
    called: (column) => {
      const heading = headings[places.get(column) ?? -1] ?? column;
      return heading.toLowerCase() === column ? column : `${column} (${heading})`;
    },
    dateOrder,
    decimal,
  };
}

/**
 * A log out of a table with nobody to ask: throws Unfit for what could be read two ways, with the option that says it.
 */
export function logOfCsv(
  text: string,
  options: Partial<Pick<CsvReading, 'dateOrder' | 'decimal'>> = {},
): { readonly log: Log; readonly bad: readonly BadRow[] } {
  const preview = csvPreview(text);
  const [doubt] = guessMapping(preview.headings).doubts;
  if (doubt !== undefined) throw new Unfit(`${doubt}: rename the others`);
  const dateOrder = options.dateOrder ?? preview.dateOrder.answer;
  if (dateOrder === 'ask') throw new Unfit(`${preview.dateOrder.why} Say --dates dmy or --dates mdy`);
  const decimal = options.decimal ?? preview.decimal.answer;
  if (decimal === 'ask') throw new Unfit(`${preview.decimal.why} Say --decimal point or --decimal comma`);
  const { delimiter, mapping } = preview;
  return readLogCsv(text, { delimiter, mapping, dateOrder, decimal }, EMPTY_LOG);
}

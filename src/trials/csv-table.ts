/**
 * A table with a heading line, out of CSV text as a spreadsheet or a hand writes it: commas, semicolons or tabs, any line
 * ends, quotes. Nothing is guessed in silence: what does not fit is a bad row, with its line and the reason.
 */
import Papa from 'papaparse';

export interface BadRow {
  /** From 1 on, the heading line counted. */
  readonly line: number;
  readonly why: string;
}

/** A row's fields by heading, trimmed; headings are in small letters. */
export type Fields = Readonly<Record<string, string>>;

export interface Row<T> {
  readonly line: number;
  readonly value: T;
}

export interface Table<T> {
  readonly rows: readonly Row<T>[];
  readonly bad: readonly BadRow[];
}

/** Why a row is bad, or a whole table, thrown by who reads it and told in `Table.bad`. */
export class Unfit extends Error {}

/** All that is wrong with a row, so that it need not be mended fault by fault. */
export class Faults {
  readonly #found = new Set<string>();

  /** What is read, or undefined where it is unfit: that is kept. One without words was heard before. */
  hear<T>(read: () => T): T | undefined {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof Unfit)) throw error;
      if (error.message !== '') this.#found.add(error.message);
      return undefined;
    }
  }

  /** Throws Unfit with all that was heard; else the value, which is there then. */
  none<T>(value: T | undefined): T {
    if (this.#found.size === 0 && value !== undefined) return value;
    throw new Unfit([...this.#found].join('; '));
  }
}

export interface Line {
  readonly line: number;
  readonly fields: readonly string[];
  readonly broken: boolean;
  /** Where quotes join several lines into one row: these lines as rows of their own. */
  readonly apart: readonly Line[];
}

export const DELIMITERS = [',', ';', '\t'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** A table before anyone has said what its columns mean. */
export interface Sheet {
  readonly delimiter: Delimiter;
  /** Trimmed, else as they are written. */
  readonly headings: readonly string[];
  /** The rows below the headings, but for empty ones. */
  readonly lines: readonly Line[];
}

/** Of a row whose quotes do not pair, at most so many further lines are asked whether it goes on there. */
const MOST_LINES_OF_A_ROW = 40;

function parsed(text: string, delimiter: string): Papa.ParseResult<string[]> {
  return Papa.parse<string[]>(text, { delimiter, newline: '\n' });
}

function quoteFault({ errors }: Papa.ParseResult<string[]>): Papa.ParseError | undefined {
  return errors.find(({ type }) => type === 'Quotes');
}

/** Of the headings, the mark that parts most of them. */
function delimiterOf(heading: string): Delimiter {
  const parts = DELIMITERS.map((mark) => ({ mark, count: heading.split(mark).length }));
  return parts.reduce((best, next) => (next.count > best.count ? next : best)).mark;
}

function hasWords({ fields }: Line): boolean {
  return fields.some((field) => field.trim() !== '');
}

function lineAlone(text: string, line: number, delimiter: string): Line {
  const result = parsed(text, delimiter);
  return { line, fields: result.data[0] ?? [], broken: quoteFault(result) !== undefined, apart: [] };
}

function linesOf(plain: string, delimiter: string): Line[] {
  const onTheirOwn = plain.split('\n');
  const whole = parsed(plain, delimiter);
  if (quoteFault(whole)) return mended(onTheirOwn, delimiter);
  let next = 0;
  return whole.data.map((fields) => {
    const from = next;
    next += fields.join('').split('\n').length;
    return joined(onTheirOwn, from, next, fields, delimiter);
  });
}

function joined(
  onTheirOwn: readonly string[],
  from: number,
  to: number,
  fields: readonly string[],
  delimiter: string,
): Line {
  const alone = () => onTheirOwn.slice(from, to).map((one, at) => lineAlone(one, from + at + 1, delimiter));
  return { line: from + 1, fields, broken: false, apart: to - from > 1 ? alone() : [] };
}

/**
 * A field in quotes may hold line ends, and one quote too many would swallow all that follows. So where quotes do not
 * pair each line stands alone, unless its own quotes pair with those of the next lines that have any.
 */
function mended(onTheirOwn: readonly string[], delimiter: string): Line[] {
  const lines: Line[] = [];
  for (let from = 0; from < onTheirOwn.length;) {
    const alone = lineAlone(onTheirOwn[from], from + 1, delimiter);
    const row = alone.broken ? rowFrom(onTheirOwn, from, delimiter) : null;
    lines.push(row ?? alone);
    from += row?.apart.length ?? 1;
  }
  return lines;
}

function rowFrom(onTheirOwn: readonly string[], from: number, delimiter: string): Line | null {
  const end = Math.min(onTheirOwn.length, from + MOST_LINES_OF_A_ROW);
  for (let to = from + 1; to < end; to++) {
    if (!onTheirOwn[to].includes('"')) continue;
    const result = parsed(onTheirOwn.slice(from, to + 1).join('\n'), delimiter);
    const fault = quoteFault(result);
    if (!fault) return joined(onTheirOwn, from, to + 1, result.data[0], delimiter);
    if (fault.code !== 'MissingQuotes') return null;
  }
  return null;
}

/** The mark between fields is taken from the heading line where none is given. */
export function sheetOf(text: string, delimiter?: Delimiter): Sheet {
  const plain = text.replace(/^\uFEFF/u, '').replaceAll(/\r\n?/gu, '\n');
  // A spreadsheet may save empty lines on top.
  const mark = delimiter ?? delimiterOf(plain.split('\n', 100).find((line) => line.trim() !== '') ?? '');
  const [heading, ...lines] = linesOf(plain, mark).filter(hasWords);
  const headings = (heading?.fields ?? []).map((field) => field.trim());
  return { delimiter: mark, headings, lines };
}

/** The rows, each made by `read` of its trimmed fields, one for each heading; it throws Unfit for a bad one. */
export function readSheet<T>({ headings, lines }: Sheet, read: (fields: readonly string[]) => T): Table<T> {
  const readLine = ({ line, fields, broken }: Line): Row<T> | BadRow => {
    try {
      if (broken) throw new Unfit('its quote marks do not pair');
      if (fields.slice(headings.length).some((field) => field.trim() !== '')) {
        throw new Unfit(
          `it has ${fields.length} fields for ${headings.length} columns: quote a field that holds the mark between fields`,
        );
      }
      return { line, value: read(headings.map((_, at) => (fields[at] ?? '').trim())) };
    } catch (error) {
      if (!(error instanceof Unfit)) throw error;
      return { line, why: error.message };
    }
  };
  const all = lines.flatMap((line) => {
    // Two stray quotes look like one field over many lines. Such a row stands if it is good, unless a whole good row lies
    // amid its lines; its first and last line hold the rest of a good row, so they prove nothing, nor do lines of a note
    // that have fewer fields than the table.
    const joinedRow = readLine(line);
    const apart = line.apart.map(readLine);
    const telling =
      'value' in joinedRow
        ? apart.slice(1, -1).filter((_, at) => line.apart[at + 1].fields.length >= headings.length)
        : apart;
    return telling.some((row) => 'value' in row) ? apart : [joinedRow];
  });
  return { rows: all.filter((row) => 'value' in row), bad: all.filter((row) => 'why' in row) };
}

/**
 * The table's rows by the names of their columns. Empty lines are passed over, other columns too. `needed`: for each,
 * the headings that will do. Throws Unfit where one is missing.
 */
export function readTable<T>(
  text: string,
  needed: readonly (readonly string[])[],
  read: (fields: Fields) => T,
): Table<T> {
  const sheet = sheetOf(text);
  const headings = sheet.headings.map((heading) => heading.toLowerCase());
  const missing = needed.filter((names) => !names.some((name) => headings.includes(name)));
  if (missing.length > 0) {
    const columns = missing.map((names) => names.join(' or ')).join(', ');
    throw new Unfit(`The first line must name the columns; there is none named ${columns}`);
  }
  const twice = needed.flat().find((name) => headings.indexOf(name) !== headings.lastIndexOf(name));
  if (twice !== undefined) throw new Unfit(`Two columns are named ${twice}: rename one`);
  return readSheet(sheet, (fields) =>
    read(Object.fromEntries(headings.map((name, at) => [name, fields[at]]))),
  );
}

export function wordIn(fields: Fields, name: string): string {
  const word = fields[name] ?? '';
  if (word === '') throw new Unfit(`${name} is empty`);
  return word;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/iu;

export function numberIn(fields: Fields, name: string): number {
  const word = wordIn(fields, name);
  const value = NUMBER.test(word) ? Number(word) : Number.NaN;
  if (Number.isFinite(value)) return value;
  throw new Unfit(`${name} must be a number with a point, such as 12.5, but is '${word}'`);
}

export function aboveZeroIn(fields: Fields, name: string): number {
  const value = numberIn(fields, name);
  if (value > 0) return value;
  throw new Unfit(`${name} must be above 0, but is ${value}`);
}

const YES = ['1', 'yes', 'true'];
const NO = ['0', 'no', 'false'];

export function yesIn(fields: Fields, name: string): boolean {
  const word = wordIn(fields, name).toLowerCase();
  if (YES.includes(word)) return true;
  if (NO.includes(word)) return false;
  throw new Unfit(`${name} must be 1 or 0, yes or no, true or false, but is '${word}'`);
}

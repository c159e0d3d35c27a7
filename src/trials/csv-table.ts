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

interface Line {
  readonly line: number;
  readonly fields: readonly string[];
  readonly broken: boolean;
  /** Where quotes join several lines into one row: these lines as rows of their own. */
  readonly apart: readonly Line[];
}

function parsed(text: string, delimiter: string): Papa.ParseResult<string[]> {
  return Papa.parse<string[]>(text, { delimiter, newline: '\n' });
}

/** Of the headings, the mark that parts most of them. */
function delimiterOf(heading: string): string {
  const parts = [',', ';', '\t'].map((mark) => ({ mark, count: heading.split(mark).length }));
  return parts.reduce((best, next) => (next.count > best.count ? next : best)).mark;
}

function hasWords({ fields }: Line): boolean {
  return fields.some((field) => field.trim() !== '');
}

function lineAlone(text: string, line: number, delimiter: string): Line {
  const { data, errors } = parsed(text, delimiter);
  return { line, fields: data[0] ?? [], broken: errors.some(({ type }) => type === 'Quotes'), apart: [] };
}

/** A field in quotes may hold line ends. One quote too many would swallow what follows, so then each line stands alone. */
function linesOf(text: string): Line[] {
  const plain = text.replace(/^\uFEFF/u, '').replace(/\r\n?/gu, '\n');
  const onTheirOwn = plain.split('\n');
  const delimiter = delimiterOf(onTheirOwn[0]);
  const alone = (from: number, to: number) =>
    onTheirOwn.slice(from, to).map((one, at) => lineAlone(one, from + at + 1, delimiter));
  const whole = parsed(plain, delimiter);
  if (whole.errors.some(({ type }) => type === 'Quotes')) return alone(0, onTheirOwn.length);
  let next = 0;
  return whole.data.map((fields) => {
    const from = next;
    next += fields.join('').split('\n').length;
    return { line: from + 1, fields, broken: false, apart: next - from > 1 ? alone(from, next) : [] };
  });
}

/**
 * The table's rows, each made by `read`, which throws Unfit for a bad one. Empty lines are passed over, other columns
 * too. `needed`: for each, the headings that will do. Throws Unfit where one is missing.
 */
export function readTable<T>(
  text: string,
  needed: readonly (readonly string[])[],
  read: (fields: Fields) => T,
): Table<T> {
  const lines = linesOf(text).filter(hasWords);
  const headings = (lines[0]?.fields ?? []).map((heading) => heading.trim().toLowerCase());
  const missing = needed.filter((names) => !names.some((name) => headings.includes(name)));
  if (missing.length > 0) {
    const columns = missing.map((names) => names.join(' or ')).join(', ');
    throw new Unfit(`The first line must name the columns; there is none named ${columns}`);
  }
  const twice = needed.flat().find((name) => headings.indexOf(name) !== headings.lastIndexOf(name));
  if (twice !== undefined) throw new Unfit(`Two columns are named ${twice}: rename one`);
  const readLine = ({ line, fields, broken }: Line): Row<T> | BadRow => {
    try {
      if (broken) throw new Unfit('its quote marks do not pair');
      if (fields.length > headings.length) {
        throw new Unfit(
          `it has ${fields.length} fields for ${headings.length} columns: quote a field that holds the mark between fields`,
        );
      }
      const named = headings.map((heading, at) => [heading, (fields[at] ?? '').trim()] as const);
      return { line, value: read(Object.fromEntries(named)) };
    } catch (error) {
      if (!(error instanceof Unfit)) throw error;
      return { line, why: error.message };
    }
  };
  const all = lines.slice(1).flatMap((line) => {
    // Two stray quotes look like one field over many lines. Such a row stands if it is good, unless a whole good row lies
    // amid its lines; its first and last line hold the rest of a good row, so they prove nothing.
    const joined = readLine(line);
    const apart = line.apart.map(readLine);
    const telling = 'value' in joined ? apart.slice(1, -1) : apart;
    return telling.some((row) => 'value' in row) ? apart : [joined];
  });
  return { rows: all.filter((row) => 'value' in row), bad: all.filter((row) => 'why' in row) };
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

/** The cells of one row of the log's CSV: each kind of value read, and all that is unfit heard. */
import * as v from 'valibot';
import { readJson } from '../plan/file';
import { type Faults, Unfit } from './csv-table';
import type { LogColumn } from './log-csv-columns';
import { dateIn, type DateOrder, type Decimal, numberIn } from './log-csv-forms';
import { nameKey } from './name-key';

/** How a table is written, by column and as its headings call them. */
export interface Cells {
  /** Empty where the table has no such column. */
  readonly word: (column: LogColumn) => string;
  readonly called: (column: LogColumn) => string;
  readonly dateOrder: DateOrder;
  readonly decimal: Decimal;
}

/** A row under way: what does not fit is heard, and the other cells are read all the same. */
export type Heard = Cells & { readonly faults: Faults };

/** What stands in a cell; undefined for an empty one, and for one that is unfit, which is heard. */
export function cellIn<T>(
  cells: Heard,
  column: LogColumn,
  read: (word: string, called: string) => T,
): T | undefined {
  const word = cells.word(column);
  return word === '' ? undefined : cells.faults.hear(() => read(word, cells.called(column)));
}

function textOf(word: string, called: string, most: number): string {
  if (word.length <= most) return word;
  throw new Unfit(`${called} has ${word.length} letters; it may have ${most}`);
}

export function textIn(cells: Heard, column: LogColumn, most: number): string | undefined {
  return cellIn(cells, column, (word, called) => textOf(word, called, most));
}

/** Words that stand on one line. */
export function lineIn(cells: Heard, column: LogColumn, most: number): string | undefined {
  return cellIn(cells, column, (word, called) => {
    if (word.includes('\n')) throw new Unfit(`${called} goes over several lines`);
    return textOf(word, called, most);
  });
}

/** Throws for a value that is not there; an unfit one was heard already, and stops its part of the row too. */
export function needed<T>(cells: Heard, column: LogColumn, value: T | undefined): T {
  if (value !== undefined) return value;
  throw cells.word(column) === '' ? new Unfit(`${cells.called(column)} is empty`) : new Unfit();
}

export function dayIn(cells: Heard, column: LogColumn): string | undefined {
  return cellIn(cells, column, (word, called) => dateIn(word, cells.dateOrder, called));
}

export function numberOf(cells: Heard, column: LogColumn, least: number, most: number): number | undefined {
  return cellIn(cells, column, (word, called) => numberIn(word, cells.decimal, called, [least, most]));
}

/** 'Not met yet', 'not_met' and 'not-met' are one word. */
function plain(word: string): string {
  return nameKey(word.replaceAll(/['’]/gu, '').replaceAll(/[\s_-]+/gu, ' '));
}

export function choice<T extends string>(
  cells: Heard,
  column: LogColumn,
  words: readonly T[],
  others: Partial<Readonly<Record<T, readonly string[]>>>,
): T | undefined {
  return cellIn(cells, column, (word, called) => {
    const said = plain(word);
    const meant = words.find((one) => plain(one) === said || others[one]?.includes(said));
    if (meant !== undefined) return meant;
    const allowed = words.map((one) => one.replace('-', ' ')).join(', ');
    throw new Unfit(`${called} must be one of ${allowed}, but is '${word}'`);
  });
}

/** Names between semicolons; a list whose names hold semicolons is written as in JSON. */
export function listIn(cells: Heard, column: LogColumn, most: number, letters: number): string[] | undefined {
  return cellIn(cells, column, (word, called) => {
    const names = (word.startsWith('[') ? namesInJson(word, called) : word.split(';'))
      .map((name) => name.trim())
      .filter((name) => name !== '');
    const long = names.find((name) => name.length > letters || name.includes('\n'));
    if (long !== undefined)
      throw new Unfit(`${called} holds a name of more than ${letters} letters or one line`);
    if (names.length > most) throw new Unfit(`${called} names ${names.length}; it may name ${most}`);
    return names.length === 0 ? undefined : names;
  });
}

function namesInJson(word: string, called: string): string[] {
  const read = readJson(word);
  const names = 'value' in read ? v.safeParse(v.array(v.string()), read.value) : null;
  if (names?.success) return names.output;
  throw new Unfit(`${called} begins with [ and is no list such as ["Fern","Garnet"]`);
}

/** All that was ever noted, a row for each thing seen or measured: the table of readings, its order and its filter. */
import { pruned } from '../../plan/edit';
import { setReading, type LogEdit } from '../../trials/log';
import type { Log, Measured, Saw, Seen, Trial, TrialReading } from '../../trials/trial';
import { STATE_WORDS, seenWords } from '../logged/words';

export interface ReadingRow {
  readonly key: string;
  readonly trial: Trial;
  readonly reading: TrialReading;
  /** One of the two; null for a reading that notes neither. */
  readonly seen: Seen | null;
  readonly measured: Measured | null;
  /** In what the reading lists. */
  readonly at: number;
}

export const COLUMNS = ['on', 'tag', 'what', 'said', 'share', 'ridge', 'size', 'by', 'note'] as const;
export type Column = (typeof COLUMNS)[number];

export const COLUMN_WORDS: Readonly<Record<Column, string>> = {
  on: 'read on',
  tag: 'tile',
  what: 'of what',
  said: 'seen',
  share: 'share %',
  ridge: 'ridge mm',
  size: 'radius mm',
  by: 'by',
  note: 'note',
};

export function rowsOf({ trials }: Log): ReadingRow[] {
  return trials.flatMap((trial) =>
    trial.readings.flatMap((reading): ReadingRow[] => {
      const key = `${trial.id} ${reading.id}`;
      const seen = reading.seen.map((row, at) => ({
        key: `${key} s${at}`,
        trial,
        reading,
        seen: row,
        measured: null,
        at,
      }));
      const measured = reading.measured.map((row, at) => ({
        key: `${key} m${at}`,
        trial,
        reading,
        seen: null,
        measured: row,
        at,
      }));
      const all = [...seen, ...measured];
      return all.length > 0 ? all : [{ key, trial, reading, seen: null, measured: null, at: 0 }];
    }),
  );
}

/** What a column holds of a row, as it is sorted and looked through. */
function cellOf(row: ReadingRow, column: Column, nameOf: (id: string) => string): string | number {
  const { trial, reading, seen, measured } = row;
  switch (column) {
    case 'on':
      return reading.on;
    case 'tag':
      return trial.tag;
    case 'what':
      if (seen) return `${nameOf(seen.a)} and ${nameOf(seen.b)}`;
      return measured ? nameOf(measured.variety) : '';
    case 'said':
      if (seen) return seenWords({ a: seen.a, b: seen.b, saw: seen.saw, over: seen.over }, nameOf);
      return measured?.state === undefined ? '' : STATE_WORDS[measured.state];
    case 'share':
      return seen?.share === undefined ? -1 : 100 * seen.share;
    case 'ridge':
      return seen?.ridgeMm ?? -1;
    case 'size':
      return measured?.radiusMm ?? -1;
    case 'by':
      return reading.by ?? '';
    case 'note':
      return reading.note ?? '';
  }
}

export interface Wanted {
  readonly words: string;
  readonly saw: Saw | 'all';
  readonly by: Column;
  readonly isDown: boolean;
}

const byText = new Intl.Collator('en', { numeric: true }).compare;

export function rowsFor(
  rows: readonly ReadingRow[],
  { words, saw, by, isDown }: Wanted,
  nameOf: (id: string) => string,
): ReadingRow[] {
  const wanted = words.toLowerCase().split(/\s+/u).filter(Boolean);
  const found = rows.filter((row) => {
    if (saw !== 'all' && row.seen?.saw !== saw) return false;
    if (wanted.length === 0) return true;
    const text = [row.trial.tank, ...COLUMNS.map((column) => cellOf(row, column, nameOf))]
      .join(' ')
      .toLowerCase();
    return wanted.every((word) => text.includes(word));
  });
  // each cell is made once, not at every comparison
  const keyed = found.map((row) => ({ row, cell: cellOf(row, by, nameOf) }));
  const sign = isDown ? -1 : 1;
  keyed.sort((a, b) => {
    const order =
      typeof a.cell === 'number' && typeof b.cell === 'number'
        ? a.cell - b.cell
        : by === 'on'
          ? Number(a.cell > b.cell) - Number(a.cell < b.cell)
          : byText(String(a.cell), String(b.cell));
    return sign * order;
  });
  return keyed.map(({ row }) => row);
}

function withRow<T extends object>(list: readonly T[], at: number, change: Partial<T>): T[] {
  return list.map((row, k) => (k === at ? pruned({ ...row, ...change }) : row));
}

export function seenEdit(log: Log, { trial, reading, at }: ReadingRow, change: Partial<Seen>): LogEdit {
  return setReading(log, trial.id, { ...reading, seen: withRow(reading.seen, at, change) });
}

export function measuredEdit(
  log: Log,
  { trial, reading, at }: ReadingRow,
  change: Partial<Measured>,
): LogEdit {
  return setReading(log, trial.id, { ...reading, measured: withRow(reading.measured, at, change) });
}

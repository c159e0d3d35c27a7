/** What the page says of a table: its columns, and what came of it. */
import { describe, expect, it } from 'vitest';
import { logOfCsv } from '../../../src/trials/log-csv';
import type { LogColumn } from '../../../src/trials/log-csv-columns';
import { COLUMNS_HELP } from '../../../src/view/trials/csv-column-help';
import { addedWords, takenWords } from '../../../src/view/trials/taken-words';

type Cells = Partial<Record<LogColumn, string>>;

/** What a row needs besides the column itself. */
function rowWith(column: LogColumn, example: string): Cells {
  if (column === 'log') return { log: example };
  if (column === 'event') return { event: example, on: '2026-04-02' };
  const tile: Cells = { tag: 'A-14', set_on: '2026-01-05', on: '2026-04-02', variety: 'Fern' };
  const saw = column === 'ridge_mm' ? 'ridge' : 'lapped';
  return { ...tile, with: 'Garnet', saw, [column]: example };
}

describe('help with columns', () => {
  it('gives examples that a table may hold', () => {
    for (const { column, words, example } of COLUMNS_HELP) {
      expect(words).not.toBe('');
      if (example === '') continue;
      const row = rowWith(column, example);
      const line = Object.values(row)
        .map((word) => `"${word}"`)
        .join(',');
      const { bad } = logOfCsv(`${Object.keys(row).join(',')}\n${line}\n`);
      expect(bad, column).toEqual([]);
    }
  });

  it('calls no two columns the same', () => {
    expect(new Set(COLUMNS_HELP.map(({ name }) => name)).size).toBe(COLUMNS_HELP.length);
  });
});

describe('what came of a table', () => {
  const added = { varieties: ['Fern'], trials: 2, readings: 1, events: 0 };

  it('is told with what was left out', () => {
    const bad = [{ line: 4, why: 'tag is empty' }];
    expect(addedWords({ added })).toBe('1 reading, 2 new tiles, 1 new variety');
    expect(takenWords('t.csv', { added, known: 0, bad })).toBe(
      't.csv: 1 reading, 2 new tiles, 1 new variety taken in; 1 row left out.',
    );
    expect(takenWords('t.csv', { added: { ...added, events: 3 }, known: 2, bad: [] })).toBe(
      't.csv: 1 reading, 2 new tiles, 1 new variety, 3 events taken in; 2 rows were in the log already; no row left out.',
    );
  });
});

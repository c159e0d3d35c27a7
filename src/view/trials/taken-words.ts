/** What came of a spreadsheet, in words. */
import type { LogImport } from '../../trials/log-csv-merge';

const count = (many: number, one: string, more: string): string => `${many} ${many === 1 ? one : more}`;

export function addedWords({ added }: Pick<LogImport, 'added'>): string {
  return [
    count(added.readings, 'reading', 'readings'),
    count(added.trials, 'new tile', 'new tiles'),
    count(added.varieties.length, 'new variety', 'new varieties'),
    ...(added.events > 0 ? [count(added.events, 'event', 'events')] : []),
  ].join(', ');
}

export function leftOutWords({ bad }: Pick<LogImport, 'bad'>): string {
  return bad.length === 0 ? 'no row left out' : `${count(bad.length, 'row', 'rows')} left out`;
}

/** 'table.csv: 3 readings, 2 new tiles, 1 new variety taken in; 2 rows left out.' */
export function takenWords(name: string, read: Pick<LogImport, 'added' | 'known' | 'bad'>): string {
  const known = read.known > 0 ? `; ${count(read.known, 'row was', 'rows were')} in the log already` : '';
  return `${name}: ${addedWords(read)} taken in${known}; ${leftOutWords(read)}.`;
}

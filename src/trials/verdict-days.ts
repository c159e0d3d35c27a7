/** Days to the verdict of a seam, with trials still undecided counted as such, for each group. */
import { kaplanMeier, type Lifetime, medianDays, type Step } from '../stats/lifetimes';
import { aboveZeroIn, type Fields, readTable, type Table, wordIn, yesIn } from './csv-table';
import { grouped } from './grouped';

export interface Verdict extends Lifetime {
  readonly group: string;
}

export interface VerdictDays {
  readonly group: string;
  readonly n: number;
  /** Null where less than half have settled. */
  readonly medianDays: number | null;
  readonly steps: readonly Step[];
}

function verdictIn(fields: Fields): Verdict {
  return {
    group: wordIn(fields, 'group'),
    days: aboveZeroIn(fields, 'days'),
    settled: yesIn(fields, 'settled'),
  };
}

export function verdictTable(text: string): Table<Verdict> {
  return readTable(text, [['group'], ['days'], ['settled']], verdictIn);
}

export function verdictDays(verdicts: readonly Verdict[]): VerdictDays[] {
  return [...grouped(verdicts, ({ group }) => group)].map(([group, own]) => {
    const steps = kaplanMeier(own);
    return { group, n: own.length, medianDays: medianDays(steps), steps };
  });
}

/**
 * `npm run --silent fit -- TABLE.csv --kind …`: statistics of a plain table, without a page. Bad rows go to stderr with
 * line and reason, good ones are used. Exit 2 for bad options, a bad table or no good row, 1 for a fault of ours.
 */
import { readFileSync } from 'node:fs';
import { contestFit, contestTable } from '../trials/contest-fit';
import { type Table, Unfit } from '../trials/csv-table';
import { radiusTable } from '../trials/radius-table';
import { rimRates } from '../trials/rim-rate';
import { survivalFits, survivalTable } from '../trials/survival-fit';
import { verdictDays, verdictTable } from '../trials/verdict-days';
import { alignedRows, type Line } from './aligned-rows';
import { fitOptions, type FitOptions, type Kind } from './fit-options';
import { asCommand, Refused } from './words';

interface Told {
  readonly json: unknown;
  /** The same for people. */
  readonly lines: readonly Line[];
  readonly after: string;
}

function goodRows<T>({ rows, bad }: Table<T>): T[] {
  for (const { line, why } of bad) process.stderr.write(`line ${line}: ${why}; the row is left out\n`);
  if (rows.length === 0) throw new Refused('No row of the table is good: nothing was fitted.');
  return rows.map(({ value }) => value);
}

const FITS: Record<Kind, (text: string) => Told> = {
  radius: (text) => {
    const rates = rimRates(goodRows(radiusTable(text)));
    if (rates.length === 0) throw new Refused('No colony was read on two days: there is no growth to fit.');
    return { json: rates, lines: rates.map((rate) => ({ ...rate })), after: '' };
  },
  survival: (text) => {
    const fits = survivalFits(goodRows(survivalTable(text)));
    return { json: fits, lines: fits.map((fit) => ({ ...fit })), after: '' };
  },
  contest: (text) => {
    const fit = contestFit(goodRows(contestTable(text)));
    const after = `tie parameter ${fit.tie === null ? 'cannot be told' : fit.tie.toFixed(4)}\n`;
    return { json: fit, lines: fit.items.map((item) => ({ ...item })), after };
  },
  lifetimes: (text) => {
    const curves = verdictDays(goodRows(verdictTable(text)));
    const lines = curves.flatMap(({ group, n, medianDays, steps }): Line[] =>
      steps.length === 0
        ? [{ group, n, medianDays, why: 'none has settled' }]
        : steps.map((step) => ({ group, n, medianDays, ...step })),
    );
    return { json: curves, lines, after: '' };
  },
};

function run({ tablePath, kind, json }: FitOptions): void {
  let text: string;
  try {
    text = readFileSync(tablePath, 'utf8');
  } catch {
    throw new Refused(`The table ${tablePath} cannot be read: check its name and your rights to it.`);
  }
  try {
    const told = FITS[kind](text);
    process.stdout.write(json ? `${JSON.stringify(told.json)}\n` : alignedRows(told.lines) + told.after);
  } catch (error) {
    throw error instanceof Unfit ? new Refused(`${tablePath}: ${error.message}.`) : error;
  }
}

asCommand((words) => {
  run(fitOptions(words));
});

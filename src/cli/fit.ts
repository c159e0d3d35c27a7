/**
 * `npm run --silent fit -- TRIALS.csv`: what a log of trials teaches, without a page; with `--kind …` the statistics of a
 * plain table. Bad rows go to stderr with line and reason, good ones are used. Exit 2 for bad options, a bad table or no
 * good row, 1 for a fault of ours.
 */
import { readFileSync } from 'node:fs';
import { contestFit, contestTable } from '../trials/contest-fit';
import { type BadRow, type Table, Unfit } from '../trials/csv-table';
import { logOfCsv } from '../trials/log-csv';
import { isLogText, openLogFile } from '../trials/log-file';
import { radiusTable } from '../trials/radius-table';
import { rimRates } from '../trials/rim-rate';
import { survivalFits, survivalTable } from '../trials/survival-fit';
import type { Log } from '../trials/trial';
import { verdictDays, verdictTable } from '../trials/verdict-days';
import { alignedRows, type Line } from './aligned-rows';
import { fitOptions, type FitOptions, type Kind, type LogOptions } from './fit-options';
import { estimateTables, logEstimates } from './log-estimates';
import { asCommand, Refused } from './words';

interface Told {
  readonly json: unknown;
  /** The same for people. */
  readonly lines: readonly Line[];
  readonly after: string;
}

const NONE_GOOD = 'No row of the table is good: nothing was fitted.';

function tellBad(bad: readonly BadRow[]): void {
  for (const { line, why } of bad) process.stderr.write(`line ${line}: ${why}; the row is left out\n`);
}

function goodRows<T>({ rows, bad }: Table<T>): T[] {
  tellBad(bad);
  if (rows.length === 0) throw new Refused(NONE_GOOD);
  return rows.map(({ value }) => value);
}

/** From CSV, or from the log's own file. */
function logIn(text: string, { dateOrder, decimal }: LogOptions): Log {
  if (isLogText(text)) {
    const opened = openLogFile(text);
    if ('log' in opened) return opened.log;
    const [{ where, found, allowed }] = opened.refusals;
    throw new Refused(`${where}: found ${found}, allowed is ${allowed}.`);
  }
  const { log, bad } = logOfCsv(text, {
    ...(dateOrder === null ? {} : { dateOrder }),
    ...(decimal === null ? {} : { decimal }),
  });
  tellBad(bad);
  if (log.trials.length === 0) throw new Refused(NONE_GOOD);
  return log;
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

/** What was fitted, as it is printed. */
function printed(text: string, { kind, log, json }: FitOptions): string {
  if (kind === null) {
    const estimates = logEstimates(logIn(text, log), log.choice);
    return json ? `${JSON.stringify(estimates)}\n` : estimateTables(estimates);
  }
  const told = FITS[kind](text);
  return json ? `${JSON.stringify(told.json)}\n` : alignedRows(told.lines) + told.after;
}

function run(options: FitOptions): void {
  const { tablePath } = options;
  let text: string;
  try {
    text = readFileSync(tablePath, 'utf8');
  } catch {
    throw new Refused(`The table ${tablePath} cannot be read: check its name and your rights to it.`);
  }
  try {
    process.stdout.write(printed(text, options));
  } catch (error) {
    throw error instanceof Unfit ? new Refused(`${tablePath}: ${error.message}.`) : error;
  }
}

asCommand((words) => {
  run(fitOptions(words));
});

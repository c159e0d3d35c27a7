/**
 * `npm run --silent grow -- PLAN.json …`: grows a plan without a page, with the same engine, and writes readings.
 * Everything is checked before the first line is written. Exit 2 for bad input, 1 for a fault of ours.
 */
import { readFileSync } from 'node:fs';
import type { Reading } from '../measure/reading';
import { read } from '../measure/read';
import { copyState } from '../model/copy';
import { futureSeed, grow, growOn, redraw } from '../model/grow';
import type { State } from '../model/state';
import { compile } from '../plan/compile';
import { openPlan } from '../plan/file';
import type { Plan, Refusal } from '../plan/plan';
import { dayOfMonth } from '../units/quantity';
import { growOptions, type GrowOptions } from './grow-options';
import { Pictures } from './pictures';
import { ReadingTable } from './reading-table';
import { asCommand, Refused } from './words';

const MOST_REFUSALS = 10;
/** Where neither the command nor the plan file names one. */
const FIRST_SEED = '1';

function planFrom(path: string): { plan: Plan; seed: string | null } {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    throw new Refused(`The plan file ${path} cannot be read: check its name and your rights to it.`);
  }
  const opened = openPlan(text);
  if ('refusals' in opened) throw new Refused(sentences(path, opened.refusals));
  return opened;
}

function sentences(path: string, refusals: readonly Refusal[]): string {
  const told = refusals
    .slice(0, MOST_REFUSALS)
    .map(
      ({ where, found, allowed, cure }) =>
        `${path}: ${where}: found ${found}; allowed is ${allowed}. ${cure}.`,
    );
  const rest = refusals.length - told.length;
  return [...told, ...(rest > 0 ? [`${path}: and ${rest} more faults.`] : [])].join('\n');
}

/** Months to be read, the last one always among them. */
function monthsRead(months: number, every: number | null): number[] {
  const step = every ?? months;
  const read = Array.from({ length: Math.floor(months / step) }, (_, index) => (index + 1) * step);
  return read.at(-1) === months ? read : [...read, months];
}

function run(options: GrowOptions): void {
  const filed = planFrom(options.planPath);
  const plan = options.months === null ? filed.plan : { ...filed.plan, months: options.months };
  const seeds = options.seeds ?? [filed.seed ?? FIRST_SEED];
  const layout = compile(plan, options.cellMm);
  const ids = ['', ...plan.varieties.map((variety) => variety.id)];
  const monthOfDay = new Map(
    monthsRead(plan.months, options.every).map((month) => [dayOfMonth(month), month]),
  );
  const pictures = options.picturesPath === null ? null : new Pictures(options.picturesPath, plan);
  const table = new ReadingTable(plan, seeds);
  const line = (reading: Reading) => (options.json ? JSON.stringify(reading) : table.row(reading));
  if (!options.json) process.stdout.write(`${table.head()}\n`);
  const tell = (state: State, seed: string, future?: string): void => {
    const month = monthOfDay.get(state.day);
    if (month === undefined) return;
    const reading = read(state, ids, seed, month);
    pictures?.write(state, future === undefined ? seed : `${seed}-future-${future}`, month);
    const told = future === undefined ? reading : { ...reading, freshFrom: options.fresh?.fromDay, future };
    process.stdout.write(
      `${line(options.json || future === undefined ? told : { ...reading, seed: `${seed}, ${future}` })}\n`,
    );
  };
  for (const seed of seeds) {
    for (const state of grow(layout, seed)) {
      tell(state, seed);
      if (options.fresh !== null && state.day === options.fresh.fromDay - 1) {
        for (const word of options.fresh.words) {
          const kept = copyState(state, state.layout);
          redraw(kept, futureSeed(seed, options.fresh.fromDay, word));
          for (const later of growOn(kept)) if (later.day >= options.fresh.fromDay) tell(later, seed, word);
        }
        break;
      }
    }
  }
}

asCommand((words) => {
  run(growOptions(words));
});

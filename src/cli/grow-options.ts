/** What the person asked of `npm run grow`, or the sentence that says why it cannot be. */
import { MAX_SEED_LETTERS } from '../plan/plan';
import { parsedWords, Refused } from './words';

export interface GrowOptions {
  readonly planPath: string;
  /** Null: as many as the plan says. */
  readonly months: number | null;
  /** Null: the one of the plan file. */
  readonly seeds: readonly string[] | null;
  /** Months between two readings; null: the last month only. */
  readonly every: number | null;
  readonly cellMm: number;
  readonly json: boolean;
  readonly picturesPath: string | null;
  /** Futures of one past: the noise is drawn anew from this day on, once for each word. Null for whole runs. */
  readonly fresh: { readonly fromDay: number; readonly words: readonly string[] } | null;
}

const USAGE =
  'Usage: npm run --silent grow -- PLAN.json [--months 12] [--seeds 5 | --seed word] [--every 1] [--cell 0.25] ' +
  '[--json] [--pictures DIR] [--fresh-from DAY --seeds 64 (futures of the one --seed)]';

const OPTIONS = {
  months: { type: 'string' },
  seeds: { type: 'string' },
  seed: { type: 'string' },
  every: { type: 'string' },
  cell: { type: 'string' },
  json: { type: 'boolean' },
  pictures: { type: 'string' },
  'fresh-from': { type: 'string' },
} as const;

export function growOptions(words: readonly string[]): GrowOptions {
  const { values, positionals } = parsedWords(
    { args: [...words], options: OPTIONS, allowPositionals: true, strict: true },
    USAGE,
  );
  if (positionals.length !== 1) {
    throw new Refused(`Name one plan file; ${positionals.length} were named. ${USAGE}`);
  }
  if (values.pictures === '') throw new Refused(`--pictures needs the name of a folder. ${USAGE}`);
  const fresh = freshOf(values['fresh-from'], values.seeds);
  return {
    planPath: positionals[0],
    months: whole('--months', values.months, 36),
    seeds: seedWords(values.seed, fresh === null ? values.seeds : undefined),
    every: whole('--every', values.every, 36),
    cellMm: cellSize(values.cell),
    json: values.json ?? false,
    picturesPath: values.pictures ?? null,
    fresh,
  };
}

function whole(name: string, text: string | undefined, most: number): number | null {
  if (text === undefined) return null;
  const value = Number(text);
  if (/^\d+$/u.test(text) && value >= 1 && value <= most) return value;
  throw new Refused(`${name} must be a whole number from 1 to ${most}, but it is '${text}'.`);
}

function cellSize(text: string | undefined): number {
  if (text === undefined) return 0.25;
  const value = Number(text);
  if (/^[\d.]+$/u.test(text) && value >= 0.1 && value <= 1) return value;
  throw new Refused(`--cell must be a number of mm from 0.1 to 1, but it is '${text}'.`);
}

function seedWords(word: string | undefined, count: string | undefined): string[] | null {
  if (word !== undefined && count !== undefined) {
    throw new Refused('--seed names one seed and --seeds counts several: give one of the two.');
  }
  if (word !== undefined) {
    if (word === '' || word.length > MAX_SEED_LETTERS)
      throw new Refused(`--seed must be a word of 1 to ${MAX_SEED_LETTERS} letters.`);
    return [word];
  }
  const length = whole('--seeds', count, 10_000);
  return length === null ? null : numbered(length);
}

/** With --fresh-from the seed is the one past, and --seeds counts the futures; one when it is left out. */
function freshOf(day: string | undefined, count: string | undefined): GrowOptions['fresh'] {
  if (day === undefined) return null;
  const fromDay = whole('--fresh-from', day, 1095) ?? 1;
  return { fromDay, words: numbered(whole('--seeds', count, 10_000) ?? 1) };
}

function numbered(length: number): string[] {
  return Array.from({ length }, (_, index) => String(index + 1));
}

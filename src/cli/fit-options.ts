/** What the person asked of `npm run fit`, or the sentence that says why it cannot be. */
import type { FitChoice } from '../trials/fit-choice';
import { EVENT_KINDS } from '../trials/trial';
import { parsedWords, Refused } from './words';

export const KINDS = ['radius', 'survival', 'contest', 'lifetimes'] as const;
export type Kind = (typeof KINDS)[number];

const SPLITS = ['tank', 'event'] as const;
const DATES = ['dmy', 'mdy'] as const;
const DECIMALS = ['point', 'comma'] as const;

/** How a log is read and which part of it is fitted. */
export interface LogOptions {
  readonly choice: FitChoice;
  readonly dateOrder: (typeof DATES)[number] | null;
  readonly decimal: (typeof DECIMALS)[number] | null;
}

export interface FitOptions {
  readonly tablePath: string;
  /** A plain table of one kind; null for a log. */
  readonly kind: Kind | null;
  readonly log: LogOptions;
  readonly json: boolean;
}

const USAGE =
  `Usage: npm run --silent fit -- TABLE.csv --kind ${KINDS.join('|')} [--json], or of a log ` +
  `npm run --silent fit -- TRIALS.csv [--json] [--leave-out ${EVENT_KINDS.join('|')}] [--split ${SPLITS.join('|')}] ` +
  `[--dates ${DATES.join('|')}] [--decimal ${DECIMALS.join('|')}]`;

const LOG_OPTIONS = {
  'leave-out': { type: 'string', multiple: true },
  split: { type: 'string' },
  dates: { type: 'string' },
  decimal: { type: 'string' },
} as const;

const OPTIONS = { kind: { type: 'string' }, json: { type: 'boolean' }, ...LOG_OPTIONS } as const;

export function fitOptions(words: readonly string[]): FitOptions {
  const { values, positionals } = parsedWords(
    { args: [...words], options: OPTIONS, allowPositionals: true, strict: true },
    USAGE,
  );
  if (positionals.length !== 1) {
    throw new Refused(`Name one table; ${positionals.length} were named. ${USAGE}`);
  }
  const kind = oneOf('kind', values.kind, KINDS);
  const ofLog = Object.keys(LOG_OPTIONS).find((name) => name in values);
  if (kind !== null && ofLog !== undefined) {
    throw new Refused(`--${ofLog} is for a log: leave it out, or --kind. ${USAGE}`);
  }
  const leaveOut = (values['leave-out'] ?? []).flatMap((word) => {
    const one = oneOf('leave-out', word, EVENT_KINDS);
    return one === null ? [] : [one];
  });
  return {
    tablePath: positionals[0],
    kind,
    log: {
      choice: { leaveOut, split: oneOf('split', values.split, SPLITS) ?? 'none' },
      dateOrder: oneOf('dates', values.dates, DATES),
      decimal: oneOf('decimal', values.decimal, DECIMALS),
    },
    json: values.json ?? false,
  };
}

function oneOf<T extends string>(name: string, word: string | undefined, allowed: readonly T[]): T | null {
  if (word === undefined) return null;
  const found = allowed.find((one) => one === word);
  if (found === undefined) {
    throw new Refused(`--${name} must be one of ${allowed.join(', ')}, but it is '${word}'. ${USAGE}`);
  }
  return found;
}

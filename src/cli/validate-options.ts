/** What the person asked of `npm run validate`. */
import { parseArgs } from 'node:util';
import { Refused } from './grow-options';

export interface ValidateOptions {
  readonly json: boolean;
  /** Folder of the report. */
  readonly outPath: string;
  /** Only topics whose title holds this word; null for all. */
  readonly only: string | null;
  /** Also writes the copy that the page shows. */
  readonly keep: boolean;
}

const USAGE = 'Usage: npm run --silent validate -- [--json] [--out report] [--only WORD] [--keep]';

const OPTIONS = {
  json: { type: 'boolean' },
  out: { type: 'string' },
  only: { type: 'string' },
  keep: { type: 'boolean' },
} as const;

export function validateOptions(words: readonly string[]): ValidateOptions {
  const { json = false, out = 'report', only = null, keep = false } = parsed(words);
  if (out === '') throw new Refused(`--out needs the name of a folder. ${USAGE}`);
  if (keep && only !== null) throw new Refused(`--keep keeps a whole report: leave out --only. ${USAGE}`);
  return { json, outPath: out, only, keep };
}

function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options: OPTIONS, strict: true }).values;
  } catch (error) {
    const why = error instanceof Error ? error.message.split(/\.\s/u)[0] : 'These options make no sense';
    throw new Refused(`${why}. ${USAGE}`);
  }
}

/** What the person asked of `npm run validate`. */
import { parsedWords, Refused } from './words';

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
  const { values } = parsedWords({ args: [...words], options: OPTIONS, strict: true }, USAGE);
  const { json = false, out = 'report', only = null, keep = false } = values;
  if (out === '') throw new Refused(`--out needs the name of a folder. ${USAGE}`);
  if (keep && only !== null) throw new Refused(`--keep keeps a whole report: leave out --only. ${USAGE}`);
  return { json, outPath: out, only, keep };
}

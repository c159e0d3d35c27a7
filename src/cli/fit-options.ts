/** What the person asked of `npm run fit`, or the sentence that says why it cannot be. */
import { parsedWords, Refused } from './words';

export const KINDS = ['radius', 'survival', 'contest', 'lifetimes'] as const;
export type Kind = (typeof KINDS)[number];

export interface FitOptions {
  readonly tablePath: string;
  readonly kind: Kind;
  readonly json: boolean;
}

const USAGE = `Usage: npm run --silent fit -- TABLE.csv --kind ${KINDS.join('|')} [--json]`;

const OPTIONS = { kind: { type: 'string' }, json: { type: 'boolean' } } as const;

export function fitOptions(words: readonly string[]): FitOptions {
  const { values, positionals } = parsedWords(
    { args: [...words], options: OPTIONS, allowPositionals: true, strict: true },
    USAGE,
  );
  if (positionals.length !== 1) {
    throw new Refused(`Name one table; ${positionals.length} were named. ${USAGE}`);
  }
  const kind = KINDS.find((one) => one === values.kind);
  if (kind === undefined) {
    const found = values.kind === undefined ? 'it is left out' : `it is '${values.kind}'`;
    throw new Refused(`--kind must be ${KINDS.join(', ')}, but ${found}. ${USAGE}`);
  }
  return { tablePath: positionals[0], kind, json: values.json ?? false };
}

/** What one person called the seams of a set of tiles: kept, and handed on as a small file. */
import * as v from 'valibot';
import { date, list, SeedSchema, text, whole } from '../plan/plan';
import { CALLS, SEAM_KINDS } from './seam-kinds';

const MOST_SEAMS = 200;
const NO_CALLS = 'it is no file of calls';

export const CalledSchema = v.object({
  /** Place of the tile in its set, and of the seam on its tile: both from 0. */
  tile: whole(0, 100),
  seam: whole(0, 20),
  is: v.picklist(SEAM_KINDS),
  /** No eye could tell it from above yet; not in older files. */
  isEarly: v.optional(v.boolean()),
  call: v.picklist(CALLS),
});

export const CallsSchema = v.object({
  seambenchCalls: v.literal(1),
  /** The word that the set is drawn from: the same word gives the same tiles. */
  set: SeedSchema,
  /** Which tiles that word stood for: TILES_OF of the day. */
  tiles: text(20),
  /** Whose eyes; may be empty. */
  by: text(60),
  on: date,
  called: list(CalledSchema, 1, MOST_SEAMS, 'seams'),
});

export type Called = v.InferOutput<typeof CalledSchema>;
export type Calls = v.InferOutput<typeof CallsSchema>;

/** The calls in a file, or the words that say why it holds none. */
export function openCalls(fileText: string): Calls | string {
  let found: unknown;
  try {
    found = JSON.parse(fileText);
  } catch {
    return NO_CALLS;
  }
  const read = v.safeParse(CallsSchema, found);
  if (read.success) return read.output;
  const [first] = read.issues;
  const where = v.getDotPath(first);
  // every file of calls says that it is one
  if (where === null || where === 'seambenchCalls') return NO_CALLS;
  return `“${where}” is not as a file of calls has it`;
}

/** The file's text: one line a seam, so that it can be read. */
export function callsText(calls: Calls): string {
  const { called, ...head } = calls;
  const lines = called.map((one) => `    ${JSON.stringify(one)}`);
  return `${JSON.stringify(head, null, 2).slice(0, -2)},\n  "called": [\n${lines.join(',\n')}\n  ]\n}\n`;
}

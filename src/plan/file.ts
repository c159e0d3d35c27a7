/**
 * The plan file: text -> JSON -> migrate -> schema -> refuse, and back to one canonical text.
 * Whatever comes in, a plan or refusals come out; nothing is thrown.
 */
import * as v from 'valibot';
import { entry } from './fault-words';
import { migrate } from './migrate';
import { PlanFileSchema, type Plan, type Refusal } from './plan';
import { refuse } from './refuse';
import { schemaFaults, shown } from './schema-faults';

/** The seed belongs to the file and not to the plan: the same plan is grown on many. Null where the file has none. */
export type Opened =
  { readonly plan: Plan; readonly seed: string | null } | { readonly refusals: readonly Refusal[] };

/** Ten times the longest plan there can be with pieces of a hundred corners. */
const MOST_LETTERS = 20_000_000;

export function openPlan(text: string): Opened {
  if (text.length > MOST_LETTERS) {
    const why = 'is far longer than any plan';
    return notAPlan('the file', `${text.length} letters`, `at most ${MOST_LETTERS}`, why);
  }
  const read = readJson(text);
  if ('value' in read) return checkPlan(read.value);
  const { where, found, why } = read;
  return notAPlan(where, found, 'a plan as Seambench saves it, in JSON', why);
}

export type Json =
  { readonly value: unknown } | { readonly where: string; readonly found: string; readonly why: string };

/** The value of a text in JSON, or the words that say where and why it is none. */
export function readJson(text: string): Json {
  try {
    return { value: JSON.parse(text.replace(/^\uFEFF/u, '')) };
  } catch (error) {
    if (text.trim() === '') return { where: 'the file', found: 'an empty file', why: 'is empty' };
    const place = error instanceof Error ? placeOfFault(text, error.message) : null;
    const why = `cannot be read${place ? ` from ${place} on` : ''}: it is not JSON`;
    return { where: place ?? 'the file', found: 'text that is not JSON', why };
  }
}

/** The cure is one sentence for who opens a file from the page. */
function notAPlan(where: string, found: string, allowed: string, why: string): Opened {
  const cure = `This is not a Seambench plan, for the file ${why}. Choose a file that Seambench has saved`;
  return { refusals: [{ where, found, allowed, cure }] };
}

/** Engines name the place as 'line 3 column 5' or as 'position 41'. */
function placeOfFault(text: string, message: string): string | null {
  const line = /line (\d+)/u.exec(message);
  if (line) return `line ${line[1]}`;
  const position = /position (\d+)/u.exec(message);
  return position && `line ${text.slice(0, Number(position[1])).split('\n').length}`;
}

/** For what is already an object: a record of this browser's store, a preset. */
export function checkPlan(value: unknown): Opened {
  if (entry(value, 'seambench') === undefined) {
    const kind = shown(value);
    const found = kind === 'an object' ? 'an object without "seambench"' : kind;
    return notAPlan('the plan', found, 'an object with "seambench": 1', 'holds something else');
  }
  const migrated = migrate(value);
  if ('refusals' in migrated) return migrated;
  const parsed = v.safeParse(PlanFileSchema, migrated.value);
  if (!parsed.success) return { refusals: schemaFaults(migrated.value, parsed.issues) };
  const { seed = null, ...plan } = parsed.output;
  const refusals = refuse(plan);
  return refusals.length > 0 ? { refusals } : { plan, seed };
}

/** Names in the order of the plan's own schema; a name not listed would come last, by the alphabet. */
const KEY_ORDER = [
  ...[
    'seambench',
    'seambenchBench',
    'id',
    'name',
    'note',
    'tile',
    'varieties',
    'pairs',
    'pieces',
    'steps',
    'months',
    'seed',
    'settings',
    'survival',
  ],
  ...['shape', 'sizeMm', 'a', 'b', 'colour', 'rimMmPerMonth', 'aggression'],
  ...['acceptance', 'took', 'tried', 'related', 'consistency', 'revertPerMonth', 'mingle'],
  ...['day', 'on', 'kind', 'piece', 'variety', 'at', 'turnDeg', 'edge', 'outline', 'disc', 'diameterMm'],
  ...['fromDay', 'areaMm2', 'tank', 'keepShare'],
  ...['patches', 'seams', 'is', 'over', 'around', 'lines', 'along', 'widthMm', 'kerfMm', 'then', 'coin'],
];

function byKeyOrder([one]: readonly [string, unknown], [other]: readonly [string, unknown]): number {
  const rank = (key: string) => (KEY_ORDER.includes(key) ? KEY_ORDER.indexOf(key) : KEY_ORDER.length);
  return rank(one) - rank(other) || (one < other ? -1 : 1);
}

/** On one line, names in order, without those that are undefined. */
export function line(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(line).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const entries = Object.entries(value).filter(([, entry]) => entry !== undefined);
  if (entries.length === 0) return '{}';
  return `{ ${entries
    .sort(byKeyOrder)
    .map(([key, entry]) => `"${key}": ${line(entry)}`)
    .join(', ')} }`;
}

/**
 * The canonical text: equal plans give equal text, and a change shows on the line of what changed. With a seed it is
 * the file of one grown tile.
 */
export function planText(plan: Plan, seed?: string): string {
  const entries = Object.entries({ ...plan, seed }).filter(([, entry]) => entry !== undefined);
  const lines = entries.sort(byKeyOrder).map(([key, entry]: [string, unknown]) => {
    if (!Array.isArray(entry) || entry.length === 0) return `  "${key}": ${line(entry)}`;
    return `  "${key}": [\n${entry.map((item) => `    ${line(item)}`).join(',\n')}\n  ]`;
  });
  return `{\n${lines.join(',\n')}\n}\n`;
}

/**
 * Who a plan is for a run: the digest of its canonical text without what growth does not depend on, so that
 * a new name or colour does not grow the tile again.
 */
export function planDigest(plan: Plan): string {
  const varieties = plan.varieties.map((variety) => ({ ...variety, name: '', colour: '#000000' }));
  return digest(planText({ ...plan, name: '', note: '', varieties }));
}

/**
 * FNV-1a, 64 bits, as 16 hexadecimal digits (Fowler, Noll & Vo, IETF draft-eastlake-fnv), of the text in UTF-8.
 * The product with the prime 2^40 + 0x1b3 is made of 16-bit limbs, as numbers have 53 bits.
 */
export function digest(text: string): string {
  let [d, c, b, a] = [0xcbf2, 0x9ce4, 0x8422, 0x2325];
  for (const byte of new TextEncoder().encode(text)) {
    a ^= byte;
    const productA = a * 0x1b3;
    const productB = b * 0x1b3 + (productA >>> 16);
    const productC = c * 0x1b3 + (a << 8) + (productB >>> 16);
    const productD = d * 0x1b3 + (b << 8) + (productC >>> 16);
    [d, c, b, a] = [productD & 0xffff, productC & 0xffff, productB & 0xffff, productA & 0xffff];
  }
  return [d, c, b, a].map((limb) => limb.toString(16).padStart(4, '0')).join('');
}

/**
 * A fault of a plan file as a sentence for who sees the page and never the file: 'The rim rate of Garnet is 20: it must
 * be a number from 0.2 to 15 mm a month'. Things are called by the names that the file gives them, as far as it does.
 */
import { capital, placeName } from './piece-name';
import { MINGLE_NAMES } from './plan';

type Key = string | number;

/** What the page calls a value of the file, and the unit of its number. */
const NAMES: Readonly<Record<string, string>> = {
  seambench: 'version',
  name: 'name',
  shape: 'shape',
  sizeMm: 'size',
  colour: 'colour',
  rimMmPerMonth: 'rim rate',
  months: 'number of months',
  seed: 'seed',
  note: 'note',
  a: 'first variety',
  b: 'second variety',
  at: 'place',
  turnDeg: 'turn',
  edge: 'kind of edge',
  diameterMm: 'diameter',
  acceptance: 'chance to take',
  took: 'number that took',
  tried: 'number tried',
  related: 'kinship',
  mingle: 'mingling',
  interleave: 'wander of a border',
  stray: 'share of far births',
  strayReachMm: 'reach of far births',
  weave: 'pull to the rarer colour',
  weaveReachMm: 'reach of the pull',
  turnoverPerMonth: 'turnover a month',
  revertPerMonth: 'share that turns each month',
  healingDays: 'healing',
  polypMm: 'polyp spacing',
  zipLengthMm: 'zip length',
  rimFactor: 'factor on grown rims',
  deadShare: 'dead share',
  veiledShare: 'share of look-alikes',
  stingMm: 'sting reach',
  kind: 'kind',
  day: 'day',
  widthMm: 'width',
  kerfMm: 'kerf',
  lines: 'cut lines',
  along: 'drawn line',
  around: 'drawn outline',
  then: 'list of placements',
  piece: 'piece',
};

const UNITS: Readonly<Record<string, string>> = {
  sizeMm: 'mm',
  rimMmPerMonth: 'mm a month',
  turnDeg: 'degrees',
  diameterMm: 'mm',
  widthMm: 'mm',
  kerfMm: 'mm',
  strayReachMm: 'mm',
  weaveReachMm: 'mm',
  healingDays: 'days',
  polypMm: 'mm',
  zipLengthMm: 'mm',
  stingMm: 'mm',
};

const LISTS: Readonly<Record<string, string>> = {
  tile: 'the tile',
  settings: 'the settings of growth',
  survival: 'the survival of cuttings',
  varieties: 'the list of varieties',
  pairs: 'the list of pairs',
  pieces: 'the list of pieces',
  steps: 'the list of steps',
};

/** What the entries of a list are called. */
const PARTS: Readonly<Record<string, string>> = {
  outline: 'corner',
  around: 'corner',
  along: 'point',
  lines: 'line',
  patches: 'patch',
  seams: 'seam',
  then: 'placement',
};

/** Where what the file may hold is no plain number or word. */
const WANTED: Readonly<Record<string, string>> = {
  tile: 'a shape and a size in mm',
  settings: 'the numbers of growth that differ from the model’s own',
  survival: 'two numbers, fitted to your own cuttings',
  varieties: 'a list of 1 to 8 varieties',
  pieces: 'a list of pieces, which may be empty',
  rimMmPerMonth: 'a number of mm a month',
  outline: 'a list of three or more corners in mm',
  disc: 'a diameter in mm',
  acceptance: 'a number from 0 to 1, or how many took of how many tried',
  mingle: `${MINGLE_NAMES.map((name) => `“${name}”`).join(', ')}, or all the numbers of mingling`,
};

export interface ShapeFault {
  readonly kind: 'wrong' | 'not-known' | 'two-forms';
  readonly path: readonly Key[];
  readonly input: unknown;
  /** In the words of the schema. */
  readonly allowed: string;
}

export function faultWords(root: unknown, { kind, path, input, allowed }: ShapeFault): string {
  const last = path[path.length - 1] ?? '';
  const holder = thing(root, path.slice(0, -1));
  switch (kind) {
    case 'not-known':
      return `The entry “${shortened(String(last))}” in ${holder} means nothing here: take it out`;
    case 'two-forms':
      return `${capital(holder)} has an outline and a diameter: keep one of the two`;
    case 'wrong': {
      const is = input === undefined ? 'is missing' : `is ${found(input)}`;
      return `${capital(thing(root, path))} ${is}: it must be ${wanted(last, allowed)}`;
    }
  }
}

function wanted(last: Key, allowed: string): string {
  const unit = UNITS[last];
  if (/^a (?:whole )?number from/u.test(allowed) && !allowed.includes('{')) {
    return unit ? `${allowed} ${unit}` : allowed;
  }
  if (allowed.startsWith('a piece with')) return 'a piece with an outline or a diameter';
  if (allowed === 'an object' && WANTED[last] === undefined) return 'a group of named values';
  return (WANTED[last] ?? allowed).replaceAll(/"([^"]*)"/gu, '“$1”');
}

function found(input: unknown): string {
  if (typeof input === 'string') return `“${shortened(input)}”`;
  if (Array.isArray(input)) return input.length === 0 ? 'an empty list' : `a list of ${input.length}`;
  if (typeof input === 'object' && input !== null) return 'a group of values';
  return input === null ? 'empty' : JSON.stringify(input);
}

/** 'the rim rate of Garnet', 'corner 3 of the outline of piece 2 in the file (Fern, 4 mm left of the middle)'. */
function thing(root: unknown, path: readonly Key[]): string {
  const last = path[path.length - 1];
  if (last === undefined) return 'the plan';
  if (path.length === 1) return LISTS[last] ?? `the ${NAMES[last] ?? last} of the plan`;
  if (path.length === 2 && typeof last === 'number') return member(root, path[0], last);
  const holder = thing(root, path.slice(0, -1));
  const parent = path[path.length - 2];
  if (typeof last === 'string') return `the ${NAMES[last] ?? last} of ${holder}`;
  const part = PARTS[parent];
  if (part !== undefined) return `${part} ${last + 1} of ${holder}`;
  return `the ${last === 0 ? 'x' : 'y'} of ${holder}`;
}

function member(root: unknown, list: Key, index: number): string {
  const item = entry(entry(root, list), index);
  const nth = `${index + 1} in the file`;
  if (list === 'varieties') return nameIn(item) ?? `variety ${nth}`;
  if (list === 'pairs') {
    const [one, other] = [varietyName(root, entry(item, 'a')), varietyName(root, entry(item, 'b'))];
    return one !== null && other !== null ? `the pair ${one} and ${other}` : `pair ${nth}`;
  }
  if (list === 'pieces') {
    const known = [varietyName(root, entry(item, 'variety')), placeIn(item)].filter((word) => word !== null);
    return `piece ${nth}${known.length > 0 ? ` (${known.join(', ')})` : ''}`;
  }
  const kind = entry(item, 'kind');
  return typeof kind === 'string' ? `step ${nth} (${shortened(kind)})` : `step ${nth}`;
}

function placeIn(piece: unknown): string | null {
  const at = entry(piece, 'at');
  const [x, y] = [entry(at, 0), entry(at, 1)];
  return typeof x === 'number' && typeof y === 'number' ? placeName([x, y]) : null;
}

function varietyName(root: unknown, id: unknown): string | null {
  const varieties = entry(root, 'varieties');
  if (!Array.isArray(varieties) || typeof id !== 'string') return null;
  return nameIn(varieties.find((variety: unknown) => entry(variety, 'id') === id));
}

function nameIn(variety: unknown): string | null {
  const name = entry(variety, 'name');
  return typeof name === 'string' && name.trim() !== '' ? shortened(name.trim()) : null;
}

export function entry(value: unknown, key: Key): unknown {
  return typeof value === 'object' && value !== null ? (value as Record<Key, unknown>)[key] : undefined;
}

export function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}

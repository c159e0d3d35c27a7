/** Photos of the grower's own log as seams to be called: those whose seam has had its verdict, that day or since. */
import { draw, keysOf } from '../model/noise';
import type { Log, Saw, Trial } from '../trials/trial';
import type { Call } from './seam-kinds';

export interface PhotoItem {
  /** Id under which the photo is kept. */
  readonly photo: string;
  readonly tag: string;
  readonly on: string;
  /** Names of the two varieties. */
  readonly pair: readonly [string, string];
  /** What was noted with the photo. */
  readonly saw: Saw;
  /** What the seam came to, and when that was noted last. */
  readonly is: Call;
  readonly settledOn: string;
  /** Who stood before it that day could not tell. */
  readonly isEarly: boolean;
}

const VERDICTS: readonly Saw[] = ['fused', 'ridge', 'lapped', 'dead'];
const NOT_YET: readonly Saw[] = ['undecided', 'not-met', 'cant-tell'];
const MOST = 12;
const SIGN = 'photos ';

/** At most twelve, dealt by a word: the same word and log give the same. */
export function photoItems(log: Log, word: string): PhotoItem[] {
  const names = new Map(log.varieties.map(({ id, name }) => [id, name]));
  const all = log.trials.flatMap((trial) => itemsOf(trial, (id) => names.get(id) ?? id));
  const { kind } = keysOf(`photos ${word}`);
  return all
    .map((item, at) => ({ item, place: draw(kind, at, 0) }))
    .sort((one, other) => one.place - other.place)
    .slice(0, MOST)
    .map(({ item }) => item);
}

type Verdict = Pick<PhotoItem, 'is' | 'settledOn'>;

function itemsOf({ tag, readings }: Trial, nameOf: (id: string) => string): PhotoItem[] {
  return readings.flatMap(({ photo, on, seen }) => {
    if (photo === undefined) return [];
    return seen.flatMap(({ a, b, saw }): PhotoItem[] => {
      const verdict = verdictFrom(readings, on, a, b);
      const isEarly = NOT_YET.includes(saw);
      return verdict ? [{ photo, tag, on, pair: [nameOf(a), nameOf(b)], saw, isEarly, ...verdict }] : [];
    });
  });
}

/** The last verdict on the pair's seam from a day on. */
function verdictFrom(readings: Trial['readings'], day: string, a: string, b: string): Verdict | null {
  let found: Verdict | null = null;
  for (const { on, seen } of readings) {
    if (on < day || (found && on < found.settledOn)) continue;
    const one = seen.find((pair) => (pair.a === a && pair.b === b) || (pair.a === b && pair.b === a));
    if (one && VERDICTS.includes(one.saw)) found = { is: one.saw as Call, settledOn: on };
  }
  return found;
}

/** What TILES_OF is for tiles: the same only where two have the same photos with the same verdicts. */
export function tilesOfPhotos(items: readonly PhotoItem[]): string {
  const all = items.map(({ photo, pair, is, isEarly }) => [photo, ...pair, is, isEarly].join(' '));
  return `${SIGN}${(keysOf(all.join('\n')).kind >>> 0).toString(16)}`;
}

export function isOfPhotos({ tiles }: { readonly tiles: string }): boolean {
  return tiles.startsWith(SIGN);
}

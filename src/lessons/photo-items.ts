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
}

const VERDICTS: readonly Saw[] = ['fused', 'ridge', 'lapped', 'dead'];
const NOT_YET: readonly Saw[] = ['undecided', 'not-met', 'cant-tell'];
const MOST = 12;

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

function itemsOf({ tag, readings }: Trial, nameOf: (id: string) => string): PhotoItem[] {
  return readings.flatMap(({ photo, on, seen }) => {
    if (photo === undefined) return [];
    return seen.flatMap(({ a, b, saw }): PhotoItem[] => {
      const verdict = verdictFrom(readings, on, a, b);
      return verdict ? [{ photo, tag, on, pair: [nameOf(a), nameOf(b)], saw, ...verdict }] : [];
    });
  });
}

/** The last verdict on the pair's seam from a day on. */
function verdictFrom(
  readings: Trial['readings'],
  day: string,
  a: string,
  b: string,
): Pick<PhotoItem, 'is' | 'settledOn'> | null {
  let found: Pick<PhotoItem, 'is' | 'settledOn'> | null = null;
  for (const { on, seen } of readings) {
    if (on < day || (found && on < found.settledOn)) continue;
    const one = seen.find((pair) => (pair.a === a && pair.b === b) || (pair.a === b && pair.b === a));
    if (one && VERDICTS.includes(one.saw)) found = { is: one.saw as Call, settledOn: on };
  }
  return found;
}

/** Right is what the seam came to; and undecided, where the one who stood before it could not tell either. */
export function isRightOfPhoto({ is, saw }: PhotoItem, call: Call): boolean {
  return call === is || (call === 'undecided' && NOT_YET.includes(saw));
}

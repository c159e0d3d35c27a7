/** A test that is being taken: kept after each call, so that closing the page loses none. */
import * as v from 'valibot';
import { list, SeedSchema, text, whole } from '../plan/plan';
import { CalledSchema, type Calls } from './calls';
import { CALLS, type Call } from './seam-kinds';
import type { SeamMark } from './seam-marks';
import { type RoundName, TILES_OF } from './seam-test';

const MOST_ROUNDS = 5000;
const MOST_SEAMS = 20;

const seamAt = whole(0, MOST_SEAMS);

export const OpenTestSchema = v.object({
  /** Which tiles its words stand for: TILES_OF of the day. */
  tiles: text(20),
  /** A whole set, in place of what was missed. */
  isWhole: v.boolean(),
  by: text(60),
  rounds: list(
    v.object({
      set: SeedSchema,
      tile: whole(0, 100),
      seams: v.nullable(list(seamAt, 1, MOST_SEAMS, 'seams')),
    }),
    1,
    MOST_ROUNDS,
    'tiles',
  ),
  /** Place among the rounds of the tile that is called. */
  at: whole(0, MOST_ROUNDS),
  /** What was called on it so far. */
  calls: list(v.object({ seam: seamAt, call: v.picklist(CALLS) }), 0, MOST_SEAMS, 'calls'),
  /** It is shown what its seams are: no call is changed any more. */
  isShown: v.boolean(),
  /** What was called on tiles that were shown. */
  done: list(v.object({ ...CalledSchema.entries, set: SeedSchema }), 0, MOST_ROUNDS * MOST_SEAMS, 'seams'),
});

export type OpenTest = v.InferOutput<typeof OpenTestSchema>;

/** What a call is judged by, with the seam's place on its tile. */
export interface Judged extends Pick<SeamMark, 'is' | 'isEarly'> {
  readonly seam: number;
}

/** A seam to be called on a tile. */
export interface Asked extends Judged, SeamMark {}

export function openTest(
  rounds: readonly RoundName[],
  by: string,
  isWhole: boolean,
  tiles = TILES_OF,
): OpenTest {
  const named = rounds.map((round) => ({ ...round, seams: round.seams ? [...round.seams] : null }));
  return { tiles, isWhole, by, rounds: named, at: 0, calls: [], isShown: false, done: [] };
}

/** One tile of calls that are done, to be looked at again. */
export function lookedBack({ set, by, tiles, called }: Calls, tile: number): OpenTest {
  const done = called.filter((one) => one.tile === tile);
  const round = { set, tile, seams: done.map(({ seam }) => seam) };
  const calls = done.map(({ seam, call }) => ({ seam, call }));
  return { tiles, isWhole: false, by, rounds: [round], at: 0, calls, isShown: true, done: [] };
}

export function withCall(open: OpenTest, seam: number, call: Call): OpenTest {
  if (open.isShown) return open;
  return { ...open, calls: [...open.calls.filter((one) => one.seam !== seam), { seam, call }] };
}

/** It is shown what the tile's seams are. */
export function withShown(open: OpenTest, asked: readonly Judged[]): OpenTest {
  if (open.isShown) return open;
  const { set, tile } = open.rounds[open.at];
  const now = asked.flatMap(({ seam, is, isEarly }) => {
    const call = open.calls.find((one) => one.seam === seam)?.call;
    return call ? [{ set, tile, seam, is, isEarly, call }] : [];
  });
  return { ...open, isShown: true, done: [...open.done, ...now] };
}

export function withNextTile(open: OpenTest): OpenTest {
  return { ...open, at: open.at + 1, calls: [], isShown: false };
}

/** What was called on the tiles that were shown, set by set. */
export function callsOf({ done, tiles, by }: OpenTest, on: string): Calls[] {
  return [...new Set(done.map(({ set }) => set))].map((set) => ({
    seambenchCalls: 1,
    set,
    tiles,
    by,
    on,
    called: done.filter((one) => one.set === set).map(({ set: _set, ...called }) => called),
  }));
}

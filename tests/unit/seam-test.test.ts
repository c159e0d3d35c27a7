/** The seam-reading test: what a seam is called and is, the score, files of calls, what is kept. Its tiles: seam-tiles.test.ts. */
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { type Calls, callsText, openCalls } from '../../src/lessons/calls';
import {
  cardsNow,
  joined,
  NO_PROGRESS,
  ProgressSchema,
  withLesson,
  withOpen,
  withTest,
} from '../../src/lessons/progress';
import { compared, scoreOf } from '../../src/lessons/score';
import {
  type Asked,
  callsOf,
  lookedBack,
  openTest,
  withCall,
  withNextTile,
  withShown,
} from '../../src/lessons/open-test';
import { CALLS as ALL_CALLS, isRightCall } from '../../src/lessons/seam-kinds';
import type { SeamMark } from '../../src/lessons/seam-marks';
import { roundsAgain, roundsOf, TILES, TILES_OF } from '../../src/lessons/seam-test';

it('undecided is right too where no eye can tell; of a look-alike ridge is right; all else by its name alone', () => {
  const right = (is: 'veiled' | 'ridge' | 'fused', isEarly?: boolean): string[] =>
    ALL_CALLS.filter((call) => isRightCall({ is, isEarly }, call));
  expect(right('veiled')).toEqual(['ridge', 'undecided']);
  expect(right('ridge')).toEqual(['ridge']);
  expect(right('ridge', true)).toEqual(['ridge', 'undecided']);
  expect(right('fused', true)).toEqual(['fused', 'undecided']);
  expect(right('fused', false)).toEqual(['fused']);
});

const CALLS: Calls = {
  seambenchCalls: 1,
  set: 'reef',
  tiles: TILES_OF,
  by: 'Ada',
  on: '2026-11-26',
  called: [
    { tile: 0, seam: 0, is: 'ridge', call: 'fused' },
    { tile: 0, seam: 1, is: 'ridge', call: 'fused' },
    { tile: 0, seam: 2, is: 'fused', call: 'fused' },
    { tile: 1, seam: 0, is: 'veiled', call: 'fused' },
    { tile: 1, seam: 1, is: 'dead', call: 'dead' },
  ],
};

it('the score counts mistakes by kind, the commonest first, and the table holds every call', () => {
  const score = scoreOf(CALLS.called);
  expect([score.right, score.of]).toEqual([2, 5]);
  expect(score.mistakes).toEqual([
    { is: 'ridge', isEarly: false, call: 'fused', times: 2 },
    { is: 'veiled', isEarly: false, call: 'fused', times: 1 },
  ]);
  expect(score.rows.flatMap(({ times }) => times).reduce((sum, times) => sum + times, 0)).toBe(5);
  // a seam too young to show has a row of its own, in which undecided is right
  const early = scoreOf([{ tile: 0, seam: 0, is: 'ridge', isEarly: true, call: 'undecided' }]);
  expect(early.right).toBe(1);
  expect(early.rows).toEqual([{ is: 'ridge', isEarly: true, times: [0, 0, 0, 0, 1] }]);
});

it('calls come back from their file; another file is refused in words that say where', () => {
  expect(openCalls(callsText(CALLS))).toEqual(CALLS);
  expect(openCalls('Fern')).toBe('it is no file of calls');
  expect(openCalls('[]')).toBe('it is no file of calls');
  expect(openCalls('{"seambench": 1}')).toBe('it is no file of calls');
  expect(openCalls(callsText(CALLS).replace('"dead"}', '"dying"}'))).toContain('called.4.call');
});

it('two people are compared on the seams that both called, and only within one set', () => {
  const other: Calls = { ...CALLS, by: 'Ben', called: CALLS.called.slice(1).map((one) => ({ ...one, call: one.is === 'ridge' ? 'ridge' : one.call })) }; // prettier-ignore
  const found = compared(CALLS, other);
  expect(found?.both).toBe(4);
  expect(found?.agreement?.agreed).toBeCloseTo(0.75, 12);
  // the seam that they differ on: fused said the first, ridge the second
  expect(found?.table[0]?.[1]).toBe(1);
  expect(compared(CALLS, { ...other, set: 'tide' })).toBeNull();
  expect(compared(CALLS, { ...other, tiles: '1.2' })).toBeNull();
});

describe('what is kept', () => {
  it('a test is kept with its mistakes as seams that come again, each tile once', () => {
    const after = withTest(NO_PROGRESS, CALLS, 20_783);
    expect(after.tests).toEqual([CALLS]);
    expect(after.cards.map(({ tile, seam, dueDay }) => [tile, seam, dueDay])).toEqual([
      [0, 0, 20_784],
      [0, 1, 20_784],
      [1, 0, 20_784],
    ]);
    const rounds = roundsAgain(after.cards);
    expect(rounds.map(({ tile, seams }) => [tile, seams])).toEqual([
      [0, [0, 1]],
      [1, [0]],
    ]);
    expect(roundsOf('reef')).toHaveLength(TILES);
    // the same name stands for other tiles in another version: what was missed there cannot be shown
    const older = withTest(NO_PROGRESS, { ...CALLS, tiles: '1.2' }, 20_783);
    expect(cardsNow(older)).toEqual([]);
    expect(cardsNow(withTest(older, CALLS, 20_783))).toEqual(after.cards);
  });

  it('what two tabs have learned is put together: nothing twice, nothing lost', () => {
    const mine = withTest(withLesson(NO_PROGRESS, 'lapped', 3, '2026-11-20'), CALLS, 20_783);
    const other = withLesson(
      withLesson(withTest(NO_PROGRESS, CALLS, 20_783), 'lapped', 1, '2026-11-18'),
      'recut',
      1,
      '2026-11-26',
    );
    const both = joined(mine, other);
    expect(both.lessons).toEqual({
      lapped: { tries: 1, on: '2026-11-20' },
      recut: { tries: 1, on: '2026-11-26' },
    });
    expect(both.tests).toHaveLength(1);
    expect(both.cards).toHaveLength(3);
    expect(joined(mine, NO_PROGRESS)).toEqual(mine);
  });
});

describe('a test that is being taken', () => {
  const seam = (at: number, is: SeamMark['is'], isEarly = false): Asked => ({
    seam: at,
    is,
    isEarly,
    at: [0, 0],
    from: [-1, 0],
    to: [1, 0],
    pair: [1, 2],
  });
  const ASKED = [seam(0, 'ridge'), seam(1, 'fused', true)];

  it('comes back from its record at any point, and no call is lost or changed once shown', () => {
    let open = openTest(roundsOf('reef'), 'Ada', true);
    const kept = (): void => {
      const record: unknown = JSON.parse(JSON.stringify(withOpen(NO_PROGRESS, open)));
      const read = v.parse(ProgressSchema, record);
      expect(read.open).toEqual(open);
    };
    kept();
    open = withCall(withCall(open, 0, 'fused'), 0, 'ridge');
    kept();
    open = withShown(withCall(open, 1, 'undecided'), ASKED);
    kept();
    expect(withCall(open, 0, 'dead')).toEqual(open);
    expect(withShown(open, ASKED)).toEqual(open);
    open = withNextTile(open);
    kept();
    expect(callsOf(open, '2026-11-26')).toEqual([
      {
        seambenchCalls: 1,
        set: 'reef',
        tiles: TILES_OF,
        by: 'Ada',
        on: '2026-11-26',
        called: [
          { tile: 0, seam: 0, is: 'ridge', isEarly: false, call: 'ridge' },
          { tile: 0, seam: 1, is: 'fused', isEarly: true, call: 'undecided' },
        ],
      },
    ]);
    expect(withOpen(withOpen(NO_PROGRESS, open), null)).toEqual(NO_PROGRESS);
    // of two tabs the one that calls goes on; else what the other left is kept
    expect(joined(NO_PROGRESS, withOpen(NO_PROGRESS, open)).open).toEqual(open);
  });

  it('a tile whose calls are done is looked at with its calls and its truth', () => {
    const back = lookedBack(CALLS, 1);
    expect(back).toMatchObject({ isShown: true, rounds: [{ set: 'reef', tile: 1, seams: [0, 1] }] });
    expect(back.calls).toEqual([
      { seam: 0, call: 'fused' },
      { seam: 1, call: 'dead' },
    ]);
  });
});

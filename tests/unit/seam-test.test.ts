/** The seam-reading test: its tiles, what a seam is called and is, the score, files of calls, what is kept. */
import { describe, expect, it } from 'vitest';
import { type Calls, callsText, openCalls } from '../../src/lessons/calls';
import { isRightOfPhoto, photoItems } from '../../src/lessons/photo-items';
import { joined, NO_PROGRESS, withLesson, withTest } from '../../src/lessons/progress';
import { compared, scoreOf } from '../../src/lessons/score';
import { isRightCall, SEAM_KINDS } from '../../src/lessons/seam-kinds';
import { kindNear, seamMarks, type SeamMark } from '../../src/lessons/seam-marks';
import {
  END_MONTH,
  roundsAgain,
  roundsOf,
  testTiles,
  type TestTile,
  TILES,
} from '../../src/lessons/seam-test';
import { type Frame, frameOf } from '../../src/model/frame';
import { grow } from '../../src/model/grow';
import { compile } from '../../src/plan/compile';
import { refuse } from '../../src/plan/refuse';
import { EMPTY_LOG, type Log, type TrialReading } from '../../src/trials/trial';
import { dayOfMonth } from '../../src/units/quantity';

/** A tile's frames when its seams are called and at the end. */
function framesOf({ plan, seed, month }: TestTile): { called: Frame; end: Frame } {
  const frames: Frame[] = [];
  for (const state of grow(compile(plan, 0.5), seed))
    for (const at of [month, END_MONTH]) if (dayOfMonth(at) === state.day) frames.push(frameOf(state, at));
  const [called, end] = frames;
  if (!called || !end) throw new Error('a run reaches its months');
  return { called, end };
}

describe('tiles', () => {
  it('are the same for the same word and others for another', () => {
    expect(testTiles('reef')).toEqual(testTiles('reef'));
    expect(testTiles('reef')).not.toEqual(testTiles('tide'));
    expect(testTiles('reef')).toHaveLength(TILES);
  });

  it('can be grown, and differ in colours and light', () => {
    for (const word of ['reef', 'tide', 'kelp', '2026-11-26']) {
      const tiles = testTiles(word);
      for (const { plan } of tiles) expect(refuse(plan)).toEqual([]);
      expect(new Set(tiles.map(({ lightDeg }) => lightDeg)).size).toBeGreaterThan(3);
      expect(new Set(tiles.map(({ plan }) => plan.varieties[0]?.colour)).size).toBeGreaterThan(2);
    }
  });

  it('have three seams each, a look-alike in every set; over a few words every kind comes, the clear ones first', () => {
    const kinds = TILE_NUMBERS.map(() => new Set<string>());
    for (const word of ['reef', 'tide', 'kelp', 'sand', 'gale', 'spray']) {
      let lookAlikes = 0;
      for (const [at, tile] of testTiles(word).entries()) {
        const { called, end } = framesOf(tile);
        const marks = seamMarks(called);
        expect(marks).toHaveLength(3);
        for (const mark of marks) {
          kinds[at]?.add(mark.is);
          if (mark.is === 'veiled') lookAlikes++;
          const ends = kindNear(end, mark);
          // what has settled stays, and a look-alike ends as what it is
          if (mark.is === 'veiled') expect(['ridge', 'veiled']).toContain(ends);
          else if (mark.is === 'fused' || mark.is === 'ridge') expect(ends).toBe(mark.is);
        }
      }
      expect(lookAlikes, word).toBeGreaterThan(0);
    }
    expect(new Set(kinds.flatMap((set) => [...set]))).toEqual(new Set(SEAM_KINDS));
    for (const clear of kinds.slice(0, 2)) {
      expect(clear.has('undecided')).toBe(false);
      expect(clear.has('veiled')).toBe(false);
    }
  });
});

const TILE_NUMBERS = Array.from({ length: TILES }, (_, k) => k);

it('a mark stands on its seam, clear of other kinds, and its section crosses the seam there', () => {
  const [tile] = testTiles('reef');
  if (!tile) throw new Error('a set has tiles');
  const { called } = framesOf(tile);
  const cellAt = ([x, y]: SeamMark['at']): number =>
    Math.round(y / 0.5 + (called.rows - 1) / 2) * called.columns +
    Math.round(x / 0.5 + (called.columns - 1) / 2);
  for (const mark of seamMarks(called)) {
    const near = [0, 1, -1, called.columns, -called.columns].map((by) => called.seam[cellAt(mark.at) + by]);
    expect(near.some((bits) => bits !== undefined && (bits & 7) !== 0)).toBe(true);
    const [before, after] = [called.label[cellAt(mark.from)], called.label[cellAt(mark.to)]];
    expect(before).not.toBe(after);
  }
});

it('of a look-alike ridge and undecided are right, fused is the mistake; all else is right by its name alone', () => {
  expect(['fused', 'ridge', 'lapped', 'dead', 'undecided'].map((call) => isRightCall('veiled', call as 'fused'))).toEqual([false, true, false, false, true]); // prettier-ignore
  expect(isRightCall('ridge', 'ridge')).toBe(true);
  expect(isRightCall('ridge', 'undecided')).toBe(false);
});

const CALLS: Calls = {
  seambenchCalls: 1,
  set: 'reef',
  tiles: '1.3',
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
    { is: 'ridge', call: 'fused', times: 2 },
    { is: 'veiled', call: 'fused', times: 1 },
  ]);
  expect(score.table.flat().reduce((sum, times) => sum + times, 0)).toBe(5);
});

it('calls come back from their file; another file is refused in words that say where', () => {
  expect(openCalls(callsText(CALLS))).toEqual(CALLS);
  expect(openCalls('Fern')).toBe('it is not JSON');
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
    expect(rounds[0]?.test).toEqual(roundsOf('reef')[0]?.test);
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

describe('photos of a log', () => {
  const read = (
    id: string,
    on: string,
    saw: 'undecided' | 'ridge' | 'fused',
    photo?: string,
  ): TrialReading => {
    const seen = [{ a: 'fern', b: 'amber', saw }];
    return photo === undefined ? { id, on, seen, measured: [] } : { id, on, seen, measured: [], photo };
  };
  const logOf = (readings: readonly TrialReading[]): Log => ({
    ...EMPTY_LOG,
    varieties: [
      { id: 'fern', name: 'Fern', group: '' },
      { id: 'amber', name: 'Amber', group: '' },
    ],
    trials: [
      {
        id: 't1',
        tag: 'A-14',
        setOn: '2026-01-02',
        varieties: ['fern', 'amber'],
        layout: {},
        tank: '',
        readings,
      },
    ],
  });
  const EARLY = read('r1', '2026-03-01', 'undecided', 'one');
  const LATE = read('r2', '2026-06-01', 'ridge', 'two');

  it('can be called once their seam has a verdict, that day or since; the last one counts', () => {
    expect(photoItems(logOf([EARLY]), 'w')).toEqual([]);
    const both = photoItems(logOf([EARLY, LATE]), 'w');
    expect(both.map(({ photo, is, settledOn }) => [photo, is, settledOn]).sort()).toEqual([
      ['one', 'ridge', '2026-06-01'],
      ['two', 'ridge', '2026-06-01'],
    ]);
    expect(both[0]?.pair).toEqual(['Fern', 'Amber']);
    const turned = photoItems(logOf([EARLY, read('r3', '2026-07-01', 'fused'), LATE]), 'w');
    expect(turned.map(({ is }) => is)).toEqual(['fused', 'fused']);
    // a verdict from before the photo is none on it
    expect(photoItems(logOf([read('r1', '2026-02-01', 'fused'), EARLY]), 'w')).toEqual([]);
  });

  it('undecided is right too where the one who stood before it could not tell', () => {
    const [early, late] = ['one', 'two'].map((id) =>
      photoItems(logOf([EARLY, LATE]), 'w').find(({ photo }) => photo === id),
    );
    if (!early || !late) throw new Error('both are there');
    expect([isRightOfPhoto(early, 'undecided'), isRightOfPhoto(early, 'ridge')]).toEqual([true, true]);
    expect([isRightOfPhoto(late, 'undecided'), isRightOfPhoto(late, 'fused')]).toEqual([false, false]);
  });
});

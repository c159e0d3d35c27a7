/** The tiles of the seam-reading test: how they are dealt, where their seams are marked, and that hints show on them. */
import { describe, expect, it } from 'vitest';
import { SEAM_KINDS } from '../../src/lessons/seam-kinds';
import { markNear, seamMarks, type SeamMark, touchMonths } from '../../src/lessons/seam-marks';
import { crestMm, lipMm, specksMm2 } from '../../src/lessons/seam-signs';
import { END_MONTH, testTiles, type TestTile, TILES } from '../../src/lessons/seam-test';
import { type Frame, frameOf } from '../../src/model/frame';
import { grow } from '../../src/model/grow';
import { BARE } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import { refuse } from '../../src/plan/refuse';
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
          const ends = markNear(end, mark)?.is;
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

/** How much of 1 mm to both sides of a mark is bare. */
function bareShare({ label, columns, rows, cellMm }: Frame, { at }: SeamMark): number {
  let [bare, cells] = [0, 0];
  for (let y = -1; y <= 1; y += cellMm)
    for (let x = -1; x <= 1; x += cellMm) {
      const row = Math.round((at[1] + y) / cellMm + (rows - 1) / 2);
      const column = Math.round((at[0] + x) / cellMm + (columns - 1) / 2);
      if (label[row * columns + column] === BARE) bare++;
      cells++;
    }
  return bare / cells;
}

it('what the hints tell to look for is there, on every seam asked of eight sets', () => {
  let [asked, early] = [0, 0];
  for (const word of ['reef', 'tide', 'kelp', 'sand', 'gale', 'spray', 'a', 'd'])
    for (const tile of testTiles(word)) {
      const { called } = framesOf(tile);
      for (const mark of seamMarks(called)) {
        const where = `${word} ${tile.seed} ${mark.is}`;
        const crest = crestMm(called, mark);
        const lip = lipMm(called, mark);
        const specks = specksMm2(called, mark.pair);
        const bare = bareShare(called, mark);
        asked++;
        if (mark.isEarly && mark.is !== 'veiled') early++;
        // ridge: a crest; lapped: a lip; dead: a pale strip
        if (mark.is === 'ridge') expect(crest >= 0.3, where).toBe(!mark.isEarly);
        if (mark.is === 'lapped') expect(lip >= 0.3, where).toBe(!mark.isEarly);
        if (mark.is === 'dead') expect(bare, where).toBeGreaterThan(0.3);
        else expect(bare, where).toBe(0);
        // fused: specks in the other's colour, and nothing stands or lies over
        if (mark.is === 'fused') expect(specks >= 3, where).toBe(!mark.isEarly);
        if (mark.is === 'fused' || mark.is === 'undecided' || mark.is === 'veiled') {
          expect(crest, where).toBeLessThan(0.2);
          expect(lip, where).toBeLessThan(0.2);
        }
        if (mark.is === 'undecided') expect(specks, where).toBeLessThan(1);
        if (mark.is === 'veiled') expect(mark.isEarly).toBe(true);
      }
    }
  // most can be told
  expect(early).toBeGreaterThan(0);
  expect(early).toBeLessThan(asked / 6);
});

it('no set is nearly all of one kind: of its 18 seams two to seven have fused, and two at least are ridges', () => {
  for (const word of ['reef', 'tide', 'kelp', 'sand', 'gale', 'spray']) {
    const seams = testTiles(word).flatMap((tile) => seamMarks(framesOf(tile).called));
    const fused = seams.filter(({ is }) => is === 'fused').length;
    expect(fused, word).toBeGreaterThanOrEqual(2);
    expect(fused, word).toBeLessThanOrEqual(7);
    expect(seams.filter(({ is }) => is === 'ridge').length, word).toBeGreaterThanOrEqual(2);
  }
});

it('is told since when two touch: by the distance of their edges and the rates of their rims', () => {
  for (const word of ['reef', 'tide', 'kelp'])
    for (const { plan, seed, month } of testTiles(word)) {
      const frames: Frame[] = [];
      for (const state of grow(compile({ ...plan, months: month }, 0.5), seed))
        if (state.day === dayOfMonth(frames.length)) frames.push(frameOf(state, frames.length));
      const last = frames.at(-1);
      if (!last) throw new Error('a run has frames');
      const marks = seamMarks(last);
      const touched = touchMonths(frames, marks);
      for (const [k, { pair, at, is }] of marks.entries()) {
        // rims set out once the cuts have healed, each from the edge of its disc, and come there by the later one
        const days = pair.map((number) => {
          const { rimMmPerMonth } = plan.varieties[number - 1] ?? { rimMmPerMonth: NaN };
          const piece = plan.pieces[number - 1];
          if (!piece || !('disc' in piece)) throw new Error('a piece is a disc');
          const [dx, dy] = [at[0] - piece.at[0], at[1] - piece.at[1]];
          return 1 + (Math.hypot(dx, dy) - piece.disc.diameterMm / 2) / rimMmPerMonth;
        });
        // frames are a month apart, and a place is followed within a month's rim; a lapped seam has travelled since
        if (is !== 'lapped')
          expect(Math.abs((touched[k] ?? NaN) - 0.5 - Math.max(...days))).toBeLessThan(1.75);
      }
    }
});

it('a ring moves with its seam to another month', () => {
  let moved = 0;
  for (const tile of testTiles('tide')) {
    const { called, end } = framesOf(tile);
    for (const mark of seamMarks(called)) {
      const then = markNear(end, mark);
      if (!then) continue;
      expect(then.pair).toEqual(mark.pair);
      const off = Math.hypot(then.at[0] - mark.at[0], then.at[1] - mark.at[1]);
      if (off > 1) moved++;
      // it stands on a seam there
      expect(seamMarks(end).some(({ pair }) => pair[0] === then.pair[0] && pair[1] === then.pair[1])).toBe(
        true,
      );
    }
  }
  expect(moved).toBeGreaterThan(0);
});

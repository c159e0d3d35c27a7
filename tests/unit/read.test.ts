import { describe, expect, it } from 'vitest';
import { benchPlan, block, disc, grownTile } from '../../src/checks/bench-tile';
import { read } from '../../src/measure/read';
import type { Reading, SeamMm } from '../../src/measure/reading';
import { grow } from '../../src/model/grow';
import { hashState } from '../../src/model/hash';
import { compile } from '../../src/plan/compile';
import { dayOfMonth } from '../../src/units/quantity';

const PARTS = ['fusedMm', 'ridgeMm', 'lappedMm', 'deadMm', 'undecidedMm'] as const;

/** Three varieties: 'a' and 'b' touch, 'c' lies apart until about month 4. */
const TILE = {
  sizeMm: 60,
  months: 8,
  rims: [3, 3.5, 3],
  aggression: [0.1, 0.1, 0.9],
  pieces: [block('a', [-14, -14], [-4, -4]), block('b', [-4, -14], [6, -4]), disc('c', [10, 18], 8)],
  pair: { acceptance: 1 },
  settings: { deadShare: 0.3 },
};
const IDS = ['', 'a', 'b', 'c'];

describe('reading of a grown tile', () => {
  const layout = compile(benchPlan(TILE), 0.5);
  const readings: { reading: Reading; hash: string }[] = [];
  for (const state of grow(layout, 'pear')) {
    const month = [0, 1, 2, 4, 8].find((m) => dayOfMonth(m) === state.day);
    if (month !== undefined)
      readings.push({ reading: read(state, IDS, 'pear', month), hash: hashState(state) });
  }
  const [start, , , , end] = readings.map(({ reading }) => reading);

  it('carries seed, month and the hash of the whole state, which moves from month to month', () => {
    expect(readings.map(({ reading }) => reading.month)).toEqual([0, 1, 2, 4, 8]);
    for (const { reading, hash } of readings) expect([reading.seed, reading.hash]).toEqual(['pear', hash]);
    expect(new Set(readings.map(({ hash }) => hash)).size).toBe(5);
  });

  it('adds up: areas to the cover, shares to 1, outcomes and pairs to the seam', () => {
    for (const { reading } of readings) {
      const held = Object.values(reading.varieties);
      expect(held.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)).toBeCloseTo(reading.coverMm2, 9);
      expect(held.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
      for (const seam of [reading.seam, ...reading.pairs])
        expect(PARTS.reduce((sum, part) => sum + seam[part], 0)).toBeCloseTo(seam.lengthMm, 9);
      for (const part of [...PARTS, 'lengthMm'] as const) {
        const ofPairs = reading.pairs.reduce((sum, pair: SeamMm) => sum + pair[part], 0);
        expect(ofPairs).toBeCloseTo(reading.seam[part], 9);
      }
    }
  });

  it('names touching pairs in the plan’s order, and gives null for what does not exist yet', () => {
    // touching edges are in contact on day 0 where nothing has to heal; the verdict takes 10 days and more
    expect(start?.pairs.map(({ a, b }) => `${a}-${b}`)).toEqual(['a-b']);
    expect(start?.seam.undecidedMm).toBeGreaterThan(9);
    expect(start).toMatchObject({
      coverMm2: 100 + 100 + (start?.varieties['c']?.areaMm2 ?? 0),
      swirl: null,
      veinWidthMm: null,
      ridgeHeightMm: null,
      ridgeMaxMm: null,
      firstTouchDay: 0,
      settledDay: null,
    });
    expect(end?.pairs.map(({ a, b }) => `${a}-${b}`)).toEqual(['a-b', 'a-c', 'b-c']);
    expect(end?.pairs[0]?.fusedMm).toBeCloseTo(end?.pairs[0]?.lengthMm ?? 0, 0);
    expect(end?.swirl).toBeGreaterThan(0);
    expect(end?.veinWidthMm).toBeGreaterThan(0);
    expect(end?.settledDay).toBeGreaterThan(10);
  });

  it('of a single variety has no seam, no swirl, no balance', () => {
    const state = grownTile({ ...TILE, rims: [3], pieces: [disc('a', [0, 0], 10)], months: 2 }, 0.5, '1');
    expect(read(state, ['', 'a'], '1', 2)).toMatchObject({
      balance: null,
      pairs: [],
      seam: { lengthMm: 0 },
      swirl: null,
      firstTouchDay: null,
      settledDay: null,
      varieties: { a: { share: 1 } },
    });
  });
});

/** What each preset is there to show, over eight seeds at preview cell: the plan's own note, as numbers. */
import { describe, expect, it } from 'vitest';
import { read } from '../../src/measure/read';
import type { Reading, SeamMm } from '../../src/measure/reading';
import { grow } from '../../src/model/grow';
import { compile } from '../../src/plan/compile';
import { PRESETS } from '../../src/plan/presets';
import { dayOfMonth } from '../../src/units/quantity';

const SEEDS = ['1', '2', '3', '4', '5', '6', '7', '8'];
const PREVIEW_MM = 0.5;

function readings(key: string, seed: string, months: readonly number[], cellMm = PREVIEW_MM): Reading[] {
  const preset = PRESETS.find((one) => one.key === key);
  if (!preset) throw new Error(`No preset ${key}`);
  const plan = { ...preset.plan, months: Math.max(...months) };
  const ids = ['', ...plan.varieties.map((variety) => variety.id)];
  const found: Reading[] = [];
  for (const state of grow(compile(plan, cellMm), seed)) {
    const month = months.find((wanted) => dayOfMonth(wanted) === state.day);
    if (month !== undefined) found.push(read(state, ids, seed, month));
  }
  return found;
}

function overSeeds(key: string, month: number): Reading[] {
  return SEEDS.flatMap((seed) => readings(key, seed, [month]));
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function share(seam: SeamMm, fate: 'fusedMm' | 'ridgeMm' | 'lappedMm'): number {
  return seam[fate] / seam.lengthMm;
}

function pairOf(reading: Reading, a: string, b: string): SeamMm {
  const pair = reading.pairs.find((one) => one.a === a && one.b === b);
  if (!pair) throw new Error(`${a} and ${b} do not touch at seed ${reading.seed}`);
  return pair;
}

describe('presets show what they say', () => {
  it('two-take-one-walls: at month 2 both seams are there, by month 8 one is fused and one is a wall', () => {
    const [early, late] = readings('two-take-one-walls', 'one', [2, 8], 0.25);
    expect(pairOf(early, 'b', 'c').lengthMm).toBeGreaterThan(0);
    expect(share(pairOf(early, 'a', 'b'), 'fusedMm')).toBeGreaterThan(0.9);
    expect(share(pairOf(late, 'a', 'b'), 'fusedMm')).toBeGreaterThan(0.95);
    expect(share(pairOf(late, 'b', 'c'), 'ridgeMm')).toBeGreaterThan(0.9);
    expect(late.coverMm2 / 80 ** 2).toBeGreaterThan(0.9);
    const all = overSeeds('two-take-one-walls', 8);
    expect(mean(all.map((one) => share(pairOf(one, 'a', 'b'), 'fusedMm')))).toBeGreaterThan(0.75);
    expect(mean(all.map((one) => share(pairOf(one, 'b', 'c'), 'fusedMm')))).toBeLessThan(0.1);
  });

  it('halves-that-fuse: the seam runs together', () => {
    const all = overSeeds('halves-that-fuse', 8);
    expect(mean(all.map(({ seam }) => share(seam, 'fusedMm')))).toBeGreaterThan(0.8);
  });

  it('halves-that-wall-up: a ridge all along, each side keeps its half', () => {
    for (const { seam, varieties } of overSeeds('halves-that-wall-up', 8)) {
      expect(share(seam, 'fusedMm')).toBe(0);
      expect(share(seam, 'ridgeMm')).toBeGreaterThan(0.8);
      expect(varieties['a'].share).toBeGreaterThan(0.45);
      expect(varieties['a'].share).toBeLessThan(0.55);
    }
  });

  it('three-colour-mosaic: finer veins than halves of the same age', () => {
    const width = (key: string) => mean(overSeeds(key, 6).flatMap(({ veinWidthMm }) => veinWidthMm ?? []));
    expect(width('three-colour-mosaic')).toBeLessThan(width('halves-that-fuse') / 2);
  });

  it('small-in-a-ring: the small piece is closed in and grows no more', () => {
    for (const seed of SEEDS) {
      const [grown, later] = readings('small-in-a-ring', seed, [6, 12]).map(
        ({ varieties }) => varieties['a'].areaMm2,
      );
      expect(later).toBeLessThan(grown * 1.02);
      // Half the way to the ring, which starts at 13 mm: no farther than about 10 mm from its middle.
      expect(later).toBeLessThan(Math.PI * 10 ** 2);
    }
  });

  it('strong-neighbour: most of the seam is lapped, and the strong one ends with more than at month 6', () => {
    const gains = SEEDS.map((seed) => {
      const [early, late] = readings('strong-neighbour', seed, [6, 18]);
      return {
        lapped: share(late.seam, 'lappedMm'),
        gain: late.varieties['a'].share - early.varieties['a'].share,
      };
    });
    expect(mean(gains.map(({ lapped }) => lapped))).toBeGreaterThan(0.5);
    expect(mean(gains.map(({ gain }) => gain))).toBeGreaterThan(0.03);
  });

  it('five-in-a-ring: of five neighbouring pairs only Garnet and Amber take', () => {
    const all = overSeeds('five-in-a-ring', 8);
    const fused = (a: string, b: string) => mean(all.map((one) => share(pairOf(one, a, b), 'fusedMm')));
    expect(fused('b', 'c')).toBeGreaterThan(0.75);
    for (const [a, b] of ['ab', 'cd', 'de', 'ae']) expect(fused(a, b)).toBeLessThan(0.15);
  });

  it('fast-wraps-slow: the fast one holds four times the area and the slow one is wrapped', () => {
    for (const { varieties, seam } of overSeeds('fast-wraps-slow', 14)) {
      expect(varieties['a'].areaMm2).toBeGreaterThan(4 * varieties['b'].areaMm2);
      // A seam across the tile would be 100 mm long; one that bends back round a piece of 10 mm is far longer than it.
      expect(seam.lengthMm).toBeGreaterThan(80);
    }
  });
});

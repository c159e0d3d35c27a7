import { describe, expect, it } from 'vitest';
import { seamMarks } from '../../src/lessons/seam-marks';
import { testTiles } from '../../src/lessons/seam-test';
import { section, type JointKind } from '../../src/measure/section';
import { frameOf } from '../../src/model/frame';
import { grow } from '../../src/model/grow';
import { FATE, VEILED } from '../../src/model/seam-table';
import { compile } from '../../src/plan/compile';
import { dayOfMonth } from '../../src/units/quantity';
import { sectionFrame } from '../fixtures/section-frame';

const SIZE = 20;

/** Two halves that meet at x = 0, with seam cells on both sides. */
function halves(kind: number, cellMm = 0.25, extra = {}) {
  return sectionFrame({
    sizeMm: SIZE,
    cellMm,
    label: (x) => (x < 0 ? 1 : 2),
    heightMm: () => 2,
    seam: (x) => (Math.abs(x) > cellMm ? 0 : kind | ((x < 0 ? 1 : 2) << 4)),
    ...extra,
  });
}

describe('the surface', () => {
  it.each([0, 27, 45, 90, 151])('is that of a slope, whichever way the line runs: %d degrees', (deg) => {
    const frame = sectionFrame({
      sizeMm: SIZE,
      cellMm: 0.25,
      label: () => 1,
      heightMm: (x, y) => 3 + 0.1 * x + 0.05 * y,
    });
    const turn = (deg * Math.PI) / 180;
    const [ux, uy] = [Math.cos(turn), Math.sin(turn)];
    const { slices, lengthMm } = section(frame, [-8 * ux, -8 * uy], [8 * ux, 8 * uy]);
    expect(lengthMm).toBeCloseTo(16, 9);
    for (const { fromMm, toMm, surfaceMm } of slices) {
      const s = (fromMm + toMm) / 2 - 8;
      // a cell tells the height at its middle, at most half a cell off each way, to 0.01 mm
      expect(Math.abs(surfaceMm - (3 + 0.1 * s * ux + 0.05 * s * uy))).toBeLessThan(0.125 * 0.15 + 0.0051);
    }
  });

  it('steps where the tile steps, at the cell edge', () => {
    const frame = sectionFrame({
      sizeMm: SIZE,
      cellMm: 0.5,
      label: () => 1,
      heightMm: (x) => (x < 3 ? 1 : 2.5),
    });
    const { slices } = section(frame, [-5, 0.25], [5, 0.25]);
    for (const { fromMm, toMm, surfaceMm } of slices)
      expect(surfaceMm).toBe((fromMm + toMm) / 2 - 5 < 3 ? 1 : 2.5);
    const step = slices.find(({ surfaceMm }) => surfaceMm === 2.5);
    expect(step?.fromMm).toBeCloseTo(8, 9);
  });

  it('is that of the one cell under a line without length, and nothing beside the grid', () => {
    const frame = halves(0);
    expect(section(frame, [2, 2], [2, 2]).slices).toMatchObject([{ surfaceMm: 2 }]);
    expect(section(frame, [400, 2], [402, 2]).slices.every(({ layers }) => layers.length === 0)).toBe(true);
  });
});

describe('joints', () => {
  const KINDS: readonly (readonly [number, JointKind])[] = [
    [FATE.undecided, 'undecided'],
    [FATE.fused, 'fused'],
    [FATE.ridge, 'ridge'],
    [FATE.lapped, 'lapped'],
    [FATE.dead, 'dead'],
    [VEILED, 'veiled'],
  ];

  it.each(KINDS)('tells %d as %s, once, where the line crosses it', (bits, kind) => {
    for (const [from, to, at] of [
      [[-6, 1], [6, 1], 6],
      [[4, -3], [-8, 5], 4 / Math.cos(Math.atan2(8, 12))],
    ] as const) {
      const { joints } = section(halves(bits), from, to);
      expect(joints).toHaveLength(1);
      expect(joints[0].kind).toBe(kind);
      expect(joints[0].atMm).toBeCloseTo(at, 6);
      expect([joints[0].before, joints[0].after]).toEqual(from[0] < 0 ? [1, 2] : [2, 1]);
    }
  });

  it('names the pieces, not the colours that have wandered across', () => {
    const frame = halves(FATE.fused, 0.25, { label: () => 1 });
    expect(section(frame, [-5, 0], [5, 0]).joints).toMatchObject([{ before: 1, after: 2 }]);
  });

  it('is one where the seam winds, and two where the line crosses it twice', () => {
    // a seam with teeth of one cell, run over lengthwise at a slant
    const cellMm = 0.25;
    const isFirst = (x: number, y: number): boolean => x < (Math.floor(y / cellMm) % 2 === 0 ? 0 : cellMm);
    const frame = sectionFrame({
      sizeMm: SIZE,
      cellMm,
      label: (x, y) => (isFirst(x, y) ? 1 : 2),
      heightMm: () => 2,
      seam: (x, y) => (Math.abs(x) < 3 * cellMm ? FATE.ridge | ((isFirst(x, y) ? 1 : 2) << 4) : 0),
    });
    const slant = section(frame, [-1, -3.9], [1, 3.9]);
    expect(slant.joints).toHaveLength(1);
    // the teeth's middle lies at x = cell / 2
    expect(Math.abs(slant.joints[0].atMm - (slant.lengthMm / 2) * (1 + cellMm / 2))).toBeLessThan(0.3);
    const bulge = sectionFrame({
      sizeMm: SIZE,
      cellMm,
      label: (x, y) => (Math.hypot(x, y) < 3 ? 1 : 2),
      heightMm: () => 2,
      seam: (x, y) => FATE.fused | ((Math.hypot(x, y) < 3 ? 1 : 2) << 4),
    });
    const twice = section(bulge, [-6, 0.1], [6, 0.1]).joints;
    expect(twice.map(({ atMm }) => Math.round(atMm))).toEqual([3, 9]);
    expect(twice.map(({ before, after }) => [before, after])).toEqual([
      [2, 1],
      [1, 2],
    ]);
  });

  it('measures a bare stretch on both sides of its line', () => {
    const frame = halves(FATE.dead, 0.25, {
      label: (x: number) => (x > -1 && x < 0.5 ? 255 : x < 0 ? 1 : 2),
    });
    const [joint] = section(frame, [-6, 0], [6, 0]).joints;
    expect([joint.fromMm, joint.toMm]).toEqual([5, 6.5]);
    expect(section(frame, [-6, 0], [6, 0]).slices.some(({ layers }) => layers[0].is === 'bare')).toBe(true);
  });

  it.each([0, 7, 30, -30])(
    'finds a dead seam along which tissue died before the rims had closed in, at %d degrees, wherever the line lies',
    (deg) => {
      // as a run leaves it: a slit of empty cells every second row, and seam cells only between them
      const cellMm = 0.25;
      const isSlit = (x: number, y: number): boolean =>
        x > 0 && x < cellMm && Math.floor(y / cellMm) % 2 === 0;
      const hasSeam = (x: number, y: number): boolean =>
        Math.abs(x) < 2 * cellMm && x > -cellMm && Math.floor(y / cellMm) % 2 !== 0 && x < cellMm;
      const frame = sectionFrame({
        sizeMm: SIZE,
        cellMm,
        label: (x, y) => (isSlit(x, y) ? 0 : Math.abs(x) < 0.75 ? 255 : x < 0 ? 1 : 2),
        heightMm: () => 2,
        seam: (x, y) => (hasSeam(x, y) ? FATE.dead | ((x < 0 ? 1 : 2) << 4) : 0),
      });
      const slope = Math.tan((deg * Math.PI) / 180);
      for (let y = -1; y < 1; y += 0.0625) {
        const { joints, lengthMm } = section(frame, [-6, y - 6 * slope], [6, y + 6 * slope]);
        expect(joints).toMatchObject([{ kind: 'dead', before: 1, after: 2 }]);
        const perMm = lengthMm / 12;
        // off by up to two cells; the bare stretch by up to one at each end
        expect(Math.abs(joints[0].atMm - 6 * perMm)).toBeLessThan(2 * cellMm * perMm);
        expect(Math.abs(joints[0].fromMm - 5.25 * perMm)).toBeLessThan(cellMm * perMm);
        expect(Math.abs(joints[0].toMm - 6.75 * perMm)).toBeLessThan(cellMm * perMm);
      }
    },
  );

  it('is dead where one side is bare, whatever the verdict there', () => {
    const frame = halves(FATE.fused, 0.25, { label: (x: number) => (x < 0 ? 1 : x < 1 ? 255 : 2) });
    expect(section(frame, [-5, 0], [5, 0]).joints).toMatchObject([{ kind: 'dead', fromMm: 5, toMm: 6 }]);
  });

  it('makes none of bare skeleton within one colony', () => {
    const frame = sectionFrame({
      sizeMm: SIZE,
      cellMm: 0.25,
      label: (x) => (Math.abs(x) < 1 ? 255 : 1),
      heightMm: () => 2,
    });
    expect(section(frame, [-5, 0], [5, 0]).joints).toEqual([]);
  });

  it('tells who covers, and how far the covered layer reaches under it', () => {
    const frame = halves(FATE.lapped, 0.25, {
      seam: (x: number) => (Math.abs(x) > 0.25 ? 0 : FATE.lapped | (x < 0 ? 8 | (1 << 4) : 2 << 4)),
      beneath: (x: number) => (x > -2.5 && x < 0 ? [[2, 1.25]] : []),
    });
    for (const [from, to] of [
      [
        [-6, 0],
        [6, 0],
      ],
      [
        [6, 0],
        [-6, 0],
      ],
    ] as const) {
      const { joints, slices } = section(frame, from, to);
      expect(joints).toHaveLength(1);
      expect(joints[0].covers).toBe(1);
      expect([joints[0].fromMm, joints[0].toMm]).toEqual(from[0] < 0 ? [3.5, 6] : [6, 8.5]);
      const over = slices.filter(({ layers }) => layers.length === 2);
      expect(over).toHaveLength(10);
      for (const { layers } of over)
        expect(layers).toEqual([
          { fromMm: 0, toMm: 1.25, variety: 2, is: 'covered' },
          { fromMm: 1.25, toMm: 2, variety: 1, is: 'living' },
        ]);
    }
  });
});

it.each(['a', 'c'])(
  'of the reading test, set %s, each seam that is asked about is cut as what it is',
  (set) => {
    for (const { plan, seed, month } of testTiles(set)) {
      for (const state of grow(compile({ ...plan, months: month }, 0.25), seed)) {
        if (state.day !== dayOfMonth(month)) continue;
        const frame = frameOf(state, month);
        for (const { is, from, to } of seamMarks(frame)) {
          const { joints, lengthMm } = section(frame, from, to);
          // a mark lies in the middle of its seam's cells, which a line at a slant crosses up to 1.5 mm off
          const near = joints.filter(({ atMm }) => Math.abs(atMm - lengthMm / 2) < 1.5);
          expect(near.map(({ kind }) => kind)).toEqual([is]);
        }
      }
    }
  },
);

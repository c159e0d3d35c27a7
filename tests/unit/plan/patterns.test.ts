import { describe, expect, it } from 'vitest';
import type { StepOf, Tile, Xy } from '../../../src/plan/plan';
import { arrange, ARRANGEMENTS, gridLines, stripeLines } from '../../../src/plan/patterns';
import { faceName, facesOfRecut } from '../../../src/plan/steps';
import { overlapArea } from '../../../src/units/overlap';
import { area, turnedAndShifted, type Polygon } from '../../../src/units/polygon';

const SQUARE: Tile = { shape: 'square', sizeMm: 40 };
const DISC: Tile = { shape: 'disc', sizeMm: 50 };

function recutOf(lines: Xy[][]): StepOf<'recut'> {
  return { id: 'r', day: 100, kind: 'recut', lines, kerfMm: 1, then: [] };
}

/** Outlines of all parts where they lie after the arrangement. */
function laid(tile: Tile, step: StepOf<'recut'>, placed: ReturnType<typeof arrange>): Polygon[] {
  return facesOfRecut(tile, step).map(({ rings, centroid: [x, y] }, k) => {
    const to = placed.find(({ piece }) => piece === faceName(step, k));
    const own = rings[0].map(([cx, cy]) => [cx - x, cy - y] as const);
    return turnedAndShifted(own, to?.turnDeg ?? 0, to?.at ?? [x, y]);
  });
}

describe('cut lines by rule', () => {
  it('a grid of 10 mm cuts a square tile of 40 mm into 16 squares of 100 mm2', () => {
    const faces = facesOfRecut(SQUARE, recutOf(gridLines(SQUARE, 10, 0)));
    expect(faces).toHaveLength(16);
    for (const { areaMm2 } of faces) expect(areaMm2).toBeCloseTo(100, 6);
  });

  it('a line goes through the place asked for, whatever the turn', () => {
    const through: Xy = [3, -4];
    for (const turnDeg of [0, 30, 90, -60])
      for (const lines of [
        stripeLines(SQUARE, 10, turnDeg, through),
        gridLines(SQUARE, 10, turnDeg, through),
      ]) {
        const off = ([[x1, y1], [x2, y2]]: Xy[]): number =>
          Math.abs((x2 - x1) * (through[1] - y1) - (y2 - y1) * (through[0] - x1)) /
          Math.hypot(x2 - x1, y2 - y1);
        expect(Math.min(...lines.map(off))).toBeLessThan(0.01);
      }
    expect(stripeLines(SQUARE, 10, 0, through).map(([[x]]) => x)).toEqual([-17, -7, 3, 13]);
  });

  it('stripes cross the whole tile, whatever their turn', () => {
    for (const turnDeg of [0, 17, 45, 90, 133])
      for (const tile of [SQUARE, DISC]) {
        const lines = stripeLines(tile, 8, turnDeg);
        expect(facesOfRecut(tile, recutOf(lines))).toHaveLength(lines.length + 1);
      }
  });
});

describe.each([
  ['a square tile in squares', SQUARE, gridLines(SQUARE, 10, 0)],
  ['a disc in squares', DISC, gridLines(DISC, 8, 0)],
  ['a turned grid', SQUARE, gridLines(SQUARE, 9, 30)],
  ['stripes', DISC, stripeLines(DISC, 7, 20)],
  [
    'one line',
    SQUARE,
    [
      [
        [0, -20],
        [0, 20],
      ],
    ] as Xy[][],
  ],
])('arrangements of %s', (_, tile, lines) => {
  const step = recutOf(lines);
  const faces = facesOfRecut(tile, step);
  const ask = { seed: 'w', gapMm: 0 };

  it.each(ARRANGEMENTS)('%s: each part once, none on another, none larger or smaller', (how) => {
    const placed = arrange(tile, step, how, ask);
    expect(new Set(placed.map(({ piece }) => piece)).size).toBe(placed.length);
    const outlines = laid(tile, step, placed);
    outlines.forEach((outline, k) => {
      expect(area(outline)).toBeCloseTo(area(faces[k].rings[0]), 3);
      for (const other of outlines.slice(k + 1)) expect(overlapArea(outline, other)).toBeLessThan(0.1);
    });
  });
});

describe('what the arrangements do', () => {
  const step = recutOf(gridLines(SQUARE, 10, 0));
  const ask = { seed: 'w', gapMm: 2 };
  const faces = facesOfRecut(SQUARE, step);
  /** Which part lies at each place, row by row. */
  const order = (how: (typeof ARRANGEMENTS)[number], seed = 'w'): number[] => {
    const placed = arrange(SQUARE, step, how, { ...ask, seed });
    return faces.map(({ centroid: [x, y] }, k) => {
      const here = placed.findIndex(({ at }) => Math.abs(at[0] - x) < 0.01 && Math.abs(at[1] - y) < 0.01);
      return here < 0 ? k : Number(placed[here].piece.split('.')[1]) - 1;
    });
  };

  it('alternate makes a chequer of two halves', () => {
    const isLeft = order('alternate').map((k) => faces[k].centroid[0] < 0);
    expect(isLeft.slice(0, 4)).toEqual([false, true, false, true]);
    expect(isLeft.slice(4, 8)).toEqual([true, false, true, false]);
  });

  it('halves swapped puts left on the right', () => {
    expect(order('halves swapped').every((k, at) => faces[k].centroid[0] * faces[at].centroid[0] < 0)).toBe(
      true,
    );
  });

  it('shuffle is one order for one word, and another for another', () => {
    expect(order('shuffle')).toEqual(order('shuffle'));
    expect(order('shuffle')).not.toEqual(order('shuffle', 'v'));
    expect([...order('shuffle')].sort((a, b) => a - b)).toEqual(faces.map((_, k) => k));
  });

  it('quarter turns turn every square in its place; spread sets neighbours the gap further apart', () => {
    expect(arrange(SQUARE, step, 'quarter turns', ask)).toHaveLength(16);
    const [first, second] = arrange(SQUARE, step, 'spread', ask);
    expect(second.at[0] - first.at[0]).toBeCloseTo(12, 3);
    expect(arrange(SQUARE, step, 'as cut', ask)).toEqual([]);
  });
});

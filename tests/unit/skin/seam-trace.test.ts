import { expect, test } from 'vitest';
import { BARE } from '../../../src/model/state';
import { traceSeams } from '../../../src/skin/seam-trace';
import type { SeamLine } from '../../../src/skin/seam-trace';
import { seamPaths, seamWords } from '../../../src/view/tile/seam-overlay';
import { seamFrame } from '../../fixtures/seam-frame';

const FUSED = 2;
const RIDGE = 3;
const LAPPED = 4;
const DEAD = 5;
const COVERS = 8;

function total(lines: readonly SeamLine[]): number {
  return lines.reduce((sum, line) => sum + line.lengthMm, 0);
}

// The true length of a straight line and of a circle is geometry; the ends of a band lose up to a mm each to thinning.
test.each([0, 7, 22.5, 45, 63, 90])(
  'a straight seam at %d degrees has its true length and no stairs',
  (degrees) => {
    const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const along = (x: number, y: number): number => x * c + y * s;
    const frame = seamFrame({
      sizeMm: 60,
      cellMm: 0.25,
      isFirst: (x, y) => y * c - x * s < 0.03,
      seamAt: (x, y) => (Math.abs(along(x, y)) < 20 ? RIDGE : 0),
    });
    const lines = traceSeams(frame);
    expect(lines.map(({ outcome }) => outcome)).toEqual(['ridge']);
    expect(total(lines)).toBeGreaterThan(38.5);
    expect(total(lines)).toBeLessThan(40.5);
    for (const [x, y] of lines[0].points) expect(Math.abs(y * c - x * s)).toBeLessThan(0.2);
  },
);

test.each([0.25, 0.5])('a round seam closes and has the length of its circle at cell %d', (cellMm) => {
  const frame = seamFrame({
    sizeMm: 50,
    cellMm,
    isFirst: (x, y) => x * x + y * y < 15 * 15,
    seamAt: () => FUSED,
  });
  const lines = traceSeams(frame);
  expect(lines).toHaveLength(1);
  expect(total(lines) / (2 * Math.PI * 15)).toBeGreaterThan(0.97);
  expect(total(lines) / (2 * Math.PI * 15)).toBeLessThan(1.02);
});

test('a change of outcome ends one line and begins the next at the same point', () => {
  const frame = seamFrame({
    sizeMm: 60,
    cellMm: 0.25,
    isFirst: (x) => x < 0.1,
    seamAt: (_, y) => (y < 5 ? FUSED : RIDGE),
  });
  const lines = traceSeams(frame);
  expect(lines.map(({ outcome }) => outcome).sort()).toEqual(['fused', 'ridge']);
  const fused = lines.find(({ outcome }) => outcome === 'fused');
  expect(fused?.lengthMm).toBeGreaterThan(33);
  expect(fused?.lengthMm).toBeLessThan(36.5);
});

test.each([
  ['both sides', -1],
  ['one side', 0],
] as const)('where a dead stretch has bared %s of a fused one beside it, the line is dead', (_, fromMm) => {
  const frame = seamFrame({
    sizeMm: 60,
    cellMm: 0.25,
    isFirst: (x) => x < 0,
    seamAt: (_x, y) => (y < 10 ? FUSED : DEAD),
  });
  // skeleton is bare 5 mm past the end of the dead stretch
  const at = (k: number): number => (k - (frame.columns - 1) / 2) * frame.cellMm;
  frame.label.forEach((label, i) => {
    const [x, y] = [at(i % frame.columns), at(Math.floor(i / frame.columns))];
    if (label !== 0 && y > 5 && x > fromMm && x < 1) frame.label[i] = BARE;
  });
  const lines = traceSeams(frame);
  expect(lines.map(({ outcome }) => outcome).sort()).toEqual(['dead', 'fused']);
  const dead = lines.find(({ outcome }) => outcome === 'dead');
  // from y = 5 to the tile's edge at 30, but for up to a mm of a band's end
  expect(dead?.lengthMm).toBeGreaterThan(23.5);
  expect(dead?.lengthMm).toBeLessThan(25.5);
});

test('three seams that meet are three lines, without stubs', () => {
  const frame = seamFrame({
    sizeMm: 40,
    cellMm: 0.25,
    isFirst: (x, y) => (y < 0 ? x < 0 : false),
    seamAt: () => RIDGE,
  });
  // The first side is one quarter: its border is one bent line.
  expect(traceSeams(frame)).toHaveLength(1);
});

test.each([1, -1])('ticks of a lapped seam stand on the covered side (%d)', (side) => {
  const frame = seamFrame({
    sizeMm: 40,
    cellMm: 0.25,
    isFirst: (x) => x < 0.1,
    seamAt: (_x, _y, first) => LAPPED | (first === side > 0 ? COVERS : 0),
  });
  const [line] = traceSeams(frame);
  const [path] = seamPaths([line], ([x, y]) => [x * 10, y * 10]);
  // Ticks are the parts of two points after the line itself; each ends on the side that is covered.
  const ticks = path.shape.split('M').slice(2);
  expect(ticks.length).toBeGreaterThan(20);
  for (const tick of ticks) {
    const [from, to] = tick.split('L').map((point) => Number(point.split(' ')[0]));
    expect(Math.sign(to - from)).toBe(side);
  }
});

test('no seam, no line', () => {
  const frame = seamFrame({ sizeMm: 20, cellMm: 0.5, isFirst: () => true, seamAt: () => FUSED });
  expect(traceSeams(frame)).toEqual([]);
});

test('a seam is named once, on the canvas, beside the line', () => {
  const frame = seamFrame({
    sizeMm: 40,
    cellMm: 0.25,
    isFirst: (x) => x < 0.1,
    seamAt: (_, y) => (Math.abs(y) < 1 ? RIDGE : FUSED),
  });
  const words = seamWords(traceSeams(frame), ([x, y]) => [x * 10 + 200, y * 10 + 200], 400, 400);
  expect(words.map((word) => word.words)).toEqual(['fused']);
  expect(Math.abs(words[0].px[0] - 200)).toBeGreaterThan(words[0].widthPx / 2);
});

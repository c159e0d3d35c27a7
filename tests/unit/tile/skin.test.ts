import { expect, test } from 'vitest';
import { lightFrom } from '../../../src/skin/relief';
import { Skin } from '../../../src/skin/skin';
import { seamFrame } from '../../fixtures/seam-frame';
import { syntheticFrame } from '../../fixtures/synthetic-frame';

const TILE = { shape: 'square', sizeMm: 40 } as const;

/** A byte field between cells, as the graphics card reads it. */
function between(field: Uint8Array, skin: Skin, channel: number, xMm: number, yMm: number): number {
  const fx = xMm / skin.cellMm + (skin.columns - 1) / 2;
  const fy = yMm / skin.cellMm + (skin.rows - 1) / 2;
  const [c, r] = [Math.floor(fx), Math.floor(fy)];
  const at = (column: number, row: number): number => field[(row * skin.columns + column) * 4 + channel];
  const above = at(c, r) * (1 - fx + c) + at(c + 1, r) * (fx - c);
  const below = at(c, r + 1) * (1 - fx + c) + at(c + 1, r + 1) * (fx - c);
  return above * (1 - fy + r) + below * (fy - r);
}

test.each([3, 20, 45, 70])(
  'the border of two labels at %d degrees is drawn within 0.14 mm of the true line',
  (degrees) => {
    const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const frame = seamFrame({
      sizeMm: 40,
      cellMm: 0.25,
      isFirst: (x, y) => y * c - x * s < 0,
      seamAt: () => 2,
    });
    const skin = new Skin(frame, TILE);
    skin.fill(frame, 225);
    for (let along = -12; along <= 12; along += 0.05) {
      const share = (off: number): number =>
        between(skin.first, skin, 0, along * c - off * s, along * s + off * c) -
        between(skin.first, skin, 1, along * c - off * s, along * s + off * c);
      expect(share(-0.14)).toBeGreaterThan(0);
      expect(share(0.14)).toBeLessThan(0);
    }
  },
);

test('the shares of all labels at a cell add up to one', () => {
  const { frame } = syntheticFrame(0.5, 6, 70);
  const skin = new Skin(frame, { shape: 'square', sizeMm: 70 });
  skin.fill(frame, 225);
  for (let i = 0; i < frame.label.length; i++) {
    let sum = skin.surface[i * 4] + skin.surface[i * 4 + 1];
    for (let k = 0; k < 4; k++) sum += skin.first[i * 4 + k] + skin.second[i * 4 + k];
    expect(Math.abs(sum - 255)).toBeLessThanOrEqual(5);
  }
});

test('tissue that reaches the edge of the tile is not worn away there', () => {
  const frame = seamFrame({ sizeMm: 40, cellMm: 0.5, isFirst: () => true, seamAt: () => 0 });
  const skin = new Skin(frame, TILE);
  skin.fill(frame, 225);
  expect(Math.max(...skin.surface.filter((_, k) => k % 4 === 0))).toBe(0);
});

test('a wall is lit on the side of the light, shades the ground behind it, and both turn with the light', () => {
  const frame = seamFrame({ sizeMm: 40, cellMm: 0.25, isFirst: () => true, seamAt: () => 0 });
  const height = frame.height.map((_, i) =>
    Math.abs((i % frame.columns) - (frame.columns - 1) / 2) < 3 ? 400 : 200,
  );
  const skin = new Skin(frame, TILE);
  skin.fill({ ...frame, height }, 180);
  const [left, right] = [-1.6, 1.6].map((x) => between(skin.relief, skin, 2, x, 0));
  expect(left).toBeGreaterThan(250);
  expect(right).toBeLessThan(60);
  skin.light(0);
  expect(between(skin.relief, skin, 2, -1.6, 0)).toBeLessThan(60);
  expect(between(skin.relief, skin, 2, 1.6, 0)).toBeGreaterThan(250);
  // 2 mm of wall under a light that rises 0.85 mm a mm: the shade ends 2 / 0.85 = 2.35 mm behind it.
  expect(between(skin.relief, skin, 2, -0.75 - 2.9, 0)).toBeGreaterThan(250);
  expect(lightFrom(0).rise).toBe(0.85);
});

test('a very large tile is read at every other cell and stays in place', () => {
  const frame = seamFrame({ sizeMm: 210, cellMm: 0.25, isFirst: (x) => x < 20, seamAt: () => 2 });
  const skin = new Skin(frame, { shape: 'square', sizeMm: 210 });
  expect(skin.columns * skin.cellMm).toBe(frame.columns * frame.cellMm);
  expect(skin.cellMm).toBe(0.5);
  expect(skin.fits(frame)).toBe(true);
  skin.fill(frame, 225);
  const lead = (x: number): number => between(skin.first, skin, 0, x, 0) - between(skin.first, skin, 1, x, 0);
  expect(lead(19.6)).toBeGreaterThan(0);
  expect(lead(20.4)).toBeLessThan(0);
});

import { expect, test } from 'vitest';
import { fitCamera, panBy, toMm, toPx, within, zoomAbout } from '../../../src/view/tile/camera';
import { scaleBarMm } from '../../../src/view/tile/scale-bar';

const size = { width: 560, height: 480 };
const tile = { shape: 'square', sizeMm: 100 } as const;

test('the whole tile fits the shorter side', () => {
  const camera = fitCamera(size, tile);
  const [left, top] = toPx(camera, size, [-50, -50]);
  expect(top).toBeGreaterThanOrEqual(0);
  expect(left).toBeGreaterThan(top);
  expect(toPx(camera, size, [0, 0])).toEqual([280, 240]);
});

test('mm to pixels and back is the same place', () => {
  const camera = { xMm: 12.5, yMm: -3, pxPerMm: 7.3 };
  const [x, y] = toMm(camera, size, ...toPx(camera, size, [3.25, 41]));
  expect(x).toBeCloseTo(3.25, 9);
  expect(y).toBeCloseTo(41, 9);
});

test('zooming keeps the place under the pointer', () => {
  const camera = fitCamera(size, tile);
  const before = toMm(camera, size, 300, 260);
  const after = toMm(zoomAbout(camera, size, tile, 300, 260, 3), size, 300, 260);
  expect(after[0]).toBeCloseTo(before[0], 9);
  expect(after[1]).toBeCloseTo(before[1], 9);
});

test('zoom ends at the whole tile and at 60 px a mm', () => {
  const fit = fitCamera(size, tile);
  expect(zoomAbout(fit, size, tile, 0, 0, 1e-6)).toEqual(fit);
  expect(zoomAbout(fit, size, tile, 0, 0, 1e6).pxPerMm).toBe(60);
  const near = zoomAbout(fit, size, tile, 400, 400, 8);
  expect(zoomAbout(near, size, tile, 10, 10, 1e-6)).toEqual(fit);
});

test('the whole tile cannot be moved; a larger one covers the frame to its edges', () => {
  const fit = fitCamera(size, tile);
  expect(panBy(fit, size, tile, 300, -300)).toEqual(fit);
  const near = zoomAbout(fit, size, tile, 280, 240, 4);
  for (const [dx, dy] of [
    [1e6, 1e6],
    [-1e6, -1e6],
  ]) {
    const [left, top] = toPx(panBy(near, size, tile, dx, dy), size, [-50, -50]);
    const [right, bottom] = toPx(panBy(near, size, tile, dx, dy), size, [50, 50]);
    // A margin of 8 px shows where the tile ends.
    expect(Math.max(left, top)).toBeLessThanOrEqual(8 + 1e-9);
    expect(right).toBeGreaterThanOrEqual(size.width - 8 - 1e-9);
    expect(bottom).toBeGreaterThanOrEqual(size.height - 8 - 1e-9);
  }
});

test('a tile that is larger than the frame one way only stays in its middle the other way', () => {
  const near = zoomAbout(fitCamera(size, tile), size, tile, 280, 240, 1.1);
  const panned = panBy(near, size, tile, 50, 50);
  expect(panned.xMm).toBe(0);
  expect(panned.yMm).toBeLessThan(0);
});

test('in another frame a look is held to the same bounds', () => {
  const near = zoomAbout(fitCamera(size, tile), size, tile, 0, 0, 1.2);
  const wide = { width: 1200, height: 1200 };
  expect(within(near, wide, tile)).toEqual(fitCamera(wide, tile));
});

test('the scale bar is a round length of at most a quarter of the width', () => {
  expect(scaleBarMm(560, 5.6)).toBe(20);
  expect(scaleBarMm(560, 60)).toBe(2);
  expect(scaleBarMm(390, 1.3)).toBe(50);
});

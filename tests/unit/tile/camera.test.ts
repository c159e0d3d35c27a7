import { expect, test } from 'vitest';
import { fitCamera, panBy, toMm, toPx, zoomAbout } from '../../../src/view/tile/camera';
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

test('zoom ends at half the fit and at 60 px a mm; the middle never leaves the tile', () => {
  const fit = fitCamera(size, tile);
  expect(zoomAbout(fit, size, tile, 0, 0, 1e-6).pxPerMm).toBeCloseTo(fit.pxPerMm / 2);
  expect(zoomAbout(fit, size, tile, 0, 0, 1e6).pxPerMm).toBe(60);
  expect(panBy(fit, tile, 1e6, -1e6)).toMatchObject({ xMm: -50, yMm: 50 });
});

test('the scale bar is a round length of at most a quarter of the width', () => {
  expect(scaleBarMm(560, 5.6)).toBe(20);
  expect(scaleBarMm(560, 60)).toBe(2);
  expect(scaleBarMm(390, 1.3)).toBe(50);
});

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Easel } from '../../../src/picture/easel';
import type { Scene } from '../../../src/picture/scene';

const SCENE: Scene = {
  tile: { shape: 'square', sizeMm: 20 },
  varieties: [],
  camera: { xMm: 0, yMm: 0, pxPerMm: 5 },
  lightDeg: 225,
  widthPx: 100,
  heightPx: 100,
  pixelRatio: 2,
};

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** An easel on a picture that takes so long to draw with all its pixels; ratios it was drawn at. */
function easelThatTakes(sharpMs: number): { easel: Easel; ratios: number[] } {
  const ratios: number[] = [];
  const nothing = (): void => undefined;
  const picture = {
    turnLight: nothing,
    show: nothing,
    look: nothing,
    destroy: nothing,
    resize: (_width: number, _height: number, ratio: number) => void ratios.push(ratio),
    draw: () => void vi.advanceTimersByTime(sharpMs * (ratios[ratios.length - 1] / SCENE.pixelRatio) ** 2),
  };
  return { easel: new Easel(picture), ratios };
}

test('slow graphics draw fewer pixels while scenes follow fast, and all of them at rest', () => {
  const { easel, ratios } = easelThatTakes(60);
  easel.show(SCENE);
  vi.advanceTimersByTime(16);
  easel.show(SCENE);
  vi.advanceTimersByTime(16);
  easel.show(SCENE);
  expect(ratios[0]).toBe(2);
  // 14 ms of 60: the square root of the share, along each side
  expect(ratios.slice(1)).toHaveLength(2);
  for (const ratio of ratios.slice(1)) expect(ratio).toBeCloseTo(2 * Math.sqrt(14 / 60), 1);
  vi.advanceTimersByTime(1000);
  expect(ratios.slice(3)).toEqual([2]);
});

test('fast graphics, and single steps on slow ones, are always sharp', () => {
  const fast = easelThatTakes(4);
  const slow = easelThatTakes(60);
  for (let k = 0; k < 4; k++) {
    fast.easel.show(SCENE);
    vi.advanceTimersByTime(16);
  }
  for (let k = 0; k < 4; k++) {
    slow.easel.show(SCENE);
    vi.advanceTimersByTime(800);
  }
  expect([...fast.ratios, ...slow.ratios]).toEqual(Array(8).fill(2));
});

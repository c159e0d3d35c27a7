import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Easel } from '../../../src/picture/easel';
import type { Picture } from '../../../src/picture/picture';
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

/** An easel on a picture that takes so long with all its pixels until it is on screen. */
function easelThatTakes(sharpMs: number): {
  easel: Easel;
  ratios: number[];
  coarse: boolean[];
  grains: () => number;
} {
  const ratios: number[] = [];
  const coarse: boolean[] = [];
  const nothing = (): void => undefined;
  let grains = 0;
  const picture = {
    show: (...[, , , , isCoarse]: Parameters<Picture['show']>) => void coarse.push(isCoarse),
    look: nothing,
    destroy: nothing,
    draw: nothing,
    addGrain: () => {
      grains++;
    },
    resize: (_width: number, _height: number, ratio: number) => void ratios.push(ratio),
  };
  const onScreen = (): Promise<void> => {
    const share = (ratios[ratios.length - 1] / SCENE.pixelRatio) ** 2;
    return new Promise((resolve) => setTimeout(resolve, sharpMs * share));
  };
  return { easel: new Easel(picture, onScreen), ratios, coarse, grains: () => grains };
}

/** Scenes one after the other, so long after each has been shown. */
async function shown(easel: Easel, pausesMs: readonly number[]): Promise<void> {
  for (const pauseMs of pausesMs) {
    const done = easel.show(SCENE);
    await vi.advanceTimersByTimeAsync(300);
    await done;
    await vi.advanceTimersByTimeAsync(pauseMs);
  }
}

async function follow(easel: Easel, count: number): Promise<void> {
  for (let k = 0; k < count; k++) {
    let isDone = false;
    void easel.show(SCENE).then(() => (isDone = true));
    while (!isDone) await vi.advanceTimersByTimeAsync(1);
    await vi.advanceTimersByTimeAsync(10);
  }
}

test('slow graphics draw fewer pixels while scenes follow fast, and all of them at rest', async () => {
  const { easel, ratios } = easelThatTakes(200);
  await shown(easel, [1000]);
  expect(new Set(ratios)).toEqual(new Set([2]));
  const before = ratios.length;
  await shown(easel, [0]);
  await follow(easel, 3);
  // 20 ms of 200: the square root of the share, along each side; never under 0.35
  for (const ratio of ratios.slice(before + 1)) expect(ratio).toBeCloseTo(2 * 0.35, 1);
  await vi.advanceTimersByTimeAsync(1000);
  expect(ratios.at(-1)).toBe(2);
});

test('fast graphics, and single steps on slow ones, are always sharp', async () => {
  const fast = easelThatTakes(9);
  const slow = easelThatTakes(90);
  await follow(fast.easel, 6);
  await shown(slow.easel, [800, 800, 800]);
  expect(new Set([...fast.ratios, ...slow.ratios])).toEqual(new Set([2]));
});

test('the grain comes once, after the first drawing', async () => {
  const { easel, ratios, grains } = easelThatTakes(5);
  let isDone = false;
  void easel.show(SCENE).then(() => (isDone = true));
  while (!isDone) {
    expect(grains()).toBe(0);
    await vi.advanceTimersByTimeAsync(1);
  }
  await vi.advanceTimersByTimeAsync(100);
  expect(grains()).toBe(1);
  expect(ratios).toHaveLength(2);
  await shown(easel, [500]);
  expect(grains()).toBe(1);
});

test('the first picture is made from fewer cells, and from all of them at once after', async () => {
  const { easel, coarse } = easelThatTakes(5);
  await shown(easel, [500, 500]);
  expect(coarse).toEqual([true, false, false]);
});

test('nothing is drawn once it is closed, not even what was waiting', async () => {
  const { easel, ratios, grains } = easelThatTakes(50);
  const done = easel.show(SCENE);
  easel.close();
  await vi.advanceTimersByTimeAsync(1000);
  await done;
  await easel.redraw();
  expect(ratios).toHaveLength(1);
  expect(grains()).toBe(0);
});

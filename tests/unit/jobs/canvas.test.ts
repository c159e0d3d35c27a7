import { expect, test, vi } from 'vitest';
import { Canvas } from '../../../src/jobs/canvas';
import type { Drawn, Grown, Scene } from '../../../src/picture/scene';
import type { SeamLine } from '../../../src/skin/seam-trace';
import { syntheticFrame } from '../../fixtures/synthetic-frame';

const scene = (lightDeg: number): Scene => ({
  tile: { shape: 'square', sizeMm: 20 },
  varieties: [],
  camera: { xMm: 0, yMm: 0, pxPerMm: 5 },
  lightDeg,
  widthPx: 100,
  heightPx: 100,
  pixelRatio: 1,
});

const LINE: SeamLine = { outcome: 'fused', points: [], lengthMm: 4, covered: 1 };

interface Shown {
  lightDeg: number;
  grown: Grown | undefined;
  done: () => void;
}

function bench(opens: () => Promise<void> = () => Promise.resolve()) {
  const shown: Shown[] = [];
  const easels = {
    open: vi.fn(opens),
    show: (_id: number, { lightDeg }: Scene, grown?: Grown) =>
      new Promise<void>((done) => shown.push({ lightDeg, grown, done })),
    seams: vi.fn(() => Promise.resolve([LINE])),
    close: () => Promise.resolve(),
  };
  const element = {
    setAttribute: () => undefined,
    transferControlToOffscreen: () => ({}),
    remove: () => undefined,
  };
  const canvas = new Canvas(() => easels, element as unknown as HTMLCanvasElement);
  return { canvas, shown, seams: easels.seams };
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

test('one scene is on its way; of those asked for meanwhile only the newest is drawn', async () => {
  const { canvas, shown } = bench();
  const grown = { frame: null, sites: null };
  for (let deg = 0; deg < 5; deg++) canvas.show(scene(deg), grown);
  await settled();
  expect(shown.map(({ lightDeg }) => lightDeg)).toEqual([4]);
  for (let deg = 5; deg < 9; deg++) canvas.show(scene(deg), grown);
  await settled();
  expect(shown.map(({ lightDeg }) => lightDeg)).toEqual([4]);
  shown[0].done();
  await settled();
  expect(shown.map(({ lightDeg }) => lightDeg)).toEqual([4, 8]);
});

test('a frame crosses once, however often it is lit anew; its seams are traced once', async () => {
  const { canvas, shown, seams } = bench();
  const { frame } = syntheticFrame(0.5, 2, 20);
  const drawn: Drawn[] = [];
  canvas.follow(
    () => undefined,
    (one) => drawn.push(one),
  );
  for (const [deg, grown] of [
    [0, { frame, sites: null }],
    [10, { frame, sites: null }],
    [20, { frame: null, sites: null }],
    [30, { frame, sites: null }],
  ] as const) {
    canvas.show(scene(deg), grown);
    await settled();
    shown.at(-1)?.done();
    await settled();
  }
  expect(shown.map((one) => one.grown)).toEqual([
    { frame, sites: null },
    undefined,
    { frame: null, sites: null },
    { frame, sites: null },
  ]);
  expect(seams).toHaveBeenCalledTimes(1);
  expect(drawn).toEqual([
    { frame, seams: [LINE] },
    { frame: null, seams: [] },
    { frame, seams: [LINE] },
  ]);
});

test('a browser without graphics in workers is told of, though nobody listened yet, and nothing is sent', async () => {
  const { canvas, shown } = bench(() => Promise.reject(new Error('no WebGL')));
  canvas.show(scene(0), { frame: null, sites: null });
  await settled();
  const heard: string[] = [];
  canvas.follow(
    (news) => heard.push(news),
    () => undefined,
  );
  expect(heard).toEqual(['no-graphics']);
  expect(shown).toEqual([]);
});

test('where no worker can be made the page hears that nothing can be drawn', async () => {
  const element = { setAttribute: () => undefined, remove: () => undefined };
  const canvas = new Canvas(
    () => {
      throw new Error('refused');
    },
    element as unknown as HTMLCanvasElement,
  );
  const heard: string[] = [];
  canvas.follow(
    (news) => heard.push(news),
    () => undefined,
  );
  canvas.show(scene(0), { frame: null, sites: null });
  await settled();
  expect(heard).toEqual(['no-graphics']);
  canvas.close();
});

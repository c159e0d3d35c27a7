/** A month of the largest tile takes longer than 100 ms to draw and measure: a cancel is heard within it, not after. */
import { proxy, wrap } from 'comlink';
import { afterEach, expect, it, vi } from 'vitest';
import type { EngineWorker, Sink } from '../../../workers/protocol';
import { testLine } from '../../fixtures/engine-line';
import { smallPlan } from '../../fixtures/small-plan';

const CANCELLED_MONTH = 2;
const work = vi.hoisted(() => ({ begun: (_what: string, _month: number): void => undefined }));

// Node hears one port a thousand times before it turns to the next; a browser takes messages as they come.
vi.mock(import('../../../workers/pace'), () => ({
  breathe: () => new Promise<void>((resolve) => setImmediate(resolve)),
}));

vi.mock(import('../../../src/model/frame'), async (load) => {
  const real = await load();
  return {
    ...real,
    *frameBySteps(state, month) {
      work.begun('frame', month);
      return yield* real.frameBySteps(state, month);
    },
  };
});

vi.mock(import('../../../src/measure/read'), async (load) => {
  const real = await load();
  return {
    ...real,
    *readBySteps(state, ids, seed, month) {
      work.begun('reading', month);
      return yield* real.readBySteps(state, ids, seed, month);
    },
  };
});

const ended: (() => void)[] = [];
afterEach(() => ended.splice(0).forEach((end) => end()));

it.each([
  ['frame', ['frame']],
  ['reading', ['frame', 'reading']],
])('a cancel while the %s of a month is made ends the run before that month is sent', async (at, done) => {
  const line = testLine();
  ended.push(() => line.end());
  const engine = wrap<EngineWorker>(line.endpoint);
  const sent: number[] = [];
  const begun: string[] = [];
  work.begun = (what, month) => {
    if (month < CANCELLED_MONTH) return;
    begun.push(what);
    if (what === at) void engine.cancel(1);
  };
  const sink: Sink = {
    polyps: () => undefined,
    month: (_id, _frame, reading) => void sent.push(reading.month),
    alive: () => undefined,
  };
  const ask = { id: 1, plan: smallPlan({ months: 4 }), seed: 'one', cellMm: 0.5, frames: true };
  expect(await engine.grow(ask, proxy(sink))).toBe('cancelled');
  expect(begun).toEqual(done);
  expect(sent).toEqual([0, 1]);
});

it('rests at the month on screen until the page has answered for it', async () => {
  const line = testLine();
  ended.push(() => line.end());
  const engine = wrap<EngineWorker>(line.endpoint);
  const heard: number[] = [];
  let answer = (): void => undefined;
  const sink: Sink = {
    polyps: () => undefined,
    month: (_id, _frame, reading) => {
      heard.push(reading.month);
      return reading.month === 1 ? new Promise<void>((resolve) => (answer = resolve)) : undefined;
    },
    alive: () => undefined,
  };
  const ask = { id: 1, plan: smallPlan({ months: 4 }), seed: 'one', cellMm: 0.5, frames: true, month: 1 };
  const run = engine.grow(ask, proxy(sink));
  await vi.waitFor(() => expect(heard).toEqual([0, 1]));
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect(heard).toEqual([0, 1]);
  answer();
  expect(await run).toBe('whole');
  expect(heard).toEqual([0, 1, 2, 3, 4]);
});

import { describe, expect, it } from 'vitest';
import { frameBudget, FrameStore } from '../../../src/jobs/frame-store';
import type { Reading } from '../../../src/measure/reading';
import type { Frame } from '../../../src/model/frame';
import { nothingBeneath } from '../../../src/model/layers';

const CELLS = 100;
const FRAME_BYTES = 5 * CELLS;

function frame(month: number): Frame {
  return {
    month,
    columns: 10,
    rows: 10,
    cellMm: 0.5,
    label: new Uint8Array(CELLS),
    seam: new Uint8Array(CELLS),
    age: new Uint8Array(CELLS),
    height: new Uint16Array(CELLS),
    beneath: nothingBeneath(),
  };
}

const reading = (month: number) => ({ month }) as Reading;

function fill(store: FrameStore, key: string, months: number, monthShown = 0): void {
  store.begin(key, 0.5);
  for (let month = 0; month <= months; month++) store.addMonth(key, frame(month), reading(month), monthShown);
  store.finish(key);
}

const kept = (store: FrameStore, key: string) =>
  store.whole(key)?.frames.flatMap((entry) => (entry ? [entry.month] : []));

describe('frame store', () => {
  it('gives back a run only when it is whole', () => {
    const store = new FrameStore(100 * FRAME_BYTES);
    store.begin('a', 0.5);
    store.addMonth('a', frame(0), reading(0), 0);
    expect(store.whole('a')).toBeNull();
    store.finish('a');
    expect(store.whole('a')?.readings).toHaveLength(1);
    expect(store.whole('b')).toBeNull();
  });

  it('lets the run used longest ago go first', () => {
    const store = new FrameStore(12 * FRAME_BYTES);
    fill(store, 'a', 3);
    fill(store, 'b', 3);
    store.whole('a');
    fill(store, 'c', 5);
    expect(store.whole('b')).toBeNull();
    expect(kept(store, 'a')).toEqual([0, 1, 2, 3]);
    expect(kept(store, 'c')).toEqual([0, 1, 2, 3, 4, 5]);
    expect(store.bytes).toBeLessThanOrEqual(12 * FRAME_BYTES);
  });

  it.each([
    { budget: 8, months: [0, 2, 4, 6, 7, 8, 10, 12] },
    { budget: 6, months: [0, 4, 7, 8, 11, 12] },
  ])('then lets odd months go, then more, never the one on screen: $budget frames', ({ budget, months }) => {
    const store = new FrameStore(budget * FRAME_BYTES);
    fill(store, 'a', 12, 7);
    expect(kept(store, 'a')).toEqual(months);
    expect(store.whole('a')?.readings).toHaveLength(13);
    expect(store.bytes).toBeLessThanOrEqual(budget * FRAME_BYTES);
  });

  it('halves its budget on machines that report 4 GB or less', () => {
    expect(frameBudget(4)).toBe(frameBudget(8) / 2);
    expect(frameBudget(undefined)).toBe(frameBudget(8));
  });
});

import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Autosave, type Trouble } from '../../../src/keep/autosave';
import type { AsideRecord, BenchRecord, Shelf } from '../../../src/keep/database';
import { planText } from '../../../src/plan/file';
import { smallPlan } from '../../fixtures/small-plan';

const plan = smallPlan({ months: 12 });
const bench = { plan, seed: 'seven', month: 4 };

/** A shelf in memory that can be made to refuse. */
function shelfOf(stored?: unknown) {
  const shelf = {
    stored,
    aside: [] as AsideRecord[],
    writes: 0,
    refuses: null as string | null,
  };
  const open = (): Promise<Shelf> =>
    Promise.resolve({
      readBench: () => Promise.resolve(shelf.stored),
      writeBench: (record: BenchRecord) => {
        if (shelf.refuses) return Promise.reject(new DOMException('no', shelf.refuses));
        shelf.stored = record;
        shelf.writes++;
        return Promise.resolve();
      },
      moveAside: (aside) => {
        shelf.aside.push(aside);
        shelf.stored = undefined;
        return Promise.resolve();
      },
    });
  return { shelf, open };
}

function saving(open: () => Promise<Shelf>) {
  const told: Trouble[] = [];
  return { told, autosave: new Autosave(open, (trouble) => told.push(trouble), undefined) };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('autosave', () => {
  it('writes half a second after the last change, once', async () => {
    const { shelf, open } = shelfOf();
    const { autosave } = saving(open);
    expect(await autosave.start()).toBeNull();
    for (const month of [1, 2, 3]) {
      autosave.note({ ...bench, month });
      await vi.advanceTimersByTimeAsync(400);
    }
    expect(shelf.writes).toBe(0);
    await vi.advanceTimersByTimeAsync(100);
    expect(shelf.writes).toBe(1);
    expect(shelf.stored).toMatchObject({ month: 3, seed: 'seven' });
  });

  it('gives back what was written', async () => {
    const { open } = shelfOf();
    const first = saving(open).autosave;
    await first.start();
    first.note(bench);
    await first.flush();
    expect(await saving(open).autosave.start()).toEqual(bench);
  });

  it('writes nothing where nothing has changed', async () => {
    const { shelf, open } = shelfOf();
    const { autosave } = saving(open);
    await autosave.start();
    await autosave.flush();
    expect(shelf.writes).toBe(0);
  });

  it.each([
    ['a shape of the future', { shape: 2, planText: planText(plan), seed: 'a', month: 0 }],
    ['a plan of the future', { shape: 1, planText: '{"seambench":99}', seed: 'a', month: 0 }],
    ['a plan cut short', { shape: 1, planText: planText(plan).slice(0, 80), seed: 'a', month: 0 }],
    ['something else', 17],
  ])('moves %s aside untouched and says so', async (_, record) => {
    const { shelf, open } = shelfOf(record);
    const { autosave, told } = saving(open);
    expect(await autosave.start()).toBeNull();
    expect(shelf.aside).toHaveLength(1);
    expect(shelf.aside[0].record).toBe(record);
    expect(told.some((trouble) => trouble.kind === 'aside')).toBe(true);
  });

  it.each([
    ['QuotaExceededError', 'full'],
    ['InvalidStateError', 'blocked'],
  ])('keeps the work in memory after %s, tells once, tries again after 10 s', async (name, kind) => {
    const { shelf, open } = shelfOf();
    const { autosave, told } = saving(open);
    await autosave.start();
    shelf.refuses = name;
    autosave.note(bench);
    await vi.advanceTimersByTimeAsync(500);
    await vi.advanceTimersByTimeAsync(10_000);
    expect(told.filter((trouble) => trouble.kind === kind)).toHaveLength(1);
    expect(shelf.writes).toBe(0);

    shelf.refuses = null;
    await vi.advanceTimersByTimeAsync(10_000);
    expect(shelf.writes).toBe(1);
    expect(told.at(-1)?.kind).toBe('saved-again');
  });

  it('says that storage is blocked where it cannot even be opened', async () => {
    const { autosave, told } = saving(() => Promise.reject(new DOMException('no', 'SecurityError')));
    expect(await autosave.start()).toBeNull();
    expect(told.map((trouble) => trouble.kind)).toEqual(['blocked']);
  });
});

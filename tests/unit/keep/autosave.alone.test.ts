import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Autosave, type Trouble } from '../../../src/keep/autosave';
import { BENCH_KIND, type Bench } from '../../../src/keep/bench-record';
import type { AsideRecord, Drawer } from '../../../src/keep/database';
import { EMPTY_BENCH } from '../../../src/plan/bench';
import { planText } from '../../../src/plan/file';
import { testLocks } from '../../fixtures/locks';
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
    refusesToRead: false,
    refusesToMove: false,
  };
  const open = (): Promise<Drawer> =>
    Promise.resolve({
      read: () => (shelf.refusesToRead ? Promise.reject(new Error('busy')) : Promise.resolve(shelf.stored)),
      write: (record) => {
        if (shelf.refuses) return Promise.reject(new DOMException('no', shelf.refuses));
        shelf.stored = record;
        shelf.writes++;
        return Promise.resolve();
      },
      moveAside: (aside) => {
        if (shelf.refusesToMove) return Promise.reject(new Error('busy'));
        shelf.aside.push(aside);
        shelf.stored = undefined;
        return Promise.resolve();
      },
    });
  return { shelf, open };
}

function saving(open: () => Promise<Drawer>, locks?: LockManager) {
  const told: Trouble<Bench>[] = [];
  const kinds = (): string[] => told.map(({ kind }) => kind);
  return { told, kinds, autosave: new Autosave(open, BENCH_KIND, (trouble) => told.push(trouble), locks) };
}

const work = (name: string) => ({ ...bench, plan: { ...plan, name } });
const record = (name: string) => ({
  shape: 1,
  planText: planText(work(name).plan),
  seed: 'seven',
  month: 4,
});

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

  it('gives back the tiles beside the plan, and puts aside what cannot be read of them', async () => {
    const { shelf, open } = shelfOf();
    const first = saving(open).autosave;
    await first.start();
    const tiles = { ...EMPTY_BENCH, tiles: [{ id: 't1', name: 'First', plan, seed: 'seven' }] };
    const whole = { ...bench, rest: { tiles, at: { tile: 't1', branch: null } } };
    first.note(whole);
    await first.flush();
    expect(await saving(open).autosave.start()).toEqual(whole);
    shelf.stored = { ...record('Broken'), rest: { benchText: '{}', at: null } };
    const { autosave, kinds } = saving(open);
    expect(await autosave.start()).toBeNull();
    expect(kinds()).toEqual(['aside']);
    expect(shelf.aside).toHaveLength(1);
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

describe('what this tab neither wrote nor shows', () => {
  it('is read, told of and moved aside before the first write where the first read failed', async () => {
    const { shelf, open } = shelfOf(record('old work'));
    const { autosave, told } = saving(open);
    shelf.refusesToRead = true;
    expect(await autosave.start()).toBeNull();
    autosave.note(work('preset'));
    await autosave.flush();
    expect([shelf.stored, shelf.writes]).toEqual([record('old work'), 0]);

    shelf.refusesToRead = false;
    await autosave.flush();
    expect(shelf.aside.map((aside) => aside.record)).toEqual([record('old work')]);
    expect(shelf.stored).toEqual(record('preset'));
    expect(told).toContainEqual({ kind: 'other-work', work: work('old work') });
  });

  it('is not written over where it cannot be read and cannot be moved aside', async () => {
    const future = { shape: 2 };
    const { shelf, open } = shelfOf(future);
    const { autosave } = saving(open);
    shelf.refusesToMove = true;
    await autosave.start();
    autosave.note(bench);
    await autosave.flush();
    expect(shelf.stored).toBe(future);

    shelf.refusesToMove = false;
    await vi.advanceTimersByTimeAsync(10_000);
    expect(shelf.aside.map((aside) => aside.record)).toEqual([future]);
    expect(shelf.stored).toMatchObject({ shape: 1 });
  });

  it('is moved aside by the tab that takes over', async () => {
    const future = { shape: 2 };
    const { shelf, open } = shelfOf(future);
    const locks = testLocks();
    shelf.refusesToMove = true;
    await saving(open, locks).autosave.start();
    const { autosave } = saving(open, locks);
    await autosave.start();
    shelf.refusesToMove = false;
    autosave.note(bench);
    await autosave.takeOver();
    expect(shelf.aside.map((aside) => aside.record)).toEqual([future]);
    expect(shelf.stored).toMatchObject({ shape: 1 });
  });
});

describe('two tabs', () => {
  async function twoTabs() {
    const { shelf, open } = shelfOf(record('first'));
    const locks = testLocks();
    const [one, two] = [saving(open, locks), saving(open, locks)];
    await one.autosave.start();
    await two.autosave.start();
    return { shelf, one, two };
  }

  it('have one writer, and the other says so', async () => {
    const { shelf, one, two } = await twoTabs();
    expect([one.kinds(), two.kinds()]).toEqual([[], ['other-tab']]);
    two.autosave.note(work('second'));
    await two.autosave.flush();
    expect(shelf.writes).toBe(0);
  });

  it('leave the writing to the one that stays, which offers what the other had stored', async () => {
    const { shelf, one, two } = await twoTabs();
    one.autosave.note(work('newer'));
    await one.autosave.flush();
    one.autosave.close();
    await vi.advanceTimersByTimeAsync(0);
    expect(two.told.slice(1)).toEqual([{ kind: 'writer' }, { kind: 'other-work', work: work('newer') }]);

    // A look at another month is no reason to write over it; a change is.
    two.autosave.note({ ...work('first'), month: 9 });
    await two.autosave.flush();
    expect(shelf.stored).toEqual(record('newer'));
    two.autosave.note(work('second'));
    await two.autosave.flush();
    expect(shelf.stored).toEqual(record('second'));
    expect(shelf.aside.map((aside) => aside.record)).toEqual([record('newer')]);
  });

  it('offer nothing where nothing else was stored', async () => {
    const { one, two } = await twoTabs();
    one.autosave.close();
    await vi.advanceTimersByTimeAsync(0);
    expect(two.kinds()).toEqual(['other-tab', 'writer']);
  });

  it('change places at a take-over, and back again when the new writer goes', async () => {
    const { shelf, one, two } = await twoTabs();
    await two.autosave.takeOver();
    await vi.advanceTimersByTimeAsync(0);
    expect([one.kinds(), two.kinds()]).toEqual([['other-tab'], ['other-tab', 'writer']]);
    two.autosave.close();
    await vi.advanceTimersByTimeAsync(0);
    expect(one.kinds()).toEqual(['other-tab', 'writer']);
    one.autosave.note(work('again'));
    await one.autosave.flush();
    expect(shelf.stored).toEqual(record('again'));
  });
});

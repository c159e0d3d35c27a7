/** What is kept: over a reload, beside a second tab, when storage is refused or holds something unreadable. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { read } from '../../src/measure/read';
import { grow } from '../../src/model/grow';
import { compile } from '../../src/plan/compile';
import { PRESETS } from '../../src/plan/presets';
import { dayOfMonth } from '../../src/units/quantity';
import {
  button,
  emptyTile,
  outcomeMm,
  pressTile,
  showMonth,
  stripOf,
  untilGrown,
  untilOpen,
} from './grow-page';
import { openPage } from './open-page';

interface Stored {
  readonly planText: string;
  readonly seed: string;
  readonly month: number;
}

/** The stored bench; asked until it is there, for the page may be too busy to write within a set time. */
const stored = (page: Page): Promise<Stored | undefined> =>
  page.evaluate(
    () =>
      new Promise<Stored | undefined>((resolve, reject) => {
        const opening = indexedDB.open('seambench');
        opening.onerror = () => reject(new Error('no store'));
        opening.onsuccess = () => {
          const reading: IDBRequest<unknown> = opening.result
            .transaction('benches')
            .objectStore('benches')
            .get('last');
          reading.onsuccess = () => {
            opening.result.close();
            resolve(reading.result as Stored | undefined);
          };
        };
      }),
  );

/** What the opening plan comes to, grown here: the page must read the same. */
function ridgeMmInNode(seed: string, month: number): number {
  const { plan } = PRESETS[0];
  for (const state of grow(compile(plan, 0.25), seed)) {
    if (state.day !== dayOfMonth(month)) continue;
    return Math.round(read(state, ['', ...plan.varieties.map(({ id }) => id)], seed, month).seam.ridgeMm);
  }
  throw new Error('the plan ends before that month');
}

test('a reload brings back plan, seed and month, and does not play', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await button(page, 'another').click();
  const seed = await page.getByLabel('Seed').inputValue();
  await showMonth(page, 5);
  // the reading of the seed before stays until the new one has come
  const ridge = ridgeMmInNode(seed, 5);
  await expect.poll(() => outcomeMm(page, 'ridge'), { timeout: 30_000 }).toBe(ridge);
  await expect.poll(() => stored(page)).toMatchObject({ seed, month: 5 });
  await page.reload();
  await untilGrown(page);
  expect(await page.getByLabel('Seed').inputValue()).toBe(seed);
  await expect.poll(() => stripOf(page).getAttribute('aria-valuenow')).toBe('5');
  await expect.poll(() => outcomeMm(page, 'ridge'), { timeout: 30_000 }).toBe(ridge);
  await button(page, 'Play').waitFor();
});

test('a change made while the months play is kept, and play ends where no month is left', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await showMonth(page, 0); // the months that are left must outlast the writing
  await button(page, 'Play').click();
  await button(page, 'another').click();
  const seed = await page.getByLabel('Seed').inputValue();
  await expect.poll(() => stored(page)).toMatchObject({ seed });
  expect(await button(page, 'Pause').count(), 'it still plays').toBe(1);
  await page.reload();
  await untilGrown(page);
  expect(await page.getByLabel('Seed').inputValue()).toBe(seed);

  await button(page, 'Play').click();
  const months = page.getByRole('spinbutton', { name: 'Grow for' });
  await months.fill('2');
  await button(page, 'Play').waitFor({ timeout: 5000 });

  // A draft made with the arrow keys is dropped by Escape, and a refused one says why.
  await months.press('Enter');
  await months.evaluate((field) => {
    for (const key of ['ArrowUp', 'Escape']) {
      field.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    }
  });
  await page.getByRole('spinbutton', { name: 'Size of the tile' }).fill('20');
  await page.getByText('Not done.').waitFor();
  expect(await months.inputValue()).toBe('2');
});

test('a second tab says that the first one stores, and can take over', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilOpen(page);
  const second = await page.context().newPage();
  await second.goto(page.url());
  await second.getByText('Another tab of Seambench is storing').waitFor();

  await button(second, 'Take over').click();
  await page.getByText('Another tab of Seambench is storing').waitFor();
  expect(await second.getByText('Another tab of Seambench').count()).toBe(0);

  await emptyTile(second);
  await pressTile(second, 0, 0);
  await expect.poll(async () => (await stored(second))?.planText).toMatch(/"My tile"[^]*"p1"/u);
  await page.close();
  await second.reload();
  await expect.poll(() => second.title()).toContain('My tile');
});

test('blocked storage is said, and the page works on', async () => {
  const before = `Object.defineProperty(window, 'indexedDB', { value: { open() { throw new DOMException('no', 'SecurityError') } } })`;
  const page = await openPage({ before, reducedMotion: true });
  await page.getByText('does not let this page store anything').waitFor();
  await untilGrown(page);
  await showMonth(page, 3);
  await page.getByRole('button', { name: 'Save the plan' }).waitFor();
});

test('a plan stored by the first version that cannot be read is put aside, told of and can be downloaded', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  // as the first version of the store had it: the page gives way, and brings it up to its own
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const deleting = indexedDB.deleteDatabase('seambench');
        deleting.onerror = () => reject(new Error('no store'));
        deleting.onsuccess = () => {
          const opening = indexedDB.open('seambench', 1);
          opening.onupgradeneeded = () => {
            opening.result.createObjectStore('benches').put({ shape: 99, planText: '{}' }, 'last');
            opening.result.createObjectStore('aside', { autoIncrement: true });
          };
          opening.onsuccess = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
  );
  await page.reload();
  await page.getByText('could not be read').waitFor();
  const saving = page.waitForEvent('download');
  await button(page, 'Download it').click();
  expect((await saving).suggestedFilename()).toBe('seambench-set-aside.json');
});

test('a photo that nothing names any more is swept as the log is opened; none that is typed or was set aside', async () => {
  const page = await openPage({ reducedMotion: true, hash: '#/trials' });
  await button(page, 'Look at an invented farm').click();
  await button(page, 'Begin a log of my own').waitFor();
  await page.waitForTimeout(500);
  const photos = () =>
    page.evaluate(
      () =>
        new Promise<IDBValidKey[]>((resolve) => {
          const opening = indexedDB.open('seambench');
          opening.onsuccess = () => {
            const asked = opening.result.transaction('photos').objectStore('photos').getAllKeys();
            asked.onsuccess = () => {
              opening.result.close();
              resolve(asked.result);
            };
          };
        }),
    );
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open('seambench');
        opening.onsuccess = () => {
          const change = opening.result.transaction(['photos', 'aside', 'log'], 'readwrite');
          for (const id of ['ph-named-by-none', 'ph-set-aside', 'ph-typed', 'ph-read'])
            change.objectStore('photos').put(new Blob(['photo']), id);
          change.objectStore('aside').add({ why: 'test', record: { logText: '"photo": "ph-set-aside"' } });
          const log = change.objectStore('log');
          const asked = log.get('last');
          asked.onsuccess = () => {
            const record = asked.result as { logText: string; draft: object };
            const reading = { id: 'r99', on: '2026-11-01', seen: [], measured: [], photo: 'ph-typed' };
            const logText = record.logText.replace('"seen":', '"photo":"ph-read","seen":');
            const readings = [{ trial: 't1', reading }];
            log.put({ ...record, logText, draft: { tile: null, readings } }, 'last');
          };
          change.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
  );
  expect(await photos()).toHaveLength(4);
  await page.reload();
  await button(page, 'Begin a log of my own').waitFor();
  await expect.poll(photos).toEqual(['ph-read', 'ph-set-aside', 'ph-typed']);
});

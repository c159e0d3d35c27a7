/** The log of trials: what a grower notes, what it outlasts, what it teaches. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { button } from './grow-page';
import { HAND, openPage } from './open-page';

const link = (page: Page, name: string) => page.getByRole('link', { name, exact: true });

async function noteTile(page: Page, tag: string, varieties: readonly string[]): Promise<void> {
  await page.getByLabel('What stands on its tag').fill(tag);
  const fresh = page.getByLabel('A variety that is not listed');
  for (const name of varieties) {
    await fresh.fill(name);
    await fresh.press('Enter');
    await expect.poll(() => page.getByRole('checkbox', { name }).isChecked()).toBe(true);
  }
  await button(page, 'Note this tile').press('Enter');
  await page.getByRole('heading', { name: 'Readings' }).waitFor();
}

/** Fills the store up: from now on each write is refused as on a full disk. */
const FULL_DISK = `{
  const put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = function (...args) {
    if (globalThis.isDiskFull) throw new DOMException('full', 'QuotaExceededError');
    return put.apply(this, args);
  };
}`;

test('what is typed beside the tank outlasts a closed page, a crash and a full disk', async () => {
  const first = await openPage({
    size: HAND,
    touch: true,
    reducedMotion: true,
    hash: '#/trials',
    before: FULL_DISK,
  });
  const context = first.context();
  const home = first.url();
  await link(first, 'Note the first tile').press('Enter');
  await noteTile(first, 'A-1', ['Fern', 'Amber']);
  await link(first, 'Read it today').press('Enter');
  await first.getByLabel('Note').pressSequentially('pale line on the le');
  await button(first, 'ridge').press('Enter');
  // a short pause, as between one touch and the next
  await first.waitForTimeout(500);
  await first.close();

  const second = await context.newPage();
  await second.goto(home);
  await link(second, 'Read').press('Enter');
  await link(second, 'Go on with tile A-1').press('Enter');
  expect(await second.getByLabel('Note').inputValue()).toBe('pale line on the le');
  expect(await button(second, 'ridge').getAttribute('aria-pressed')).toBe('true');
  await second.getByLabel('Note').pressSequentially('ft');
  await second.waitForTimeout(500);
  const crashed = second.waitForEvent('crash');
  await second.goto('chrome://crash').catch(() => undefined);
  await crashed;

  const third = await context.newPage();
  await third.goto(`${home.split('#')[0]}#/trials/read/t1`);
  await expect.poll(() => third.getByLabel('Note').inputValue()).toBe('pale line on the left');
  await third.evaluate(() => Object.assign(globalThis, { isDiskFull: true }));
  await third.getByRole('button', { name: 'Ridge height more' }).press('Enter');
  await third.getByRole('button', { name: /^Keep and go/ }).press('Enter');
  await third.getByText('storage is full').waitFor();
  // there is room again, and the page is put behind another: it does not wait for the next try
  await third.evaluate(() => {
    Object.assign(globalThis, { isDiskFull: false });
    Object.defineProperty(document, 'hidden', { value: true });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await third.getByText('log of trials are stored again').waitFor();
  expect(await third.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(HAND.width);
  await third.reload();
  await link(third, 'Tiles').press('Enter');
  await third.getByRole('link', { name: /A-1/ }).press('Enter');
  await third.getByText('ridge, 0.5 mm high').waitFor();
  await third.getByText('pale line on the left').waitFor();
});

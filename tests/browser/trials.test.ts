/** The log of trials: what a grower notes, what it outlasts, what it teaches. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { button, untilGrown } from './grow-page';
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
  // the tile's own page has a note, too
  await first.getByRole('button', { name: /^Keep and go/ }).waitFor();
  await first.getByLabel('Note').pressSequentially('pale line on the le');
  await button(first, 'ridge').press('Enter');
  // a short pause, as between one touch and the next
  await first.waitForTimeout(500);
  await first.close();

  const second = await context.newPage();
  await second.goto(home);
  await link(second, 'Read a tile').press('Enter');
  await link(second, 'Go on with tile A-1').press('Enter');
  await expect.poll(() => second.getByLabel('Note').inputValue()).toBe('pale line on the le');
  await expect.poll(() => button(second, 'ridge').getAttribute('aria-pressed')).toBe('true');
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

const BAD_ROWS = `Tile;Date set;Tank;Read on;Variety;with;saw;over;radius mm;note;Shelf
T-1;2026-01-10;North;12/05/2026;Fern;Garnet;fused;;;;2
T-2;2026-01-10;North;13/05/2026;Fern;Garnet;fused;;;;2
T-3;2026-01-10;North;31/02/2026;Fern;Garnet;fused;;wide;;2
T-4;2026-01-10;North;14/05/2026;Fern;Garnet;melted;;;;2
T-5;2026-01-10;North;14/05/2026;Amber;Fern;lapped;Amber;;=1+1;2
`;

test('a person logs five months, takes in a table with bad rows, reads pairs and rates, and uses them', async () => {
  const page = await openPage({ reducedMotion: true, hash: '#/trials' });
  await link(page, 'Note the first tile').click();
  await noteTile(page, 'A-1', ['Fern', 'Amber']);
  await page.getByLabel('Set on').fill('2026-01-05');
  await page.getByLabel('Set on').blur();
  const months: [string, string, number][] = [
    ['2026-02-05', 'not met', 13],
    ['2026-03-05', 'not met', 16],
    ['2026-04-05', 'not met', 19],
    ['2026-05-05', 'undecided', 22],
    ['2026-06-05', 'ridge', 25],
  ];
  for (const [on, saw, radius] of months) {
    await link(page, 'Read it today').click();
    await page.getByLabel('Read on').fill(on);
    await page.getByLabel('Read on').blur();
    await button(page, saw).click();
    await page.getByLabel('Rim radius, mm').first().fill(String(radius));
    await page.getByRole('button', { name: /^Keep and go/ }).click();
    await link(page, 'Tiles').click();
    await page.getByRole('link', { name: /A-1/ }).click();
  }
  await expect.poll(() => page.getByRole('button', { name: /^Change the reading of/ }).count()).toBe(5);

  await page.getByRole('button', { name: 'Log: files and tables' }).click();
  await button(page, 'Take in a spreadsheet (CSV)').click();
  await page
    .locator('dialog input[type=file]')
    .setInputFiles({ name: 'table.csv', mimeType: 'text/csv', buffer: Buffer.from(BAD_ROWS) });
  await page.getByText('Day first').waitFor();
  await page.getByText(/^Passed over.*“Shelf”\. Nothing of it is taken in/u).waitFor();
  await button(page, 'Read the rows').click();
  const left = page.getByRole('list', { name: 'Rows left out' }).getByRole('listitem');
  await left.first().waitFor();
  expect(await left.allInnerTexts()).toEqual([
    expect.stringMatching(/^line 4 .*31\/02\/2026.*; radius_mm.*'wide'/u),
    expect.stringMatching(/^line 5 .*melted/u),
  ]);
  await button(page, 'Take in the good rows').click();
  await page
    .getByText('table.csv: 3 readings, 3 new tiles, 1 new variety taken in; 2 rows left out.')
    .waitFor();
  await page.getByText('See the rows left out').click();
  await expect.poll(() => left.count()).toBe(2);
  await button(page, 'Close what was taken in').click();

  await link(page, 'Pairs').click();
  await page
    .getByRole('gridcell')
    .getByRole('button', { name: /Fern and Garnet: took 2 of 2/ })
    .click();
  await page.getByRole('link', { name: 'T-2' }).waitFor();

  // 6 mm in 59 days, 3.09 mm a month of 30.44 days; what grew after they had met is left out
  await link(page, 'Rates').click();
  await page.getByText('Use these rates in').click();
  const rate = page.getByRole('checkbox', { name: /^Fern: rim rate/ });
  await expect
    .poll(() => rate.locator('..').innerText())
    .toMatch(/3 mm\/month.*3\.09 mm\/month.*2 gains on 1 tile, unsure/su);
  await page.getByRole('checkbox', { name: /^Fern with Amber/ }).click();
  await button(page, 'Use these rates').click();

  await page.getByText(/^Taken from 4 trials of My trials on .*: 1 rim rate, 1 pair\./u).waitFor();
  await untilGrown(page);
  const rim = page.getByRole('spinbutton', { name: 'Rim rate of Fern' });
  const took = page.getByRole('spinbutton', { name: 'Fern + Garnet: took' });
  await expect.poll(() => rim.inputValue()).toMatch(/^3\.(?:09|1)/u);
  await expect.poll(() => took.inputValue()).toBe('2');
  expect(await page.getByRole('spinbutton', { name: 'Fern + Amber: took' }).inputValue()).toBe('0');
  const seam = page.getByText(/^seam \d+ mm$/u);
  const used = await seam.innerText();
  await button(page, 'Undo').click();
  await expect.poll(() => took.inputValue()).toBe('15');
  await expect.poll(() => seam.innerText(), { timeout: 30_000 }).not.toBe(used);

  // the log is as it was left, and can be changed again
  await link(page, 'Trials').first().click();
  await link(page, 'All readings').click();
  await expect.poll(() => page.getByRole('row').count()).toBe(14);
  await page.getByLabel('Which over the other').selectOption('Fern');
  await button(page, 'Undo').click();
  await expect.poll(() => page.getByLabel('Which over the other').inputValue()).toBe('v2');

  // an event is noted only once it was looked at; until then it outlasts the page
  await link(page, 'Tanks').click();
  await button(page, 'Note an event').click();
  const fresh = page.getByRole('form', { name: 'An event to note' });
  await fresh.getByLabel('What happened').selectOption('pest');
  await page.waitForTimeout(500);
  await page.reload();
  await expect.poll(() => fresh.getByLabel('What happened').inputValue()).toBe('pest');
  await page.getByText('Nothing noted yet').waitFor();
  await fresh.getByRole('button', { name: 'Keep it' }).click();
  await page.getByRole('button', { name: /^Remove the event of/ }).waitFor();
  expect(await fresh.count()).toBe(0);
});

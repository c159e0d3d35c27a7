/** A bench of tiles: branch, change, compare, adopt, undo, save, open, reload; and a mother that is not to be cut. */
import { readFileSync } from 'node:fs';
import { text as textOf } from 'node:stream/consumers';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openBench } from '../../src/plan/bench';
import { button, chooseFile, showMonth, untilGrown } from './grow-page';
import { HAND, openPage } from './open-page';

const goTo = (page: Page, view: string): Promise<void> =>
  page.getByRole('link', { name: view, exact: true }).filter({ visible: true }).click();

const months = (page: Page) => page.getByRole('spinbutton', { name: 'Grow for' });

/** A row of the comparison: the first way, the second, the difference. */
async function compared(page: Page, name: string): Promise<string[]> {
  const table = page.getByRole('table', { name: /^Readings of both/ });
  const row = table.getByRole('row', { name: new RegExp(`^${name}`) });
  return (await row.getByRole('cell').allInnerTexts()).map((text) => text.trim());
}

test('a tile is branched, changed, compared, adopted, taken back, saved and opened again', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  const before = await months(page).inputValue();
  await showMonth(page, 4);
  await goTo(page, 'Bench');
  await button(page, 'Branch here, at month 4').click();
  await page.getByText('from month 4').waitFor();

  // What is changed in Grow now is the branch's own.
  await goTo(page, 'Grow');
  await months(page).fill('5');
  await months(page).press('Enter');
  await goTo(page, 'Bench');
  const month = page.getByRole('slider', { name: 'Month compared' });
  await month.fill('4');
  await expect
    .poll(() => compared(page, 'tissue'), { timeout: 30_000 })
    .toEqual([expect.stringMatching(/^\d+$/), expect.stringMatching(/^\d+$/), '0']);
  await month.fill('6');
  await page.getByText('Ends at month 5.').waitFor();
  await expect.poll(() => compared(page, 'tissue')).toEqual([expect.stringMatching(/^\d+$/), '–', '–']);

  await button(page, 'Adopt Branch 1').click();
  await goTo(page, 'Grow');
  await expect.poll(() => months(page).inputValue()).toBe('5');
  await button(page, 'Undo').click();
  await expect.poll(() => months(page).inputValue()).toBe(before);

  await goTo(page, 'Bench');
  const name = page.getByLabel('Name of the bench');
  await name.fill('Winter');
  await name.press('Enter');
  const saving = page.waitForEvent('download');
  await button(page, 'Save bench').click();
  const download = await saving;
  expect(download.suggestedFilename()).toBe('Winter.bench.json');
  const text = await textOf(await download.createReadStream());
  const opened = openBench(text);
  expect(opened).toMatchObject({
    bench: {
      name: 'Winter',
      tiles: [{ plan: { months: Number(before) }, branches: [{ fromDay: 121, months: 5 }] }],
    },
  });

  await button(page, 'Drop Branch 1').click();
  await expect.poll(() => button(page, 'Drop Branch 1').count()).toBe(0);
  await button(page, 'Bring it back').click();
  await button(page, 'Drop Branch 1').waitFor();
  await page.getByRole('button', { name: /^Remove / }).click();
  await page.getByText('No tiles yet.').waitFor();
  await chooseFile(page, 'Winter.bench.json', text);
  await button(page, 'Adopt Branch 1').waitFor();
  // written half a second after the last change
  await page.waitForTimeout(1500);
  await page.reload();
  await button(page, 'Adopt Branch 1').waitFor();
  expect(await page.getByLabel('Name of the bench').inputValue()).toBe('Winter');
});

test('a change to the past of a branch is not taken for one of the branch', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await showMonth(page, 4);
  await goTo(page, 'Bench');
  await button(page, 'Branch here, at month 4').click();
  await goTo(page, 'Grow');
  const size = page.getByRole('spinbutton', { name: 'Size of the tile' });
  await size.fill(String(Number(await size.inputValue()) + 10));
  await size.press('Enter');
  await goTo(page, 'Bench');
  await page.getByText('The branch is kept as it was').waitFor();
  await button(page, 'Undo').click();
  await expect.poll(() => page.getByText('The branch is kept as it was').count()).toBe(0);
});

test('what is cut out of one tile of the bench is set on another', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await showMonth(page, 4);
  await button(page, 'Add a step').click();
  await button(page, 'Isolate').click();
  await goTo(page, 'Bench');
  await button(page, 'Add the plan shown').click();
  await goTo(page, 'Grow');
  await chooseFile(page, 'halves.json', readFileSync('presets/halves-that-wall-up.json', 'utf8'));
  await untilGrown(page);
  await showMonth(page, 2);
  await button(page, 'Add a step').click();
  await button(page, 'Add').click();
  const piece = page.getByRole('combobox', { name: 'piece', exact: true });
  const of = await piece.getByRole('option', { name: /^cutting of Two that take, one that does not, day / }).getAttribute('value'); // prettier-ignore
  await piece.selectOption(of);
  await page.getByRole('button', { name: /^day \d+: add a cutting$/ }).waitFor();
  await expect.poll(() => piece.locator('option:checked').innerText()).toMatch(/^a cutting of \d patches$/);
  const right = page.getByRole('spinbutton', { name: 'right of the middle' });
  await right.fill('30');
  await right.press('Enter');
  await untilGrown(page);
  await showMonth(page, 4);
  await button(page, 'Undo').click();
  await button(page, 'Undo').click();
  await page.getByRole('button', { name: /^day \d+: add a piece$/ }).waitFor();
});

test('a mother that is too small is refused with the number, and one tank is warned of', async () => {
  const page = await openPage({ reducedMotion: true, hash: '#/bench' });
  await button(page, 'Add a mother').click();
  const area = page.getByRole('spinbutton', { name: /^Area/ });
  await area.fill('90');
  await area.press('Enter');
  await page
    .getByRole('alert')
    .filter({
      hasText: /This takes \d+ mm² of .+; the mother holds 90 mm² and you keep 60: \d+ mm² too much/,
    })
    .waitFor();
  // where the pieces are set it is refused too
  await goTo(page, 'Grow');
  await page.getByRole('region', { name: 'Varieties' }).getByRole('alert').filter({ hasText: /mm² too much/ }).waitFor(); // prettier-ignore
  await page.getByRole('link', { name: 'Its mother' }).click();
  await area.fill('90000');
  await area.press('Enter');
  await expect.poll(() => page.getByRole('alert').count()).toBe(0);
  await page.getByText(/lives in one tank only, and \d+ mm² may be cut after this plan/).waitFor();
  await page
    .getByText(/^No mother of .+ is noted/)
    .first()
    .waitFor();
});

test('storage that is refused does not stop the bench, and it fits a phone', async () => {
  const before = `Object.defineProperty(window, 'indexedDB', { value: { open() { throw new DOMException('no', 'SecurityError') } } })`;
  const page = await openPage({ before, reducedMotion: true, size: HAND, touch: true });
  await page.getByText('does not let this page store anything').waitFor();
  await goTo(page, 'Bench');
  await button(page, 'Add the plan shown').click();
  await page.getByRole('button', { name: /^Remove / }).waitFor();
  await page.getByRole('button', { name: /^Branch here/ }).click();
  await page.getByRole('table', { name: /^Readings of both/ }).waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(HAND.width);
});

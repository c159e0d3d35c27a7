/** A person cuts a tile open: by mouse, by keyboard and by touch, and reads every seam under the line. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import {
  button,
  openMenu,
  placeOnTile,
  showMonth,
  stripOf,
  tileOf,
  untilGrown,
  untilOpen,
} from './grow-page';
import { HAND, openPage } from './open-page';

const SIZE_MM = 100;
const JOINTS = [
  /^Garnet and Amber, fused$/,
  /^Amber and Fern, ridge$/,
  /^Fern lapped over Heather$/,
  /^Heather and Lichen, ridge that looks fused$/,
  /^Lichen and Slate, dead$/,
];

const panel = (page: Page) => page.getByRole('region', { name: 'Section', exact: true });
const joints = (page: Page) => page.getByRole('region', { name: 'Seams under the line' });

async function jointWords(page: Page): Promise<string[]> {
  const words = await joints(page).locator('.words').allInnerTexts();
  return words.map((text) => text.replace(/^\d+\s/u, '').trim());
}

async function openFiveJoints(page: Page): Promise<void> {
  await untilOpen(page);
  await openMenu(page);
  await page.getByText('Five seams under one line').click();
  await showMonth(page, 12);
  await untilGrown(page);
}

async function expectAllFive(page: Page): Promise<void> {
  await expect.poll(() => jointWords(page), { timeout: 30_000 }).toHaveLength(5);
  const words = await jointWords(page);
  JOINTS.forEach((joint, k) => expect(words[k]).toMatch(joint));
}

async function drawLine(page: Page, fromMm: [number, number], toMm: [number, number]): Promise<void> {
  const from = await placeOnTile(page, fromMm[0], fromMm[1], SIZE_MM);
  const to = await placeOnTile(page, toMm[0], toMm[1], SIZE_MM);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await page.mouse.up();
}

test('by mouse: a line drawn across shows all five, moves with the month, and its ends can be moved', async () => {
  const page = await openPage();
  await openFiveJoints(page);
  await button(page, 'Section').click();
  // its panel takes room from the tile before anything is drawn, and not under the hand
  await panel(page).waitFor();
  await drawLine(page, [-48, 1], [48, -1]);
  await expectAllFive(page);
  const said = await panel(page).getByRole('img').getAttribute('aria-label');
  expect(said).toMatch(/^Section of 96\.\d mm at month 12, up to \d\.\d mm high, 5 seams\./u);
  await expect.poll(() => panel(page).innerText()).toMatch(/heights drawn [\d.]+ times as tall/u);

  // by month 14 the look-alike shows as the wall that it is
  await showMonth(page, 14);
  await expect
    .poll(() => jointWords(page))
    .toContainEqual(expect.stringMatching(/Heather and Lichen, ridge$/u));
  await showMonth(page, 12);

  // end B is taken back over Fern: what lies behind it is no longer cut
  await drawLine(page, [48, -1], [-10, 0]);
  await expect.poll(() => jointWords(page)).toHaveLength(2);

  // Escape takes the line away
  await tileOf(page).focus();
  await page.keyboard.press('Escape');
  await joints(page).waitFor({ state: 'detached' });
  expect(await panel(page).innerText()).toContain('Draw a line');
  // and nothing of it is in the history: Undo takes back that the plan was opened
  await button(page, 'Undo').click();
  await page.getByRole('button', { name: 'Plan: Two that take, one that does not' }).waitFor();
});

test('by keyboard: a key for the tool, Enter for the line, arrows for its ends', async () => {
  const page = await openPage({ dark: true });
  await openFiveJoints(page);
  await tileOf(page).focus();
  await page.keyboard.press('x');
  expect(await button(page, 'Section').getAttribute('aria-pressed')).toBe('true');
  await page.keyboard.press('Enter');
  await expectAllFive(page);
  const label = () => panel(page).getByRole('img').getAttribute('aria-label');
  expect(await label()).toContain('Section of 100.0 mm');
  await page.keyboard.press('Shift+ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  await expect.poll(label).toContain('Section of 94.5 mm');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowRight');
  await expect.poll(label).toContain('Section of 94.0 mm');
  await expectAllFive(page);
  await page.keyboard.press('Escape');
  await joints(page).waitFor({ state: 'detached' });
  await page.keyboard.press('Escape');
  await panel(page).waitFor({ state: 'detached' });
  expect(await button(page, 'Choose').getAttribute('aria-pressed')).toBe('true');
});

test('by touch at 390 px: the line is laid across, and the page does not grow wider', async () => {
  const page = await openPage({ size: HAND, touch: true });
  await openFiveJoints(page);
  await button(page, 'Section').tap();
  await button(page, 'Across').tap();
  await expectAllFive(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(HAND.width);
  expect(await stripOf(page).isVisible()).toBe(true);
  await panel(page).getByRole('button', { name: 'Close' }).tap();
  await panel(page).waitFor({ state: 'detached' });
});

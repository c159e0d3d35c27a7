/** A grower's tile as it stands today: a photo under the hand, its colours and seams drawn in mm. */
import { text } from 'node:stream/consumers';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { encodePng } from '../../src/cli/png';
import { openPlan } from '../../src/plan/file';
import type { GraftPiece, Plan } from '../../src/plan/plan';
import { area } from '../../src/units/polygon';
import { button, outcomeMm, showMonth, untilGrown } from './grow-page';
import { openPage } from './open-page';

/** 10 px a mm: a colony of 40 mm in two colours that meet 24 mm from its left side, and a ruler of 80 mm under it. */
const PX = { width: 1000, height: 800 };
const COLONY = { left: 300, right: 700, top: 200, bottom: 600, border: 540 };
const RULER = { from: 100, to: 900, y: 700 };

function photo(): Buffer {
  const rgb = new Uint8Array(PX.width * PX.height * 3).fill(210);
  const paint = (left: number, right: number, top: number, bottom: number, colour: number[]): void => {
    for (let y = top; y < bottom; y++)
      for (let x = left; x < right; x++) rgb.set(colour, (y * PX.width + x) * 3);
  };
  const { left, right, top, bottom, border } = COLONY;
  paint(left, border, top, bottom, [60, 130, 70]);
  paint(border, right, top, bottom, [150, 40, 60]);
  paint(RULER.from, RULER.to, RULER.y - 4, RULER.y + 4, [20, 20, 20]);
  return Buffer.from(encodePng({ ...PX, rgb }));
}

/** Taps a place of the photo while the whole of it is shown. */
async function tap(page: Page, x: number, y: number): Promise<void> {
  const box = await page.getByRole('application', { name: 'Photo' }).boundingBox();
  if (!box) throw new Error('the photo is not on the page');
  const scale = Math.min((box.width - 24) / PX.width, (box.height - 24) / PX.height);
  await page.mouse.click(
    box.x + box.width / 2 + (x - PX.width / 2) * scale,
    box.y + box.height / 2 + (y - PX.height / 2) * scale,
  );
}

async function choose(page: Page, name: string, buffer: Buffer): Promise<void> {
  await button(page, 'Lay out').click();
  await button(page, 'From a photo …').click();
  await page.getByLabel('Choose a photo').setInputFiles({ name, mimeType: 'image/png', buffer });
}

async function savedPlan(page: Page): Promise<Plan> {
  const saving = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const opened = openPlan(await text(await (await saving).createReadStream()));
  if ('refusals' in opened) throw new Error('a saved plan opens');
  return opened.plan;
}

function graftOn(plan: Plan): GraftPiece {
  const [piece] = plan.pieces;
  if (plan.pieces.length !== 1 || !('patches' in piece)) throw new Error('one graft is on the tile');
  return piece;
}

test('by mouse: scale, outline, two colours and a ridge become a graft in mm that grows; then by keyboard', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await choose(page, 'notes.png', Buffer.from('no picture'));
  await page.getByText('notes.png is no picture that this browser can read').waitFor();
  await page.getByLabel('Choose a photo').setInputFiles({ name: 'tile.png', mimeType: 'image/png', buffer: photo() }); // prettier-ignore

  await tap(page, RULER.from, RULER.y);
  await tap(page, RULER.to, RULER.y);
  await button(page, 'Next').click();
  await page.getByText('Type the distance').waitFor();
  await page.getByLabel('Distance from A to B').fill('80');
  await page.getByText('The photo shows 100 × 80 mm').waitFor();
  await button(page, 'Next').click();

  const { left, right, top, bottom, border } = COLONY;
  for (const [x, y] of [[left, top], [right, top], [right, bottom], [left, bottom], [left, top]]) await tap(page, x, y); // prettier-ignore
  await tap(page, border, top);
  await tap(page, border, bottom);
  await page.getByText('colour', { exact: true }).click();
  await page.getByRole('radio', { name: 'Fern' }).check({ force: true });
  await tap(page, 400, 400);
  await button(page, 'Next').click();
  await page.getByText('Say which variety patch 2 is.').waitFor();
  await page.getByRole('radio', { name: 'Garnet' }).check({ force: true });
  await tap(page, 650, 400);
  await button(page, 'Next').click();

  await page.getByText('ridge', { exact: true }).first().click();
  await tap(page, border, 400);
  expect(await page.getByLabel(/Fern with Garnet, 40\.\d mm/u).inputValue()).toBe('ridge');
  // of a lapped one it can be said who lies over
  await page.getByLabel(/Fern with Garnet/u).selectOption('lapped');
  await page.getByLabel('Which lies over the other at border 1').selectOption({ label: 'Garnet over' });
  await page.getByLabel(/Fern with Garnet/u).selectOption('ridge');
  await page.getByLabel(/Fern with Garnet/u).selectOption('lapped');
  expect(await page.getByLabel('Which lies over the other at border 1').inputValue()).toBe('');
  await page.getByLabel(/Fern with Garnet/u).selectOption('ridge');
  // Escape loses nothing
  await page.keyboard.press('Escape');
  await button(page, 'Lay out').click();
  await button(page, 'From a photo …').click();
  await button(page, 'Set it on the tile').click();
  await page.getByRole('dialog').waitFor({ state: 'hidden' });

  const plan = await savedPlan(page);
  const piece = graftOn(plan);
  const shareOf = (name: string, ofMm2: number): number => {
    const named = plan.varieties.find((variety) => variety.name === name);
    const patch = piece.patches.find(({ variety }) => variety === named?.id);
    return patch ? area(patch.outline) / ofMm2 : 0;
  };
  expect(piece.patches).toHaveLength(2);
  // a click lands on a whole px of the screen
  expect(Math.abs(shareOf('Fern', 24 * 40) - 1)).toBeLessThan(0.02);
  expect(Math.abs(shareOf('Garnet', 16 * 40) - 1)).toBeLessThan(0.02);
  expect(piece.seams?.map(({ is }) => is)).toEqual(['ridge']);
  await untilGrown(page);
  await expect.poll(() => outcomeMm(page, 'ridge'), { timeout: 30_000 }).toBeGreaterThan(38);
  await showMonth(page, 3);
  await expect.poll(() => outcomeMm(page, 'ridge'), { timeout: 30_000 }).toBeGreaterThan(42);

  // one edit, one entry of the history
  await page.keyboard.press('Control+z');
  expect((await savedPlan(page)).pieces.length).toBeGreaterThan(1);

  // by keyboard: the point in focus moves, the last corner comes back, the outline is closed
  await button(page, 'Lay out').focus();
  await page.keyboard.press('Enter');
  await button(page, 'From a photo …').focus();
  await page.keyboard.press('Enter');
  for (let step = 0; step < 2; step++) await button(page, 'Back').press('Enter');
  await page.getByRole('radio', { name: 'B' }).press('Space');
  const stage = page.getByRole('application', { name: 'Photo' });
  await stage.focus();
  for (let k = 0; k < 5; k++) await page.keyboard.press('Shift+ArrowLeft');
  await page.getByText(/The photo shows 1[12]\d × \d+ mm/u).waitFor();
  await button(page, 'Next').press('Enter');
  await page.getByRole('radio', { name: 'draw a line' }).press('Space');
  await stage.focus();
  for (let k = 0; k < 2; k++) await page.keyboard.press('Backspace');
  await button(page, 'Close it').waitFor();
  await page.keyboard.press('Enter');
  await page.getByText(/^1 · 2[0-9]\d\d mm²$/u).waitFor();
});

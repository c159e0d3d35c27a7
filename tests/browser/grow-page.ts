/** What a person finds and does on the page, so that tests read as the job and not as selectors. */
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

export const tileOf = (page: Page): Locator => page.getByRole('application', { name: 'Tile' });
export const stripOf = (page: Page): Locator => page.getByRole('slider', { name: 'Month shown' });
export const button = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true });

/** Millimetres of an outcome as the reading prints them. */
export async function outcomeMm(page: Page, outcome: string): Promise<number> {
  const row = page.getByRole('table', { name: 'Seam by outcome' }).getByRole('row', { name: outcome });
  return Number.parseFloat(await row.getByRole('cell').first().innerText());
}

/** Until the page can be used; it grows meanwhile. For tests that ask nothing of what has grown. */
export async function untilOpen(page: Page): Promise<void> {
  await tileOf(page).waitFor();
}

/** Until the page has grown the month that is shown and the tile is drawn. */
export async function untilGrown(page: Page): Promise<void> {
  await expect
    .poll(() => page.locator('.sentence').innerText(), { timeout: 30_000 })
    .not.toContain('Growing');
}

export async function showMonth(page: Page, month: number): Promise<void> {
  const strip = stripOf(page);
  await strip.focus();
  await page.keyboard.press('Home');
  for (let step = 0; step < month; step++) await page.keyboard.press('ArrowRight');
  await expect.poll(() => strip.getAttribute('aria-valuenow')).toBe(String(month));
  await expect
    .poll(() => strip.getAttribute('aria-valuetext'), { timeout: 30_000 })
    .toContain(`month ${month}`);
}

/** Presses a place on the tile given in mm from its centre. */
export async function pressTile(page: Page, xMm: number, yMm: number, sizeMm = 80): Promise<void> {
  const at = await placeOnTile(page, xMm, yMm, sizeMm);
  await page.mouse.click(at.x, at.y);
}

/** Where a place in mm lies on the screen while the whole tile is shown (8 px of margin all round). */
export async function placeOnTile(
  page: Page,
  xMm: number,
  yMm: number,
  sizeMm = 80,
): Promise<{ x: number; y: number }> {
  const box = await tileOf(page).boundingBox();
  if (!box) throw new Error('the tile is not on the page');
  const pxPerMm = (Math.min(box.width, box.height) - 16) / sizeMm;
  return { x: box.x + box.width / 2 + xMm * pxPerMm, y: box.y + box.height / 2 + yMm * pxPerMm };
}

export async function openMenu(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Plan:/ }).click();
}

/** The tile with no pieces, as a new job begins. */
export async function emptyTile(page: Page): Promise<void> {
  await openMenu(page);
  await button(page, 'Empty tile').click();
  await page.getByText('An empty tile.').waitFor();
}

export async function chooseFile(page: Page, name: string, text: string): Promise<void> {
  const choosing = page.waitForEvent('filechooser');
  await openMenu(page);
  await button(page, 'Open a file').click();
  await (await choosing).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

/** Colours of the drawn tile in a patch of the screenshot: proves that a picture is there. */
export async function tileColours(page: Page): Promise<number> {
  const shot = (await tileOf(page).screenshot()).toString('base64');
  return page.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const canvas = new OffscreenCanvas(64, 64);
    const brush = canvas.getContext('2d');
    if (!brush) return 0;
    brush.drawImage(image, 0, 0, 64, 64);
    const pixels = brush.getImageData(0, 0, 64, 64).data;
    const found = new Set<number>();
    for (let at = 0; at < pixels.length; at += 4) {
      found.add(((pixels[at] >> 4) << 8) | ((pixels[at + 1] >> 4) << 4) | (pixels[at + 2] >> 4));
    }
    return found.size;
  }, shot);
}

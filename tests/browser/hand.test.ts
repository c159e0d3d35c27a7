/** What hands find at the tile beyond its edits: the view, the page that scrolls, what is said and what goes away. */
import type { CDPSession, Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { button, openMenu, placeOnTile, pressTile, showMonth, tileOf, untilGrown } from './grow-page';
import { HAND, openPage } from './open-page';

type Spot = { x: number; y: number };

/** Fingers go down at the first places and along to the last; they are never quicker than a frame. */
async function swipe(page: Page, ways: readonly { from: Spot; to: Spot }[]): Promise<void> {
  const session: CDPSession = await page.context().newCDPSession(page);
  const steps = 12;
  const points = (part: number) =>
    ways.map(({ from, to }, id) => ({
      x: from.x + (to.x - from.x) * part,
      y: from.y + (to.y - from.y) * part,
      id,
    }));
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: points(0) });
  for (let step = 1; step <= steps; step++) {
    await session.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: points(step / steps) });
    await page.waitForTimeout(20);
  }
  // fingers rest before they leave: else the page would glide on
  await page.waitForTimeout(150);
  await session.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: points(1) });
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await session.detach();
}

const scrolled = (page: Page): Promise<number> => page.evaluate(() => scrollY);
const bubble = (page: Page): Locator => page.locator('.why').filter({ visible: true });
const spoken = (page: Page): Promise<string> => page.locator('[aria-live].spoken').first().innerText();

test('by touch: the whole tile lets the page scroll; nearer, a finger looks round and changes nothing', async () => {
  const page = await openPage({ size: HAND, touch: true, reducedMotion: true });
  await untilGrown(page);
  const middle = await placeOnTile(page, 0, 0);
  for (const [x, y] of [
    [-38, 38], // bare tile
    [26, 5], // a piece
  ]) {
    const from = await placeOnTile(page, x, y);
    await swipe(page, [{ from, to: { x: from.x + 4, y: from.y - 150 } }]);
    await expect.poll(() => scrolled(page)).toBeGreaterThan(60);
    // the end of the swipe may still be on its way
    const back = async (): Promise<number> => {
      await page.evaluate(() => scrollTo(0, 0));
      return scrolled(page);
    };
    await expect.poll(back).toBe(0);
  }
  await expect.poll(() => button(page, 'Whole tile').count()).toBe(0);

  await swipe(page, [
    { from: { x: middle.x - 20, y: middle.y - 20 }, to: { x: middle.x - 60, y: middle.y - 60 } },
    { from: { x: middle.x + 20, y: middle.y + 20 }, to: { x: middle.x + 60, y: middle.y + 60 } },
  ]);
  await button(page, 'Whole tile').waitFor();
  const before = await tileOf(page).locator('svg').innerHTML();
  await swipe(page, [{ from: middle, to: { x: middle.x + 70, y: middle.y + 70 } }]);
  await expect.poll(() => tileOf(page).locator('svg').innerHTML()).not.toBe(before);
  await expect.poll(() => scrolled(page)).toBe(0);
  await expect.poll(() => button(page, 'Undo').isDisabled()).toBe(true);
  expect(await page.getByText(/^Piece p\d$/u).count()).toBe(0);

  await button(page, 'Whole tile').tap();
  await button(page, 'Whole tile').waitFor({ state: 'detached' });
});

test('another plan, tile shape or size is looked at whole', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  const nearer = async (): Promise<void> => {
    await tileOf(page).focus();
    await page.keyboard.press('+');
    await button(page, 'Whole tile').waitFor();
  };
  const whole = (): Promise<void> => button(page, 'Whole tile').waitFor({ state: 'detached' });
  await nearer();
  await page.keyboard.press('0');
  await whole();
  await nearer();
  await openMenu(page);
  await page.getByRole('button', { name: /^Halves that build a ridge/u }).click();
  await whole();
  await nearer();
  await page.getByRole('radio', { name: 'disc' }).last().check({ force: true });
  await whole();
  await nearer();
  await page.getByRole('radio', { name: 'square' }).last().check({ force: true });
  await whole();
});

test('a refusal is shown once and goes with the next thing done; an outline that crosses itself says so', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await button(page, 'Outline').click();
  await page.getByText('Press corner after corner', { exact: false }).waitFor();
  const bow = [
    [-30, -38],
    [30, -32],
    [30, -38],
    [-30, -32],
    [-30, -38],
  ];
  const cross = async (): Promise<void> => {
    for (const [x, y] of bow) await pressTile(page, x, y);
  };
  await cross();
  await bubble(page).waitFor();
  await expect.poll(() => bubble(page).innerText()).toContain('crosses itself');
  expect(await page.getByText('Not done.').count()).toBe(0);
  await button(page, 'Take back').click();
  await expect.poll(() => bubble(page).count()).toBe(0);
  await button(page, 'Clear').click();
  await expect.poll(() => button(page, 'Clear').isDisabled()).toBe(true);

  await button(page, 'Set piece').click();
  const refuseOne = async (): Promise<void> => {
    await pressTile(page, 26, 5);
    await bubble(page).waitFor();
    expect(await page.getByText('Not done.').count()).toBe(0);
  };
  await refuseOne();
  await showMonth(page, 3);
  await expect.poll(() => bubble(page).count()).toBe(0);
  await refuseOne();
  await button(page, 'Ruler').click();
  await expect.poll(() => bubble(page).count()).toBe(0);
  await button(page, 'Set piece').click();
  await refuseOne();
  await pressTile(page, 30, 39);
  await expect.poll(() => bubble(page).innerText()).toContain('beyond the tile');
  const [words, frame] = [await bubble(page).boundingBox(), await tileOf(page).boundingBox()];
  if (!words || !frame) throw new Error('no bubble on the tile');
  expect(words.y + words.height, 'no bubble hangs over the months').toBeLessThanOrEqual(
    frame.y + frame.height,
  );
  await openMenu(page);
  await page.getByRole('button', { name: /^Halves that build a ridge/u }).click();
  await expect.poll(() => bubble(page).count()).toBe(0);
});

test('a screen reader hears what was done last; a drag at a later month says where it is done', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await tileOf(page).focus();
  for (const key of ['n', 'n', 'n', 'ArrowDown']) await page.keyboard.press(key);
  await expect.poll(() => spoken(page)).toMatch(/^Done: Move piece p3, disc of .* middle\.$/u);
  await page.keyboard.press('Control+d');
  await expect.poll(() => spoken(page)).toContain('Done: Duplicate piece p3');
  await page.keyboard.press('Delete');
  await expect.poll(() => spoken(page)).toContain('Done: Delete piece p4');
  await page.keyboard.press('Control+z');
  await expect.poll(() => spoken(page)).toContain('Undone: Delete piece p4');

  await showMonth(page, 4);
  const from = await placeOnTile(page, 26, 5);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x, from.y + 12, { steps: 4 });
  await page.getByText('Pieces are set at month 0', { exact: false }).waitFor();
  await page.keyboard.press('Escape');
  await page.getByText('Pieces are set at month 0', { exact: false }).waitFor({ state: 'detached' });
  await page.mouse.up();
});

test('a ruler’s line is gone with its tool', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await button(page, 'Ruler').click();
  const [from, to] = [await placeOnTile(page, -20, 30), await placeOnTile(page, 10, 30)];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 3 });
  await page.mouse.up();
  // A level line has no height, so it does not count as visible.
  await page.locator('svg .rule:not(.under)').waitFor({ state: 'attached' });
  await button(page, 'Choose').click();
  await button(page, 'Ruler').click();
  expect(await page.locator('svg .rule').count()).toBe(0);
});

test('by keyboard the tile is one Tab and Enter away, and its crosshair is seen at once', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect.poll(() => tileOf(page).evaluate((tile) => tile === document.activeElement)).toBe(true);
  await button(page, 'Set piece').press('Enter');
  expect(await page.locator('svg .cross').count()).toBe(0);
  await page.keyboard.press('Tab');
  await tileOf(page).focus();
  await page.locator('svg .cross').first().waitFor({ state: 'attached' });
});

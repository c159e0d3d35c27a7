/** What the panels say to a person: ranges of numbers, long names, pairs that can meet, menus in full. */
import { expect, test } from 'vitest';
import { button, chooseFile, openMenu, outcomeMm, showMonth, untilGrown, untilOpen } from './grow-page';
import { HAND, openPage } from './open-page';

test('a number that cannot be is put back, and its range stays beside the field till the next good edit', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilOpen(page);
  const rate = page.getByRole('spinbutton', { name: 'Rim rate of Fern' });
  const range = page.getByRole('status').filter({ hasText: '0.2 to 15 mm a month' });
  const kept = await rate.inputValue();
  for (const entry of ['999', '-1', '', 'abc']) {
    await rate.fill(entry);
    await rate.press('Enter');
    await expect.poll(() => rate.inputValue(), { message: entry }).toBe(kept);
    await expect.poll(() => range.count(), { message: entry }).toBe(1);
  }
  await rate.fill('2,5');
  await rate.press('Enter');
  await expect.poll(() => rate.inputValue()).toBe('2.5');
  await expect.poll(() => range.count()).toBe(0);
});

const LONG = ['Weinrote Krustenkoralle vom Riff', 'Bernsteinfarbene Krustenkoralle'];
const PLAN = {
  seambench: 1,
  name: 'Long names',
  tile: { shape: 'square', sizeMm: 60 },
  varieties: [...LONG, 'Slate', 'Heather'].map((name, k) => ({
    ...{ id: `v${k}`, name, colour: `#${k + 2}0608${k}`, rimMmPerMonth: 3, aggression: 0.2 },
  })),
  pieces: [0, 1].map((k) => ({
    id: `p${k}`,
    variety: `v${k}`,
    at: [k * 12 - 6, 0],
    disc: { diameterMm: 12 },
  })),
  months: 4,
};

test.each([
  ['at a desk', {}],
  ['in a hand', { size: HAND, touch: true }],
])('pairs on the tile come first, both names whole: %s', async (_, opening) => {
  const page = await openPage({ reducedMotion: true, ...opening });
  await untilOpen(page);
  await chooseFile(page, 'long.json', JSON.stringify(PLAN));
  const panel = page.getByRole('region', { name: 'Will they take?' });
  const names = panel.getByText(LONG.join(' + '), { exact: true });
  await names.waitFor();
  expect(await names.evaluate((node) => node.scrollWidth - node.clientWidth)).toBeLessThanOrEqual(0);
  await expect.poll(() => panel.getByText('Slate + Heather', { exact: true }).isVisible()).toBe(false);
  await panel.getByText('Other pairs (5)').click();
  await panel.getByText('Slate + Heather', { exact: true }).waitFor();
});

test('the menu of plans shows each text whole, Amber of the first one too', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilOpen(page);
  await openMenu(page);
  const first = page.getByRole('button', { name: /^Two that take, one that does not/ });
  expect(await first.innerText()).toContain('Amber');
  const cut = await page
    .locator('[popover] li span')
    .evaluateAll((texts) =>
      texts.filter((text) => text.scrollHeight > text.clientHeight + 1 && text.clientHeight > 0),
    );
  expect(cut).toEqual([]);
});

test('what the button of a variety opens is not covered by the button’s own tip', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilOpen(page);
  const disc = page.getByRole('button', { name: /^Colour of Fern/ });
  await disc.hover();
  await page.locator('.tip').getByText('Opens colour').waitFor();
  await disc.click();
  await page.getByText('Remove Fern').waitFor();
  // Longer than a tip waits before it shows.
  await page.mouse.move(0, 0);
  await disc.hover();
  await page.waitForTimeout(700);
  expect(await page.locator('.tip').isVisible()).toBe(false);
});

test('a file that is refused names things as the page does', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilOpen(page);
  const over = { ...PLAN, pieces: PLAN.pieces.map((piece) => ({ ...piece, at: [0, 0] })) };
  await chooseFile(page, 'over.json', JSON.stringify(over));
  const words = await page.getByRole('dialog').innerText();
  expect(words).toContain(`The ${LONG[1]} disc of 12 mm, in the middle, lies on the ${LONG[0]} disc`);
  expect(words).not.toMatch(/pieces\[|allowed is|\bp1\b/);
});

test('the reading says on the screen what the columns of the seeds are', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  const table = page.getByRole('table', { name: /^Numbers of month/ });
  for (const words of ['median', 'middle 80', 'vein width mm', 'month 8’s seam settled by month']) {
    await expect.poll(() => table.innerText()).toContain(words);
  }
  await showMonth(page, 6);
  await expect.poll(() => table.innerText()).toContain('month 6’s seam settled by');
  await expect.poll(() => outcomeMm(page, 'fused')).toBeGreaterThan(0);
  await expect.poll(() => button(page, 'Undo').isDisabled()).toBe(true);
});

/** The work between the first cut and the sale, as a person plans it: on the strip, in the panel and on the tile. */
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { button, placeOnTile, pressTile, showMonth, stripOf, untilGrown, untilOpen } from './grow-page';
import { HAND, openPage } from './open-page';

const panelOf = (page: Page): Locator => page.getByRole('region', { name: 'Steps', exact: true });
const pins = (page: Page): Locator => page.getByRole('group', { name: 'Steps by day' }).getByRole('button');

async function add(page: Page, kind: string): Promise<void> {
  await panelOf(page).getByRole('button', { name: 'Add a step' }).click();
  await button(page, kind).click();
}

async function covered(page: Page): Promise<number> {
  const row = page.getByRole('row', { name: /^tile covered/ });
  return Number.parseFloat(await row.getByRole('cell').first().innerText());
}

test('by mouse: trim, recut with a grid, turn the parts, drag a pin, switch off, undo it all', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await showMonth(page, 4);
  const before = await covered(page);
  await add(page, 'Trim');
  await expect.poll(() => covered(page), { timeout: 30_000 }).toBeLessThan(before - 3);
  await expect.poll(() => panelOf(page).innerText()).toMatch(/1 cutting, 1 of two colours: \d+ mm² Fern/u);

  await add(page, 'Recut');
  await expect.poll(() => panelOf(page).innerText(), { timeout: 30_000 }).toMatch(/recut into 64 parts/u);
  await expect.poll(() => panelOf(page).innerText(), { timeout: 30_000 }).toMatch(/lost \d+ mm² Fern/u);
  await panelOf(page).getByLabel('set the parts').selectOption('quarter turns');
  await expect.poll(() => panelOf(page).innerText()).toMatch(/64 set anew/u);

  const trim = page.getByRole('group', { name: 'Steps by day' }).getByRole('button', { name: /trim 3 mm/u });
  const from = await trim.boundingBox();
  if (!from) throw new Error('the pin is on the strip');
  await page.mouse.move(from.x + 9, from.y + 9);
  await page.mouse.down();
  await page.mouse.move(from.x + 69, from.y + 9, { steps: 6 });
  await page.mouse.up();
  await expect.poll(() => trim.getAttribute('aria-label')).not.toContain('Day 121');

  await panelOf(page).getByRole('button', { name: 'Switch off' }).click();
  await expect.poll(() => button(page, 'Undo').getAttribute('aria-description')).toContain('Switch off');
  for (let k = 0; k < 5; k++) await page.keyboard.press('Control+z');
  await expect.poll(() => pins(page).count()).toBe(0);
  await expect.poll(() => covered(page), { timeout: 30_000 }).toBe(before);
});

test('by keyboard: a pin is moved by days and months, switched off, removed and brought back', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await showMonth(page, 3);
  await panelOf(page).getByRole('button', { name: 'Add a step' }).focus();
  await page.keyboard.press('Enter');
  await button(page, 'Trim').focus();
  await page.keyboard.press('Enter');
  const pin = pins(page).first();
  await expect.poll(() => pin.getAttribute('aria-label')).toBe('Day 91: trim 3 mm all round');
  await pin.focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => pin.getAttribute('aria-label')).toBe('Day 92: trim 3 mm all round');
  await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(() => pin.getAttribute('aria-label')).toBe('Day 122: trim 3 mm all round');
  await page.keyboard.press('Space');
  await expect.poll(() => pin.getAttribute('aria-label')).toContain('(switched off)');
  await page.keyboard.press('Delete');
  await expect.poll(() => pins(page).count()).toBe(0);
  await page.keyboard.press('Control+z');
  await expect.poll(() => pins(page).count()).toBe(1);
});

test('a line drawn with the ruler is cut along, and what is cut out becomes a plan of its own', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await showMonth(page, 3);
  await add(page, 'Scrape');
  await button(page, 'Ruler').click();
  const [from, to] = [await placeOnTile(page, -10, -10), await placeOnTile(page, 10, 10)];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 5 });
  await page.mouse.up();
  await button(page, 'Along the ruler’s line').click();
  await expect
    .poll(() => button(page, 'Undo').getAttribute('aria-description'))
    .toContain('Change the scraping');

  await add(page, 'Isolate');
  await expect.poll(() => panelOf(page).innerText()).toMatch(/lives with a chance of (over |under )?\d+ %/u);
  await button(page, 'Open the cutting as a plan of its own').click();
  await expect.poll(() => page.title(), { timeout: 30_000 }).toContain('Cutting of');
  await page.keyboard.press('Control+z');
  await expect.poll(() => page.title()).not.toContain('Cutting of');
});

test('at 390 px by touch: a step is added, opened and taken away', async () => {
  const page = await openPage({ size: HAND, touch: true, reducedMotion: true });
  await untilOpen(page);
  await stripOf(page).focus();
  await panelOf(page).getByRole('button', { name: 'Add a step' }).tap();
  await button(page, 'Lift').tap();
  await expect.poll(() => panelOf(page).innerText()).toContain('lift p1');
  await panelOf(page).getByRole('button', { name: 'Remove' }).tap();
  await expect.poll(() => panelOf(page).innerText()).not.toContain('lift p1');
});

test('with the cut line tool: sawn across, a part swapped by hand and turned by key, a patch cut out', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await showMonth(page, 4);
  const drag = async (from: readonly [number, number], to: readonly [number, number]): Promise<void> => {
    const [a, b] = [await placeOnTile(page, ...from), await placeOnTile(page, ...to)];
    await page.mouse.move(a.x, a.y);
    await page.mouse.down();
    await page.mouse.move(b.x, b.y, { steps: 4 });
    await page.mouse.up();
  };
  await button(page, 'Cut line').click();
  await page.getByText('Drag from edge to edge.').waitFor();
  await drag([0, -38], [0, 38]);
  await page.getByText('Adds to the recut of day 121.').waitFor();
  await drag([-38, 0], [38, 0]);
  await expect.poll(() => panelOf(page).innerText()).toMatch(/day 121: recut into 4 parts/u);

  await button(page, 'Choose').click();
  await drag([-12, -12], [28, -12]);
  await expect.poll(() => panelOf(page).innerText()).toMatch(/2 set anew/u);
  await page.keyboard.press('n');
  await page.keyboard.press(']');
  await expect
    .poll(() => button(page, 'Undo').getAttribute('aria-description'))
    .toContain('Turn s1.2 in the recut of day 121');

  await showMonth(page, 2);
  await button(page, 'Cut line').click();
  await page.getByText('patch', { exact: true }).click();
  await page.getByLabel('margin').fill('1');
  await pressTile(page, 26, 5);
  const proposal = page.getByRole('group', { name: 'Patch to cut out' });
  await expect.poll(() => proposal.innerText()).toMatch(/Amber .* mm², margin 1 mm\. .*under 3 mm/su);
  // Where the cut crosses a seam that has not fused, it takes a cutting of each side.
  await button(page, 'Cut it out').click();
  await expect
    .poll(() => panelOf(page).innerText(), { timeout: 30_000 })
    .toMatch(/day 60: cut out a patch, kerf 0\.8 mm\s*\d+ cuttings?.*: .*mm² Amber/su);
});

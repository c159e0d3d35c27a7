/** The whole job as a person does it: by mouse, by keyboard alone, by touch. */
import { text as textOf } from 'node:stream/consumers';
import { expect, test } from 'vitest';
import {
  button,
  chooseFile,
  emptyTile,
  openMenu,
  outcomeMm,
  placeOnTile,
  pressTile,
  showMonth,
  stripOf,
  tileColours,
  tileOf,
  untilGrown,
} from './grow-page';
import { HAND, openPage } from './open-page';

test('a first visit plays from month 2 to 8 and names the seam that fuses and the ridge', async () => {
  const page = await openPage();
  await untilGrown(page);
  expect(Number(await stripOf(page).getAttribute('aria-valuenow'))).toBeLessThan(8);
  await expect.poll(() => stripOf(page).getAttribute('aria-valuenow'), { timeout: 40_000 }).toBe('8');
  await button(page, 'Play').waitFor();
  await expect.poll(() => tileOf(page).innerText()).toContain('fused');
  await expect.poll(() => tileOf(page).innerText()).toContain('ridge');
  await expect.poll(() => outcomeMm(page, 'fused')).toBeGreaterThan(20);
  await expect.poll(() => outcomeMm(page, 'ridge')).toBeGreaterThan(20);
  await expect.poll(() => tileColours(page)).toBeGreaterThan(30);
});

test('with reduced motion months 2 and 8 stand side by side and nothing plays', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  const widthOf = async (month: string): Promise<number> =>
    (
      await page
        .locator('.stage canvas')
        .nth(month === 'month 2' ? 0 : 1)
        .boundingBox()
    )?.width ?? 0;
  // The tile names the month that is drawn, so while it grows both may say 'month 2'.
  const stage = page.locator('.stage');
  await stage.getByRole('figure').getByText('month 2', { exact: true }).waitFor();
  await stage.getByText('month 8', { exact: true }).waitFor();
  await expect.poll(() => widthOf('month 2')).toBeGreaterThan(200);
  await expect
    .poll(async () => Math.abs((await widthOf('month 8')) - (await widthOf('month 2'))))
    .toBeLessThan(2);
  await expect.poll(() => stripOf(page).getAttribute('aria-valuenow')).toBe('8');
  await button(page, 'Play').waitFor();
});

test('by mouse: set pieces, play, read, change the chance, undo, save, open again', async () => {
  const page = await openPage();
  await untilGrown(page);
  await emptyTile(page);

  await page.getByRole('radio', { name: 'square' }).first().check({ force: true });
  await pressTile(page, -7, 0);
  await page.getByLabel('Variety to set').selectOption({ label: 'Garnet' });
  await pressTile(page, 7, 0);
  await page.getByText('An empty tile.').waitFor({ state: 'detached' });

  // The pair begins unknown, whatever the preset before said of it.
  const took = page.getByRole('spinbutton', { name: 'Fern + Garnet: took' });
  await expect.poll(() => took.inputValue()).toBe('0');
  await took.fill('15');
  await took.press('Enter');

  await button(page, 'Play').click();
  await expect.poll(() => stripOf(page).getAttribute('aria-valuenow'), { timeout: 40_000 }).not.toBe('0');
  await button(page, 'Pause').click();
  await showMonth(page, 8);
  await expect.poll(() => outcomeMm(page, 'fused'), { timeout: 30_000 }).toBeGreaterThan(5);

  await page.getByLabel('Fern + Garnet: say it as').selectOption({ label: 'a chance' });
  const chance = page.getByRole('spinbutton', { name: 'Fern + Garnet: chance to take' });
  await chance.fill('0');
  await chance.press('Enter');
  await expect.poll(() => outcomeMm(page, 'fused'), { timeout: 30_000 }).toBe(0);
  await button(page, 'Undo').click();
  await expect.poll(() => outcomeMm(page, 'fused'), { timeout: 30_000 }).toBeGreaterThan(5);
  await button(page, 'Redo').click();
  await expect.poll(() => outcomeMm(page, 'fused'), { timeout: 30_000 }).toBe(0);

  const seed = page.getByRole('textbox', { name: 'Seed' });
  await seed.fill('tide');
  await seed.press('Enter');
  const saving = page.waitForEvent('download');
  await button(page, 'Save').click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toBe('My tile.json');
  const text = await textOf(await saved.createReadStream());
  expect(JSON.parse(text)).toMatchObject({ seambench: 1, name: 'My tile', seed: 'tide' });

  await openMenu(page);
  await page.getByRole('button', { name: /^Halves that build a ridge/ }).click();
  await expect.poll(() => page.title()).toContain('Halves that build a ridge');
  await button(page, 'another').click();
  await expect.poll(() => seed.inputValue()).not.toBe('tide');
  await chooseFile(page, 'mine.json', text);
  await expect.poll(() => page.title()).toContain('My tile');
  await expect.poll(() => seed.inputValue()).toBe('tide');
  await showMonth(page, 8);
  await expect.poll(() => outcomeMm(page, 'ridge'), { timeout: 30_000 }).toBeGreaterThan(5);
});

test('by mouse: a dragged piece is previewed, kept as one entry, and undone', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  await showMonth(page, 0);
  const from = await placeOnTile(page, 26, 5);
  const to = await placeOnTile(page, 26, 24);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 8 });
  await page.mouse.up();
  await expect.poll(() => button(page, 'Undo').getAttribute('aria-description')).toContain('Move piece p3');
  await page.keyboard.press('Control+z');
  await expect.poll(() => button(page, 'Undo').isDisabled()).toBe(true);
});

test('by keyboard alone: set two pieces, grow, read, change the tries, undo', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  const tabTo = async (name: RegExp): Promise<void> => {
    for (let press = 0; press < 80; press++) {
      await page.keyboard.press('Tab');
      const label = await page.evaluate(() => {
        const here = document.activeElement;
        const own = here?.getAttribute('aria-label') ?? here?.textContent ?? '';
        const labels = here instanceof HTMLInputElement ? [...(here.labels ?? [])] : [];
        return [own.trim(), ...labels.map((entry) => entry.textContent.trim())].join(' ');
      });
      if (name.test(label)) return;
    }
    throw new Error(`${name.source} cannot be reached by Tab`);
  };

  await tabTo(/^Plan:/);
  await page.keyboard.press('Enter');
  await tabTo(/^Empty tile/);
  await page.keyboard.press('Enter');
  await tabTo(/^Tile/);
  for (let step = 0; step < 2; step++) await page.keyboard.press('Shift+ArrowLeft');
  await page.keyboard.press('Enter');
  for (let step = 0; step < 4; step++) await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Enter');
  await expect.poll(() => button(page, 'Undo').getAttribute('aria-description')).toContain('Set piece p2');
  await page.keyboard.press('Escape');

  await tabTo(/^Month shown/);
  await page.keyboard.press('End');
  await expect.poll(() => stripOf(page).getAttribute('aria-valuenow')).toBe('12');
  await untilGrown(page);
  await tabTo(/Grow for/);
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await expect
    .poll(() => button(page, 'Undo').getAttribute('aria-description'))
    .toContain('Grow for 13 months');

  await tileOf(page).focus();
  await page.keyboard.press('n');
  await page.keyboard.press('Delete');
  await page.keyboard.press('Control+z');
  await expect.poll(() => button(page, 'Redo').getAttribute('aria-description')).toContain('Delete piece p1');
  await page.keyboard.press('Control+Shift+z');
  await expect.poll(() => button(page, 'Undo').getAttribute('aria-description')).toContain('Delete piece p1');

  await page.keyboard.press('?');
  await page.getByRole('dialog', { name: 'Keys' }).waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
});

test('at 390 px by touch: set a piece, choose a month, read, go to the other view and back', async () => {
  const page = await openPage({ size: HAND, touch: true, reducedMotion: true });
  await untilGrown(page);
  await openMenu(page);
  await button(page, 'Empty tile').tap();
  const at = await placeOnTile(page, 0, 0);
  await page.touchscreen.tap(at.x, at.y);
  await page.getByText('An empty tile.').waitFor({ state: 'detached' });

  const strip = await stripOf(page).boundingBox();
  if (!strip) throw new Error('the strip is not on the page');
  await page.touchscreen.tap(strip.x + strip.width / 2, strip.y + strip.height / 2);
  await expect.poll(() => stripOf(page).getAttribute('aria-valuenow')).toBe('6');
  await untilGrown(page);

  const small = await page.evaluate(() =>
    [...document.querySelectorAll('button, select, input, [role=slider], summary, nav a')]
      .filter((element) => element.checkVisibility() && !element.classList.contains('spoken'))
      .map((element) => ({ box: element.getBoundingClientRect(), name: element.outerHTML.slice(0, 90) }))
      .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
      .map(({ name }) => name),
  );
  // A ticked box is 16 px wide inside a label of 36 px that takes the finger.
  expect(small.filter((name) => !name.includes('type="checkbox"'))).toEqual([]);

  await page.getByRole('link', { name: 'What this model knows' }).last().tap();
  await page.getByRole('heading', { name: 'What this model knows and does not' }).waitFor();
  await page.goBack();
  await stripOf(page).waitFor();
});

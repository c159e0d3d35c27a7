/** Everybody can use it: the rules of axe, room at 1280 x 800, tooltips with units on every control. */
import { expect, test } from 'vitest';
import { COLOUR_RULES, faults, HAND_RULES } from './axe';
import { openMenu, untilGrown, untilOpen } from './grow-page';
import { DESK, HAND, openPage } from './open-page';

test('axe finds nothing in Grow: light, with menu and numbers open, dark', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  expect(await faults(page), 'light').toEqual([]);
  await page.getByRole('button', { name: 'a guess' }).first().click();
  await page.getByText('Settings of growth').click();
  await openMenu(page);
  expect(await faults(page), 'all open').toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await faults(page, COLOUR_RULES), 'dark').toEqual([]);
});

test('axe finds nothing in Grow in a hand', async () => {
  const page = await openPage({ size: HAND, touch: true, reducedMotion: true });
  await untilGrown(page);
  expect(await faults(page)).toEqual([]);
});

test('axe finds nothing in what the model knows: light, dark and narrow', async () => {
  const page = await openPage({ hash: '#/knows', reducedMotion: true });
  await page.getByRole('heading', { name: 'What this model knows and does not' }).waitFor();
  expect(await faults(page), 'light').toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.setViewportSize(HAND);
  expect(await faults(page), 'dark, narrow').toEqual([]);
});

test('by keyboard alone a tile is branched and adopted; axe finds nothing in Bench: light, dark and narrow', async () => {
  const page = await openPage({ hash: '#/bench', reducedMotion: true });
  const press = async (name: RegExp): Promise<void> => {
    const control = page.getByRole('button', { name });
    await control.waitFor();
    // Only Tab leads there: what the keyboard cannot reach is not found.
    for (let tabs = 0; tabs < 60; tabs++) {
      if (await control.evaluate((element) => element === document.activeElement)) break;
      await page.keyboard.press('Tab');
    }
    expect(await control.evaluate((element) => element === document.activeElement), String(name)).toBe(true);
    await page.keyboard.press('Enter');
  };
  await press(/^Branch here/);
  const compared = page.getByRole('table', { name: /^Readings of both/ });
  await compared.waitFor();
  expect(await faults(page), 'light').toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.setViewportSize(HAND);
  expect(await faults(page, COLOUR_RULES), 'dark, narrow').toEqual([]);
  await press(/^Adopt Branch 1/);
  // The branch was open; now the tile is, with what it has taken over.
  await page.getByRole('button', { name: /^Open now Two that take/ }).waitFor();
});

/** In a hand bars lie over what is scrolled beneath them: the page is as high as it takes to see all of it. */
const HIGH_HAND = { width: HAND.width, height: 6000 };

test('axe finds nothing in Trials: light, dark and narrow', async () => {
  const page = await openPage({ hash: '#/trials', reducedMotion: true });
  await page.getByRole('button', { name: 'Look at an invented farm' }).click();
  await page.getByRole('button', { name: 'Begin a log of my own' }).waitFor();
  for (const [part, seen] of [
    ['tiles/t3', page.getByRole('link', { name: 'Read it today' })],
    ['tiles/new', page.getByLabel('What stands on its tag')],
    ['read/t112', page.getByRole('button', { name: /^Keep and go/ })],
    ['readings', page.getByRole('columnheader').first()],
    ['pairs', page.getByRole('heading', { name: 'What to try next' })],
    ['rates', page.getByRole('heading', { name: 'Rim rate' })],
    ['tanks', page.getByRole('button', { name: 'Note an event' })],
  ] as const) {
    await page.evaluate((hash) => (location.hash = hash), `#/trials/${part}`);
    await seen.waitFor();
    if (part === 'pairs') {
      await page.getByRole('button', { name: /^Slate and Flint: took/ }).click();
      await page.getByRole('heading', { name: 'Slate and Flint' }).waitFor();
    }
    expect(await faults(page), `${part}, light`).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    await page.setViewportSize(HIGH_HAND);
    expect(await faults(page, HAND_RULES), `${part}, dark, narrow`).toEqual([]);
    await page.setViewportSize(DESK);
    await page.emulateMedia({ colorScheme: 'light' });
  }
});

test('Grow fits 1280 x 800 without scrolling', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilGrown(page);
  for (const preset of ['Two that take', 'Halves that fuse', 'A mosaic']) {
    await openMenu(page);
    await page.getByRole('button', { name: new RegExp(`^${preset}`) }).click();
    const overflowing = await page.evaluate(() =>
      [document.documentElement, ...document.querySelectorAll('.plan, .reading, .stage, .months')]
        .filter(
          (element) =>
            element.scrollHeight > element.clientHeight + 1 || element.scrollWidth > element.clientWidth + 1,
        )
        .map((element) => `${element.className} ${element.scrollHeight} > ${element.clientHeight}`),
    );
    expect(overflowing, preset).toEqual([]);
  }
});

test('every control says in one sentence what it does', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilOpen(page);
  const silent = await page.evaluate(() =>
    [...document.querySelectorAll('main button, main input, main select, header button, nav a')]
      .filter((element) => element.checkVisibility() && !element.closest('[popover], .tile'))
      .filter((element) => {
        const said = element.closest('[aria-description]')?.getAttribute('aria-description') ?? '';
        return !/^[A-Z].*[.)]$/.test(said);
      })
      .map((element) => element.outerHTML.slice(0, 120)),
  );
  expect(silent).toEqual([]);
});

test('eight varieties and long names stay within their panel', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilOpen(page);
  for (let added = 0; added < 5; added++) await page.getByRole('button', { name: '+ Add' }).click();
  const name = page.getByLabel('Name of the variety').first();
  await name.fill('Ausgesprochen langwieriger Buntfleckenkrustenkorallenname');
  await name.press('Enter');
  const wide = await page.evaluate(() =>
    [document.documentElement, ...document.querySelectorAll('.plan, .reading')]
      .filter((element) => element.scrollWidth > element.clientWidth)
      .map((element) => element.className),
  );
  expect(wide).toEqual([]);
});

/** What goes wrong is said in words, where it is, with what to do; the person's plan stays. */
import { expect, test } from 'vitest';
import { button, chooseFile, showMonth, stripOf, untilGrown, untilOpen } from './grow-page';
import { openPage } from './open-page';

/** Keeps the page's workers where a test can end them. */
const HOLD_WORKERS = `window.held = []; window.Worker = class extends Worker {
  constructor(...about) { super(...about); window.held.push(this); } };`;

const BROKEN: readonly (readonly [what: string, text: string, says: RegExp])[] = [
  ['text that is not a plan', 'tulips', /not JSON/],
  ['a plan cut short', '{"seambench":1,"name":"x","tile":', /not JSON/],
  ['a plan of a newer version', '{"seambench":99}', /newer/i],
  [
    'a plan with a wrong number',
    '{"seambench":1,"name":"x","tile":{"shape":"disc","sizeMm":9}}',
    /The size of the tile is 9: it must be a number from 20 to 300 mm\./,
  ],
  ['JSON of something else', '{"version":3,"items":[]}', /^.*This is not a Seambench plan/s],
];

test('broken and too new files are refused in words, and the plan stays', async () => {
  const page = await openPage({ reducedMotion: true });
  await untilOpen(page);
  const title = await page.title();
  for (const [what, text, says] of BROKEN) {
    await chooseFile(page, 'broken.json', text);
    const dialog = page.getByRole('dialog', { name: /could not be opened/ });
    await dialog.waitFor();
    expect(await dialog.innerText(), what).toMatch(says);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(await page.title(), what).toBe(title);
  }
  await showMonth(page, 4);
});

test('a killed worker is started again, the person is told, and the plan grows on', async () => {
  const page = await openPage({ before: HOLD_WORKERS, reducedMotion: true });
  await untilGrown(page);
  await page.evaluate(() => {
    (window as unknown as { held: Worker[] }).held.forEach((worker) => worker.terminate());
  });
  await button(page, 'another').click();
  await page
    .getByText('The engine stopped and was started again; your plan is safe.')
    .waitFor({ timeout: 20_000 });
  await showMonth(page, 12);
  await expect.poll(() => stripOf(page).getAttribute('aria-valuetext'), { timeout: 30_000 }).toContain('%');
});

test('where no worker can start the page says so and the plan can be saved', async () => {
  const before = `window.Worker = class { constructor() { throw new DOMException('refused', 'SecurityError'); } };`;
  const page = await openPage({ before, reducedMotion: true });
  await page.getByText('did not let the growth engine start').waitFor({ timeout: 20_000 });
  const saving = page.waitForEvent('download');
  await button(page, 'Save the plan').first().click();
  expect((await saving).suggestedFilename()).toContain('.json');
});

test('without WebGL the numbers still come, and the page says what is missing', async () => {
  const beforeDrawing = 'OffscreenCanvas.prototype.getContext = () => null;';
  const page = await openPage({ beforeDrawing, reducedMotion: true, expected: [/WebGL/i] });
  await page.getByText('it offers no WebGL in workers').first().waitFor();
  await untilGrown(page);
  await expect.poll(() => stripOf(page).getAttribute('aria-valuetext'), { timeout: 30_000 }).toContain('%');
});

/** A grower's own lesson, from a file of ours to the check of what it claims. */
import { text as textOf } from 'node:stream/consumers';
import { expect, test } from 'vitest';
import { faults } from './axe';
import { button } from './grow-page';
import { openPage } from './open-page';

test('a lesson of one’s own: saved from ours, changed, refused where it is wrong, taken in, read, its claims checked, taken out', async () => {
  const page = await openPage({ hash: '#/school/meeting' });
  const saving = page.waitForEvent('download');
  await button(page, 'Save this lesson as a file').click();
  const ours = await textOf(await (await saving).createReadStream());
  const mine = ours
    .replace('"id": "meeting"', '"id": "slow-tank"')
    .replace('"title": "Meeting and the first weeks"', '"title": "Our slow tank"')
    // what the engine does not show
    .replace('"from": 0.85', '"from": 0.95')
    .replace('"to": 1', '"to": 0.951');
  const fileOf = (text: string) => ({
    name: 'slow.lesson.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
  await page.getByRole('link', { name: 'School', exact: true }).first().click();
  const opens = page.getByLabel('Open a lesson');
  await opens.setInputFiles(fileOf(mine.replace('"isRight": true', '"isRight": false')));
  await page.getByText('one has to be right, and 0 are').waitFor();
  await page.keyboard.press('Escape');
  await opens.setInputFiles(fileOf(mine));
  await page.getByText('“Our slow tank” is taken in.').waitFor();
  // kept over a visit
  await page.waitForTimeout(400);
  await page.reload();
  await page.getByRole('link', { name: 'Our slow tank' }).click();
  await page.getByText('a lesson of your own').waitFor();
  await button(page, 'Undecided, with the date').click();
  await page.getByText('a lesson of your own · done').waitFor();
  await button(page, 'Check it on 8 other tiles').click();
  await page.getByText('✗ It does not hold').waitFor({ timeout: 60_000 });
  await page.getByRole('link', { name: 'Back to School' }).click();
  await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
  expect(await faults(page), 'list with own lessons').toEqual([]);
  await button(page, 'Remove “Our slow tank”').click();
  await button(page, 'Take it out').click();
  await page.getByText('“Our slow tank” is taken out.').waitFor();
  expect(await page.getByRole('link', { name: 'Our slow tank' }).count()).toBe(0);
});

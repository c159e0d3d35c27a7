/** The page on what the model knows shows the report of the last `npm run validate`, as it was kept. */
import { expect, test } from 'vitest';
import { tallyOf, type Report } from '../../src/checks/report';
import { MODEL_VERSION } from '../../src/model/defaults';
import later from '../../.ci/later.json';
import kept from '../../src/view/knows/report.json';
import { untilGrown } from './grow-page';
import { openPage } from './open-page';

const report = kept as unknown as Report;

test('the report says what was checked, when, and how to repeat it', async () => {
  const page = await openPage({ hash: '#/knows' });
  const { checks, passed } = tallyOf(report);
  const tally = page.getByText(`${checks} checks: ${passed} pass`);
  await tally.waitFor();
  const words = await tally.innerText();
  expect(words).toContain(report.madeOn);
  expect(words).toContain(`model version ${report.modelVersion}`);
  expect(words).toContain('npm run --silent validate');
  expect(await page.getByText('the report was made with another one').count()).toBe(
    report.modelVersion === MODEL_VERSION ? 0 : 1,
  );
});

test('each topic opens to its checks, with mark, figures, tolerance and source, and its plot', async () => {
  const page = await openPage({ hash: '#/knows' });
  for (const topic of report.topics) {
    const part = page
      .locator('details')
      .filter({ hasText: `${topic.title}: ` })
      .first();
    await part.locator('summary').click();
    expect(await part.locator('li').count()).toBe(topic.outcomes.length);
    const [first] = topic.outcomes;
    const words = await part.locator('li').first().innerText();
    expect(words).toContain(first.name);
    expect(words).toContain(first.pass ? 'passes' : 'falls short');
    expect(words).toContain(first.because);
    expect(words).toContain(first.source);
    expect(await part.getByRole('img').count()).toBe(topic.plots.length);
    await part.locator('summary').click();
  }
});

test('what falls short stands open on the page with its reason', async () => {
  const page = await openPage({ hash: '#/knows' });
  await page.getByText('checks:').waitFor();
  for (const outcome of report.topics.flatMap((topic) => topic.outcomes).filter(({ pass }) => !pass)) {
    const row = page.locator('main > ul > li').filter({ hasText: outcome.name });
    await row.waitFor();
    expect(await row.innerText()).toContain(outcome.known ?? 'falls short');
  }
});

test('the first view does not ask for what is loaded later, the report among it', async () => {
  const page = await openPage();
  await untilGrown(page);
  await page.getByRole('region', { name: 'Steps', exact: true }).waitFor();
  const asked = await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));
  for (const part of later) expect(asked.filter((name) => name.includes(`/${part}-`))).toEqual([]);
});

import { expect, inject, test } from 'vitest';
import { DESK, HAND, openPage } from './open-page';

test.each([
  ['at a desk, light', { size: DESK }],
  ['at a desk, dark', { size: DESK, dark: true }],
  ['in a hand, by touch, with reduced motion', { size: HAND, touch: true, reducedMotion: true }],
])('opens under a sub-path with an empty console: %s', async (_, opening) => {
  const page = await openPage(opening);
  await page.locator('#app > *').first().waitFor();
  await page.waitForLoadState('networkidle');

  expect(new URL(page.url()).pathname).toBe(new URL(inject('pageAt')).pathname);
  expect(await page.title()).toContain('Seambench');
  const sideways = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(sideways, 'px that the page can be scrolled sideways').toBeLessThanOrEqual(0);
});

test('the built page carries its policy and no inline script or style', async () => {
  const text = await (await fetch(inject('pageAt'))).text();
  expect(text).toContain('http-equiv="Content-Security-Policy"');
  expect(text).not.toMatch(/<style|<script(?![^>]*src=)|\sstyle=/);
});

// Fails if the harness lets a fault pass: then nothing above would prove anything.
test.fails('a console error fails a test', async () => {
  const page = await openPage();
  const heard = page.waitForEvent('console', (message) => message.type() === 'error');
  await page.evaluate(() => {
    console.error('a fault made on purpose');
  });
  await heard;
});

test.fails('what the policy refuses fails a test', async () => {
  const page = await openPage();
  const heard = page.waitForEvent('console', (message) => message.text().startsWith('policy: '));
  await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'document.title = "refused"';
    document.head.append(script);
  });
  await heard;
});

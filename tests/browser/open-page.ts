/**
 * Opens the built page in a fresh context and, when the test ends, fails it for anything that a person would not
 * see but we must know: console errors and warnings, uncaught errors, what the policy refused, failed requests and
 * requests to another host.
 */
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, expect, inject, onTestFinished } from 'vitest';

export const DESK = { width: 1280, height: 800 };
export const HAND = { width: 390, height: 844 };

export interface Opening {
  size?: { width: number; height: number };
  touch?: boolean;
  reducedMotion?: boolean;
  dark?: boolean;
  /** What follows the page's address, such as '#/knows'. */
  hash?: string;
  /** Console lines that this test brings about on purpose. */
  expected?: RegExp[];
  /** Runs in the page before its own scripts. */
  before?: string;
  /** Runs in the worker that draws, before its own script. */
  beforeDrawing?: string;
}

/** Software GL says so when its pixels are read back, as tests do and the page does not. */
const READ_BACK = /GPU stall due to ReadPixels/;

let browser: Browser | undefined;

afterAll(async () => {
  await browser?.close();
});

export async function openPage(opening: Opening = {}): Promise<Page> {
  const { size = DESK, touch = false, reducedMotion = false, dark = false, hash = '' } = opening;
  browser ??= await chromium.connect(inject('browserAt'));
  const context = await browser.newContext({
    viewport: size,
    hasTouch: touch,
    isMobile: touch,
    reducedMotion: reducedMotion ? 'reduce' : 'no-preference',
    colorScheme: dark ? 'dark' : 'light',
    acceptDownloads: true,
  });
  const expected = [READ_BACK, ...(opening.expected ?? [])];
  const faults: string[] = [];
  const note = (fault: string): void => {
    if (!expected.some((pattern) => pattern.test(fault))) faults.push(fault);
  };
  const home = new URL(inject('pageAt')).origin;

  context.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) note(`console ${message.type()}: ${message.text()}`);
  });
  context.on('weberror', (fault) => note(`uncaught: ${String(fault.error())}`));
  context.on('request', (request) => {
    const { protocol, origin } = new URL(request.url());
    if (protocol.startsWith('http') && origin !== home) note(`asked another host: ${request.url()}`);
  });
  context.on('response', (response) => {
    if (response.status() >= 400) note(`answered ${response.status()}: ${response.url()}`);
  });
  await context.addInitScript(`document.addEventListener('securitypolicyviolation', (event) => {
    console.error('policy: ' + event.violatedDirective + ' refused ' + event.blockedURI + ' ' + event.sample);
  })`);
  if (opening.before !== undefined) await context.addInitScript(opening.before);
  const { beforeDrawing } = opening;
  if (beforeDrawing !== undefined) {
    await context.route(/easel\.worker/, async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: `${beforeDrawing}\n${await response.text()}` });
    });
  }

  onTestFinished(async () => {
    await context.close();
    expect(faults, 'the console and the network are as they should be').toEqual([]);
  });

  const page = await context.newPage();
  await page.goto(inject('pageAt') + hash);
  return page;
}

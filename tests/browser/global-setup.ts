/** One browser and one server for all browser tests: the built page under a sub-path, as a plain host would serve it. */
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';
import type { TestProject } from 'vitest/node';
import { CHROMIUM_FLAGS, findBrowser } from '../../.ci/find-browser.mjs';
import { serve } from '../../.ci/serve.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    browserAt: string;
    pageAt: string;
  }
}

const DIST = new URL('../../dist/', import.meta.url).pathname;

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  if (!existsSync(`${DIST}index.html`)) {
    throw new Error('There is no built page to test: run npm run build first.');
  }
  const browser = findBrowser();
  if ('cure' in browser) throw new Error(browser.cure);

  const server = await serve(DIST, { port: 0, under: '/bench/seambench/' });
  const shared = await chromium.launchServer({ executablePath: browser.found, args: CHROMIUM_FLAGS });
  project.provide('pageAt', server.address);
  project.provide('browserAt', shared.wsEndpoint());
  return async () => {
    await shared.close();
    await server.close();
  };
}

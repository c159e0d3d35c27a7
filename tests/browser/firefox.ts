/**
 * A page in Firefox for the check of same bits. Debian's Firefox is driven by puppeteer-core over WebDriver BiDi, for
 * playwright-core drives only its own build. Where there is none, `.ci/find-firefox.mjs` says why, in words.
 */
import puppeteer from 'puppeteer-core';

export interface FirefoxPage {
  readonly version: string;
  /** Runs a program's text, then gives the value of an expression. */
  readonly run: (text: string, expression: string) => Promise<unknown>;
  readonly close: () => Promise<void>;
}

export async function openFirefox(program: string): Promise<FirefoxPage> {
  const browser = await puppeteer.launch({ browser: 'firefox', executablePath: program, headless: true });
  const page = await browser.newPage();
  return {
    version: await browser.version(),
    run: (text, expression) => page.evaluate(`${text}\n;${expression}`),
    close: () => browser.close(),
  };
}

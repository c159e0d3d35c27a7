/** One visit to the built page with the probe in it, and what a person does there. */
import type { Browser, Locator, Page } from 'playwright-core';
import type { Plan } from '../../src/plan/plan';
import { probe, SENT_AT, type ProbeLog } from './page-probe';

const DESK = { width: 1280, height: 800 };
const WAIT_MS = 60_000;

export interface Span {
  readonly fromMs: number;
  readonly toMs: number;
}

/** With the moves of the hand in it: a picture a move is the most that can be drawn. */
export interface Moved extends Span {
  readonly moves: number;
}

export class Visit {
  readonly page: Page;

  private constructor(page: Page) {
    this.page = page;
  }

  /** A first visit: nothing stored, nothing cached. `clocked` also asks the engine when it sends. */
  static async to(browser: Browser, address: string, clocked: boolean): Promise<Visit> {
    const context = await browser.newContext({ viewport: DESK });
    // functions that cross to the page name themselves by a helper of the transpiler, which the page does not have
    await context.addInitScript('globalThis.__name = (named) => named;');
    await context.addInitScript(probe);
    if (clocked) {
      await context.route('**/engine.worker*.js', async (route) => {
        const answer = await route.fetch();
        await route.fulfill({ response: answer, body: SENT_AT + (await answer.text()) });
      });
    }
    const page = await context.newPage();
    page.setDefaultTimeout(WAIT_MS);
    await page.goto(address);
    return new Visit(page);
  }

  log(): Promise<Omit<ProbeLog, 'watchFrames'>> {
    return this.page.evaluate(() => {
      const { drawings, months, blocked, frames } = globalThis.benchLog;
      return { drawings, months, blocked, frames };
    });
  }

  /** Until a picture of the month has been drawn after `sinceMs` of the page's clock. */
  async untilDrawn(month: number, sinceMs = 0): Promise<void> {
    await this.page.waitForFunction(
      ([wanted, since]) =>
        globalThis.benchLog.drawings.some((drawing) => drawing.month === wanted && drawing.drawnMs > since),
      [month, sinceMs] as const,
      { timeout: WAIT_MS },
    );
  }

  now(): Promise<number> {
    return this.page.evaluate(() => performance.now());
  }

  watchFrames(): Promise<void> {
    return this.page.evaluate(() => globalThis.benchLog.watchFrames());
  }

  /** What is done, and from when to when, by the page's clock. */
  async span(act: () => Promise<void>): Promise<Span> {
    const fromMs = await this.now();
    await act();
    return { fromMs, toMs: await this.now() };
  }

  async openPlan(plan: Plan): Promise<void> {
    await this.page.getByRole('button', { name: /^Plan:/ }).click();
    const choosing = this.page.waitForEvent('filechooser');
    await this.page.getByRole('button', { name: 'Open a file', exact: true }).click();
    const buffer = Buffer.from(JSON.stringify(plan));
    await (await choosing).setFiles({ name: 'bench.json', mimeType: 'application/json', buffer });
  }

  get #strip(): Locator {
    return this.page.getByRole('slider', { name: 'Month shown' });
  }

  async showMonth(key: 'Home' | 'End'): Promise<void> {
    await this.#strip.press(key);
  }

  /** Drags along the strip of months, forth and back, as fast as the page takes the moves. */
  async scrub(months: number, ms: number): Promise<Moved> {
    const box = await this.#strip.boundingBox();
    if (!box) throw new Error('the strip of months is not on the page');
    const { mouse } = this.page;
    const to = async (step: number): Promise<void> => {
      const turn = step % (2 * months);
      const month = turn <= months ? turn : 2 * months - turn;
      await mouse.move(box.x + 1 + ((box.width - 2) * month) / months, box.y + box.height / 2);
    };
    await to(0);
    await mouse.down();
    let moves = 0;
    const span = await this.span(async () => {
      const end = Date.now() + ms;
      while (Date.now() < end) await to(++moves);
    });
    await mouse.up();
    return { ...span, moves };
  }

  async play(lastMonth: number): Promise<Span> {
    await this.showMonth('Home');
    await this.page.getByLabel('Speed of play').selectOption('4');
    return this.span(async () => {
      const since = await this.now();
      await this.page.getByRole('button', { name: 'Play', exact: true }).click();
      await this.untilDrawn(lastMonth, since);
    });
  }

  /** Drags a piece round in a small circle; the plan is grown anew all the while. */
  async dragPiece(xMm: number, yMm: number, sizeMm: number, ms: number): Promise<Moved> {
    const box = await this.page.getByRole('application', { name: 'Tile' }).boundingBox();
    if (!box) throw new Error('the tile is not on the page');
    // the whole tile is shown with 8 px of margin
    const pxPerMm = (Math.min(box.width, box.height) - 16) / sizeMm;
    const x = box.x + box.width / 2 + xMm * pxPerMm;
    const y = box.y + box.height / 2 + yMm * pxPerMm;
    const { mouse } = this.page;
    await mouse.move(x, y);
    await mouse.down();
    let moves = 0;
    const span = await this.span(async () => {
      const end = Date.now() + ms;
      while (Date.now() < end) {
        const angle = ++moves / 12;
        await mouse.move(x + 3 * pxPerMm * Math.sin(angle), y + 3 * pxPerMm * (1 - Math.cos(angle)));
      }
    });
    await mouse.up();
    return { ...span, moves };
  }

  async end(): Promise<void> {
    await this.page.context().close();
  }
}

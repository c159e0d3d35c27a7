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

interface Place {
  readonly x: number;
  readonly y: number;
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

  /**
   * Presses at the first place, then moves once a frame of the page round the places, and lets go. Press and release are
   * Chromium's own input; the moves are events made in the page, for the driver's own come only a few a second.
   */
  async #drag(over: Locator, places: readonly Place[], ms: number): Promise<Moved> {
    const { mouse } = this.page;
    await mouse.move(places[0].x, places[0].y);
    await mouse.down();
    let moves = 0;
    const span = await this.span(async () => {
      moves = await over.evaluate(
        (element, way) =>
          new Promise<number>((resolve) => {
            const end = performance.now() + way.ms;
            let made = 0;
            const move = (): void => {
              const { x, y } = way.places[++made % way.places.length];
              const event = {
                bubbles: true,
                pointerId: 1,
                pointerType: 'mouse',
                isPrimary: true,
                buttons: 1,
              };
              element.dispatchEvent(new PointerEvent('pointermove', { ...event, clientX: x, clientY: y }));
              if (performance.now() < end) requestAnimationFrame(move);
              else resolve(made);
            };
            requestAnimationFrame(move);
          }),
        { places, ms },
      );
    });
    await mouse.up();
    return { ...span, moves };
  }

  /** Drags along the strip of months, forth and back, a month a frame. */
  async scrub(months: number, ms: number): Promise<Moved> {
    const box = await this.#strip.boundingBox();
    if (!box) throw new Error('the strip of months is not on the page');
    const places = Array.from({ length: 2 * months }, (_, step) => ({
      x: box.x + 1 + ((box.width - 2) * Math.min(step, 2 * months - step)) / months,
      y: box.y + box.height / 2,
    }));
    return this.#drag(this.#strip, places, ms);
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
    const tile = this.page.getByRole('application', { name: 'Tile' });
    const box = await tile.boundingBox();
    if (!box) throw new Error('the tile is not on the page');
    // the whole tile is shown with 8 px of margin
    const pxPerMm = (Math.min(box.width, box.height) - 16) / sizeMm;
    const x = box.x + box.width / 2 + xMm * pxPerMm;
    const y = box.y + box.height / 2 + yMm * pxPerMm;
    const places = Array.from({ length: 75 }, (_, step) => {
      const angle = (2 * Math.PI * step) / 75;
      return { x: x + 3 * pxPerMm * Math.sin(angle), y: y + 3 * pxPerMm * (1 - Math.cos(angle)) };
    });
    return this.#drag(tile, places, ms);
  }

  async end(): Promise<void> {
    await this.page.context().close();
  }
}

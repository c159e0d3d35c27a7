/** Joins the desk to the engine: what is wanted goes out, what has grown comes back. */
import { untrack } from 'svelte';
import { Channel, type Fault } from '../jobs/channel';
import { engineLine } from '../jobs/engine-line';
import { frameBudget, FrameStore, type KeptRun } from '../jobs/frame-store';
import { SeedRange, type SeedReadings } from '../jobs/seed-range';
import { EXACT_CELL_MM, TileRun } from '../jobs/tile-run';
import { planOfCutting } from '../plan/cutting';
import type { GraftPiece, Plan } from '../plan/plan';
import type { Desk } from './desk.svelte';
import type { Notices } from './notices.svelte';

interface NavigatorWithMemory extends Navigator {
  readonly deviceMemory?: number;
}

const CATCH_UP_MS = 400;
/** A month that is not drawn by then, on a hidden page say, is answered all the same. */
const DRAWN_WITHIN_MS = 500;

export class Growth {
  /** How the run of the plan on screen stands. */
  state = $state<'growing' | 'whole' | 'failed'>('growing');
  ranges = $state.raw<SeedReadings>({ key: '', seeds: [] });

  readonly #desk: Desk;
  readonly #channel: Channel;
  readonly #tile: TileRun;
  readonly #range: SeedRange;
  #newest: KeptRun | null = null;
  #firstHeard = 0;
  #asked = 0;
  /** Answers the engine, which rests until the month on screen is drawn. */
  #whenDrawn: () => void = () => undefined;

  constructor(desk: Desk, notices: Notices, savePlan: () => void) {
    this.#desk = desk;
    const store = new FrameStore(frameBudget((navigator as NavigatorWithMemory).deviceMemory));
    const channel = new Channel(engineLine, (fault) => tellFault(fault, notices, savePlan));
    this.#channel = channel;
    this.#tile = new TileRun(
      channel,
      store,
      {
        began: (run) => {
          this.#newest = null;
          this.#firstHeard = 0;
          this.state = 'growing';
          desk.startRun(run.cellMm);
        },
        grown: (run) => this.#showSoon(run),
        ended: (how, wanted) => {
          this.#show();
          if (how === 'failed') this.state = 'failed';
          else if (how === 'whole' && !wanted.draft) this.state = 'whole';
        },
      },
      () => desk.month,
    );
    // A fault in the background costs only the ranges: nothing is said of it.
    const background = new Channel(engineLine, () => undefined);
    this.#range = new SeedRange(background, (runs) => (this.ranges = runs));
  }

  /** Asks for the first run before the page is put together: the worker grows meanwhile. */
  begin(): void {
    const { shown: plan, seed } = this.#desk;
    this.#tile.show({ plan, seed, draft: false });
  }

  /** What an isolating step of a plan takes out; null where that is nothing. */
  cutting(plan: Plan, seed: string, step: string): Promise<GraftPiece | null> {
    return this.#channel.cutOut({ plan, seed, cellMm: EXACT_CELL_MM, step });
  }

  /** Puts what an isolating step takes out on the desk, as a plan of its own. False where that is nothing. */
  async openCutting(step: string): Promise<boolean> {
    const { plan, seed } = this.#desk;
    const cutting = await this.cutting(plan, seed, step);
    if (cutting === null) return false;
    const own = planOfCutting(plan, cutting);
    this.#desk.open({ plan: own, words: `Open ${own.name}` });
    return true;
  }

  /**
   * Months can come faster than they can be drawn: one a frame of the screen, the newest, is put on the desk.
   * The first moments belong to the run: drawing months before the one asked for would only hold that one up.
   */
  #showSoon(run: KeptRun): void | Promise<void> {
    this.#newest = run;
    const { month } = this.#desk;
    const isBehind = run.readings.length <= month;
    this.#firstHeard ||= performance.now();
    if (isBehind && performance.now() - this.#firstHeard < CATCH_UP_MS) return;
    if (this.#asked === 0) this.#asked = requestAnimationFrame(() => this.#show());
    if (run.readings.length !== month + 1) return;
    return new Promise((resolve) => {
      this.#whenDrawn = resolve;
      setTimeout(resolve, DRAWN_WITHIN_MS);
    });
  }

  #show(): void {
    cancelAnimationFrame(this.#asked);
    this.#asked = 0;
    if (this.#newest) this.#desk.showRun(this.#newest);
    this.#newest = null;
  }

  /** To be called while a component starts: its effects carry the desk's wishes to the workers while the plan is shown. */
  follow(isShown: () => boolean): void {
    const desk = this.#desk;
    $effect(() => {
      const wanted = { plan: desk.shown, seed: desk.seed, draft: desk.previewing };
      if (isShown() && desk.refusals.length === 0) untrack(() => this.#tile.show(wanted));
    });
    $effect(() => {
      const { plan } = desk;
      const atRest = isShown() && this.state === 'whole' && !desk.previewing && !desk.playing;
      untrack(() => {
        if (atRest) this.#range.rest(plan);
        else this.#range.pause();
      });
    });
    $effect(() => {
      if (desk.drawn?.frame) this.#whenDrawn();
    });
    // A frame that was dropped to save memory is grown again once somebody looks at its month.
    $effect(() => {
      const missing = desk.run.frames[desk.month] === null;
      if (!missing || this.state !== 'whole' || desk.playing) return;
      const wanted = { plan: desk.plan, seed: desk.seed, draft: false };
      untrack(() => this.#tile.again(wanted));
    });
    $effect(() => () => {
      this.#tile.close();
      this.#range.close();
    });
  }
}

function tellFault(fault: Fault, notices: Notices, savePlan: () => void): void {
  const save = { label: 'Save the plan', act: savePlan };
  if (fault.kind === 'restarted') {
    notices.tell({ id: 'engine', words: 'The engine stopped and was started again; your plan is safe.' });
  } else if (fault.kind === 'stopped') {
    notices.tell({
      id: 'engine',
      words: `The engine stopped twice on this plan, so the last picture stays. Change something, or save the plan and report it. (${fault.reason})`,
      cures: [save],
      stays: true,
    });
  } else {
    notices.tell({
      id: 'engine',
      words:
        'This browser did not let the growth engine start, so nothing can grow. Your plan can be edited and saved; try another browser, or ask whoever runs this site to allow workers.',
      cures: [save],
      stays: true,
    });
  }
}

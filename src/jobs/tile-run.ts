/**
 * The run behind the live tile. At most one run is wanted, the newest: a coarse one while a draft is shown,
 * the exact one 250 ms after the last change. What is still kept is shown without a run.
 */
import { MODEL_VERSION } from '../model/defaults';
import { planDigest } from '../plan/file';
import { firstDifference } from '../plan/past';
import type { Plan } from '../plan/plan';
import { dayOfMonth } from '../units/quantity';
import type { Channel, Ended } from './channel';
import type { FrameStore, KeptRun } from './frame-store';

export const PREVIEW_CELL_MM = 0.5;
export const EXACT_CELL_MM = 0.25;
const REST_MS = 250;

export interface Wanted {
  readonly plan: Plan;
  readonly seed: string;
  /** A handle or a slider is held: a coarse run first. */
  readonly draft: boolean;
}

export interface TileHearer {
  /** A new run begins; the picture before may stay until it has caught up. */
  began(run: KeptRun): void;
  /** May answer late for the month on screen, once it is drawn: the engine rests until then. */
  grown(run: KeptRun): void | Promise<void>;
  /** Only of the newest run. */
  ended(how: Ended, wanted: Wanted, cellMm: number): void;
}

/** Who a run is: model, cell size, seed and what of the plan grows (names and colours do not). */
export function runKey(plan: Plan, seed: string, cellMm: number): string {
  return [MODEL_VERSION, cellMm, planDigest(plan), seed].join(' ');
}

export class TileRun {
  readonly #channel: Channel;
  readonly #store: FrameStore;
  readonly #hearer: TileHearer;
  readonly #monthShown: () => number;
  #shownKey = '';
  /** The last exact and the last coarse run that was begun, by cell size: the next may go on from one of its months. */
  readonly #last = new Map<number, { readonly wanted: Wanted; readonly key: string }>();
  /** The run underway; a coarse one is let run to the month shown, or a steady drag would never see one. */
  #underway: { readonly key: string; readonly draft: boolean; reached: number; wanted: Wanted } | null = null;
  #waiting: Wanted | null = null;
  #rest: ReturnType<typeof setTimeout> | undefined;

  constructor(channel: Channel, store: FrameStore, hearer: TileHearer, monthShown: () => number) {
    this.#channel = channel;
    this.#store = store;
    this.#hearer = hearer;
    this.#monthShown = monthShown;
  }

  show(wanted: Wanted): void {
    clearTimeout(this.#rest);
    this.#waiting = null;
    const exact = runKey(wanted.plan, wanted.seed, EXACT_CELL_MM);
    if (!wanted.draft || this.#store.whole(exact)) {
      this.#begin(wanted, EXACT_CELL_MM);
      return;
    }
    this.#rest = setTimeout(() => this.#begin(wanted, EXACT_CELL_MM), REST_MS);
    if (this.#underway?.draft && this.#underway.reached < this.#monthShown()) this.#waiting = wanted;
    else this.#begin(wanted, PREVIEW_CELL_MM);
  }

  /** Grows the shown run again for a month whose frame was dropped to save memory. */
  again(wanted: Wanted): void {
    this.#last.delete(EXACT_CELL_MM);
    this.#start(wanted, EXACT_CELL_MM, runKey(wanted.plan, wanted.seed, EXACT_CELL_MM));
  }

  close(): void {
    clearTimeout(this.#rest);
    this.#channel.close();
  }

  #begin(wanted: Wanted, cellMm: number): void {
    this.#waiting = null;
    const key = runKey(wanted.plan, wanted.seed, cellMm);
    if (this.#underway?.key === key) {
      // a draft that was kept while its exact run was underway: the run ends as the plan's own
      this.#underway.wanted = wanted;
      return;
    }
    const kept = this.#store.whole(key);
    if (!kept) {
      this.#start(wanted, cellMm, key);
      return;
    }
    if (this.#underway) this.#channel.cancel();
    this.#underway = null;
    if (this.#shownKey !== key) this.#hearer.began(kept);
    this.#shownKey = key;
    void this.#hearer.grown(kept);
    this.#hearer.ended('whole', wanted, cellMm);
  }

  #start(wanted: Wanted, cellMm: number, key: string): void {
    const underway = { key, draft: cellMm === PREVIEW_CELL_MM, reached: -1, wanted };
    this.#underway = underway;
    this.#shownKey = key;
    const like = this.#sameSoFar(wanted, cellMm);
    this.#last.set(cellMm, { wanted, key });
    this.#hearer.began(this.#store.begin(key, cellMm, like));
    underway.reached = (like?.months ?? 0) - 1;
    const tell = (run: KeptRun | null): void | Promise<void> => {
      if (run && this.#underway === underway) return this.#hearer.grown(run);
    };
    const { plan, seed } = wanted;
    const ask = { plan, seed, cellMm, frames: true, from: like?.months ?? 0, month: this.#monthShown() };
    const ending = this.#channel.grow(ask, {
      polyps: (sites) => void tell(this.#store.addSites(key, sites)),
      month: (frame, reading) => {
        const answer = tell(this.#store.addMonth(key, frame, reading, this.#monthShown()));
        underway.reached = reading.month;
        if (this.#waiting && reading.month >= this.#monthShown()) this.#begin(this.#waiting, PREVIEW_CELL_MM);
        return answer;
      },
    });
    void ending.then((how) => {
      if (this.#underway !== underway) return;
      if (how === 'whole') void tell(this.#store.finish(key));
      this.#underway = null;
      this.#hearer.ended(how, underway.wanted, cellMm);
      if (this.#waiting) this.#begin(this.#waiting, PREVIEW_CELL_MM);
    });
  }

  /** The last run of this cell size and seed, and how many of its months, from 0, are those of the run wanted now. */
  #sameSoFar({ plan, seed }: Wanted, cellMm: number): { run: KeptRun; months: number } | undefined {
    const last = this.#last.get(cellMm);
    if (last?.wanted.seed !== seed) return undefined;
    const run = this.#store.sofar(last.key);
    if (!run?.sites) return undefined;
    const differ = firstDifference(last.wanted.plan, plan);
    let months = 0;
    // frames that were dropped are grown anew with what follows them; the last month is always read off a grown tile
    while (months < plan.months && dayOfMonth(months) < differ && run.frames[months] && run.readings[months])
      months++;
    return months > 0 ? { run, months } : undefined;
  }
}

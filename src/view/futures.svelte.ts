/** Grows the plans that are compared, one after another in a worker of their own; what has grown is kept. */
import { Channel } from '../jobs/channel';
import { engineLine } from '../jobs/engine-line';
import { frameBudget, FrameStore, type KeptRun } from '../jobs/frame-store';
import { EXACT_CELL_MM, runKey } from '../jobs/tile-run';
import type { Plan } from '../plan/plan';

export interface Future {
  readonly key: string;
  readonly plan: Plan;
  readonly seed: string;
}

export function futureOf(plan: Plan, seed: string): Future {
  return { key: runKey(plan, seed, EXACT_CELL_MM), plan, seed };
}

export class Futures {
  /** By key, as far as they have grown. */
  runs = $state.raw<ReadonlyMap<string, KeptRun>>(new Map());
  hasFailed = $state(false);
  // A fault costs this comparison only and is said beside it.
  readonly #channel = new Channel(engineLine, () => undefined);
  readonly #store = new FrameStore(frameBudget(undefined));
  readonly #failed = new Set<string>();
  #wanted: readonly Future[] = [];
  #month = 0;
  #underway: string | null = null;

  want(wanted: readonly Future[], month: number): void {
    this.#wanted = wanted;
    this.#month = month;
    this.#show();
    if (this.#underway === null) void this.#run();
    else if (!wanted.some(({ key }) => key === this.#underway)) this.#channel.cancel();
  }

  close(): void {
    this.#wanted = [];
    this.#channel.close();
  }

  async #run(): Promise<void> {
    for (;;) {
      const next = this.#wanted.find(({ key }) => !this.#store.whole(key) && !this.#failed.has(key));
      if (!next) return;
      const { key, plan, seed } = next;
      this.#underway = key;
      this.#store.begin(key, EXACT_CELL_MM);
      const ended = await this.#channel.grow(
        { plan, seed, cellMm: EXACT_CELL_MM, frames: true },
        {
          polyps: (sites) => void this.#store.addSites(key, sites),
          month: (frame, reading) => {
            this.#store.addMonth(key, frame, reading, this.#month);
            this.#show();
          },
        },
      );
      this.#underway = null;
      if (ended === 'whole') this.#store.finish(key);
      if (ended === 'failed') this.#failed.add(key);
      this.#show();
    }
  }

  #show(): void {
    const runs = this.#wanted.flatMap(({ key }) => {
      const run = this.#store.sofar(key);
      return run ? [[key, run] as const] : [];
    });
    this.runs = new Map(runs);
    this.hasFailed = this.#wanted.some(({ key }) => this.#failed.has(key));
  }
}

/** Joins the desk to the store of this browser: restores the last plan, keeps every change, says what goes wrong. */
import { untrack } from 'svelte';
import { Autosave } from '../keep/autosave';
import { BENCH_KIND, type Bench, type BenchRecord } from '../keep/bench-record';
import { openDrawer } from '../keep/database';
import { EMPTY_BENCH } from '../plan/bench';
import type { Workbench } from './bench/workbench.svelte';
import type { Desk } from './desk.svelte';
import type { Notices } from './notices.svelte';
import { storeTrouble } from './store-trouble';

export class Keeping {
  readonly #desk: Desk;
  readonly #workbench: Workbench;
  /** Something was stored before, or the plan has been changed since. */
  #hasWork = false;
  readonly #autosave: Autosave<Bench, BenchRecord>;

  constructor(desk: Desk, workbench: Workbench, notices: Notices, savePlan: () => void) {
    this.#desk = desk;
    this.#workbench = workbench;
    const tell = storeTrouble(
      notices,
      {
        called: 'plan',
        save: { label: 'Save the plan', act: savePlan },
        otherName: ({ plan }) => plan.name,
        open: ({ plan, seed, month, rest }) => {
          desk.open({ plan, words: `Open ${plan.name}` }, month, seed);
          if (rest) workbench.replace(rest.tiles);
        },
      },
      () => this.#autosave,
    );
    this.#autosave = new Autosave(() => openDrawer('benches'), BENCH_KIND, tell, navigator.locks);
  }

  /** The bench of the last visit, if there is one that can be read. */
  async start(): Promise<Bench | null> {
    const bench = await this.#autosave.start();
    this.#hasWork = bench !== null;
    return bench;
  }

  /** To be called while a component starts: notes every change from then on. */
  follow(): void {
    const desk = this.#desk;
    let isFirst = true;
    $effect(() => {
      const { plan, seed, playing } = desk;
      // While months are played the plan and the seed are noted all the same; the month is once play rests.
      const { bench: tiles, at } = this.#workbench;
      const hasTiles = tiles !== EMPTY_BENCH;
      const bench: Bench = {
        plan,
        seed,
        month: playing ? untrack(() => desk.month) : desk.month,
        ...(hasTiles ? { rest: { tiles, at } } : {}),
      };
      // Who only looked at the opening sees it again next time.
      this.#hasWork ||= desk.undoWords !== null || hasTiles;
      if (!isFirst && this.#hasWork) this.#autosave.note(bench);
      isFirst = false;
    });
    $effect(() => {
      const flush = (): void => {
        if (document.hidden) void this.#autosave.flush();
      };
      document.addEventListener('visibilitychange', flush);
      return () => {
        document.removeEventListener('visibilitychange', flush);
        this.#autosave.close();
      };
    });
  }
}

/** Joins the desk to the store of this browser: restores the last plan, keeps every change, says what goes wrong. */
import { untrack } from 'svelte';
import { Autosave, type Trouble } from '../keep/autosave';
import { BENCH_KIND, type Bench } from '../keep/bench-record';
import { openDrawer } from '../keep/database';
import { EMPTY_BENCH } from '../plan/bench';
import type { Workbench } from './bench/workbench.svelte';
import type { Desk } from './desk.svelte';
import { download } from './files';
import type { Notices } from './notices.svelte';

export class Keeping {
  readonly #desk: Desk;
  readonly #workbench: Workbench;
  readonly #notices: Notices;
  readonly #savePlan: () => void;
  /** Something was stored before, or the plan has been changed since. */
  #hasWork = false;
  readonly #autosave = new Autosave(
    () => openDrawer('benches'),
    BENCH_KIND,
    (trouble) => this.#tell(trouble),
    navigator.locks,
  );

  constructor(desk: Desk, workbench: Workbench, notices: Notices, savePlan: () => void) {
    this.#desk = desk;
    this.#workbench = workbench;
    this.#notices = notices;
    this.#savePlan = savePlan;
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

  #tell(trouble: Trouble<Bench>): void {
    const save = { label: 'Save the plan', act: this.#savePlan };
    const store = { id: 'store', stays: true, cures: [save] };
    switch (trouble.kind) {
      case 'full':
        this.#notices.tell({
          ...store,
          words:
            'The browser’s storage is full, so changes are kept in this page only. Save the plan as a file; we try again every 10 seconds.',
        });
        break;
      case 'blocked':
        this.#notices.tell({
          ...store,
          words:
            'The browser does not let this page store anything, so changes are lost when it closes. Save the plan as a file.',
        });
        break;
      case 'saved-again':
        this.#notices.tell({ id: 'store', words: 'Changes are stored again.' });
        break;
      case 'other-tab':
        this.#notices.tell({
          id: 'tabs',
          words:
            'Another tab of Seambench is storing the work. Changes here are not stored unless you take over.',
          cures: [{ label: 'Take over', act: () => void this.#autosave.takeOver() }],
          stays: true,
        });
        break;
      case 'writer':
        this.#notices.drop('tabs');
        break;
      case 'other-work': {
        const { plan, seed, month, rest } = trouble.work;
        const edit = { plan, words: `Open ${plan.name}` };
        this.#notices.tell({
          id: 'other-work',
          words: `This browser also holds “${plan.name}”, stored by another tab or an earlier visit. Open it to go on with it; Undo brings this plan back.`,
          cures: [
            {
              label: 'Open it',
              act: () => {
                this.#notices.drop('other-work');
                this.#desk.open(edit, month, seed);
                if (rest) this.#workbench.replace(rest.tiles);
              },
            },
          ],
          stays: true,
        });
        break;
      }
      case 'aside': {
        const text = JSON.stringify(trouble.aside.record, null, 2);
        this.#notices.tell({
          id: 'aside',
          words: `The plan of your last visit could not be read (${trouble.aside.why}). It is kept untouched.`,
          cures: [{ label: 'Download it', act: () => download('seambench-set-aside.json', text) }],
          stays: true,
        });
      }
    }
  }
}

/** The log on the page: its undo, what is being typed, what was done last. Whole values are replaced, never proxied. */
import type { LogWork } from '../../keep/log-record';
import { commit, EMPTY_HISTORY, redo, undo, type History, type Step } from '../../plan/history';
import { type Draft, NO_DRAFT } from '../../trials/draft';
import type { LogEdit } from '../../trials/log';
import { trialFaults, varietyFaults } from '../../trials/log-faults';
import { EMPTY_LOG, type Log, type LogVariety, type TrialReading } from '../../trials/trial';

/** An edit by hand changes so many tiles and varieties at most. */
const FEW = 20;

interface Moment {
  readonly log: Log;
}

export class Logbook {
  readonly #changed: (work: LogWork) => void;
  #log = $state.raw<Log>(EMPTY_LOG);
  #history = $state.raw<History<Moment>>(EMPTY_HISTORY);
  #draft = $state.raw<Draft>(NO_DRAFT);
  #known: { of: Log['varieties']; byId: ReadonlyMap<string, LogVariety> } = {
    of: EMPTY_LOG.varieties,
    byId: new Map(),
  };

  /** What was done last: 'Done: Read tile A-14', 'Undone: …'. */
  told = $state('');
  /** Why the last edit was not kept; empty once another is. */
  refused = $state('');

  // Getters and not derived values: these would end with the component in which the log was first opened.
  get log(): Log {
    return this.#log;
  }

  get draft(): Draft {
    return this.#draft;
  }

  get undoWords(): string | null {
    return this.#history.past.at(-1)?.words ?? null;
  }

  get redoWords(): string | null {
    return this.#history.future.at(0)?.words ?? null;
  }

  /** `changed` hears of everything that is to be stored. */
  constructor(changed: (work: LogWork) => void) {
    this.#changed = changed;
  }

  nameOf(variety: string): string {
    return this.#varietyOf(variety)?.name ?? variety;
  }

  colourOf(variety: string): string {
    return this.#varietyOf(variety)?.colour ?? '#9aa3ab';
  }

  /** Keeps an edit in the history, or says why it cannot be. */
  do({ log, words }: LogEdit): boolean {
    if (log === this.#log) return true;
    const before = new Set(this.#log.trials);
    const changed = log.trials.filter((trial) => !before.has(trial));
    // a whole log that comes from a file or the store has been through its own door
    const varieties = log.varieties.filter((variety) => !this.#log.varieties.includes(variety));
    const faults =
      changed.length + varieties.length > FEW
        ? []
        : [
            ...varieties.flatMap((variety) => varietyFaults(log, variety)),
            ...changed.flatMap((trial) => trialFaults(log, trial)),
          ];
    this.refused = faults.at(0)?.cure ?? '';
    if (faults.length > 0) return false;
    this.#history = commit(this.#history, { log: this.#log, words });
    this.told = `Done: ${words}`;
    this.#put(log);
    return true;
  }

  undo(): void {
    this.#travel(undo(this.#history, { log: this.#log }), 'Undone');
  }

  redo(): void {
    this.#travel(redo(this.#history, { log: this.#log }), 'Done again');
  }

  type(draft: Partial<Draft>): void {
    this.#draft = { ...this.#draft, ...draft };
    this.#changed({ log: this.#log, draft: this.#draft });
  }

  /** The reading of a tile that was begun and is not kept yet. */
  begun(trial: string): TrialReading | null {
    return this.#draft.readings.find((one) => one.trial === trial)?.reading ?? null;
  }

  /** Null once it is kept or dropped. */
  typeReading(trial: string, reading: TrialReading | null): void {
    const others = this.#draft.readings.filter((one) => one.trial !== trial);
    this.type({ readings: reading === null ? others : [...others, { trial, reading }] });
  }

  /** The log of the last visit: there is nothing to undo. */
  restore({ log, draft }: LogWork): void {
    this.#log = log;
    this.#draft = draft;
  }

  /** By id; made anew for another list, and lists are replaced whole. */
  #varietyOf(id: string): LogVariety | undefined {
    const { varieties } = this.#log;
    if (this.#known.of !== varieties) {
      this.#known = { of: varieties, byId: new Map(varieties.map((variety) => [variety.id, variety])) };
    }
    return this.#known.byId.get(id);
  }

  #travel(step: Step<Moment> | null, how: string): void {
    if (step === null) return;
    this.told = `${how}: ${step.words}`;
    this.refused = '';
    this.#history = step.history;
    this.#put(step.log);
  }

  #put(log: Log): void {
    this.#log = log;
    this.#changed({ log, draft: this.#draft });
  }
}

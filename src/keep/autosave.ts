/**
 * When the bench is written, what happens when that fails, and one writer among the tabs.
 * Nothing is written before the first read has ended; what cannot be written stays in memory and is tried again.
 */
import * as v from 'valibot';
import type { Plan, Refusal } from '../plan/plan';
import { openPlan, planText } from '../plan/file';
import type { AsideRecord, BenchRecord, Shelf } from './database';

const WRITE_AFTER_MS = 500;
const RETRY_MS = 10_000;
const LOCK = 'seambench-writer';

export interface Bench {
  readonly plan: Plan;
  readonly seed: string;
  readonly month: number;
}

export type Trouble =
  | { readonly kind: 'full' | 'blocked' | 'saved-again' | 'other-tab' | 'writer' }
  | { readonly kind: 'aside'; readonly aside: AsideRecord };

const BenchSchema = v.object({
  shape: v.literal(1),
  planText: v.string(),
  seed: v.pipe(v.string(), v.minLength(1), v.maxLength(200)),
  month: v.pipe(v.number(), v.integer(), v.minValue(0)),
});

export class Autosave {
  readonly #open: () => Promise<Shelf>;
  readonly #tell: (trouble: Trouble) => void;
  /** Insecure hosts have no lock manager: then every tab writes and the last one wins. */
  readonly #locks: LockManager | undefined;
  #shelf: Shelf | null = null;
  #isWriter = false;
  #releaseLock: () => void = () => undefined;
  #pending: Bench | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #failing = false;

  constructor(open: () => Promise<Shelf>, tell: (trouble: Trouble) => void, locks: LockManager | undefined) {
    this.#open = open;
    this.#tell = tell;
    this.#locks = locks;
  }

  /** The bench of the last visit, or null: none, unreadable (told of and moved aside) or storage blocked. */
  async start(): Promise<Bench | null> {
    let found: unknown;
    try {
      this.#shelf = await this.#open();
      found = await this.#shelf.readBench();
    } catch {
      this.#shelf = null;
      this.#fail('blocked');
    }
    await this.#askToWrite('ifAvailable');
    return found === undefined ? null : this.#check(found);
  }

  /** Remembers the newest bench and writes it half a second later. */
  note(bench: Bench): void {
    this.#pending = bench;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), this.#failing ? RETRY_MS : WRITE_AFTER_MS);
  }

  /** Writes at once: the page is being hidden. */
  async flush(): Promise<void> {
    clearTimeout(this.#timer);
    const bench = this.#pending;
    if (bench === null || !this.#isWriter) return;
    try {
      this.#shelf ??= await this.#open();
      await this.#shelf.writeBench(recordOf(bench));
      if (this.#pending === bench) this.#pending = null;
      if (this.#failing) this.#tell({ kind: 'saved-again' });
      this.#failing = false;
    } catch (error) {
      this.#fail(error instanceof Error && error.name === 'QuotaExceededError' ? 'full' : 'blocked');
      this.note(this.#pending ?? bench);
    }
  }

  /** Becomes the tab that writes; the other one is told and goes on reading. */
  async takeOver(): Promise<void> {
    await this.#askToWrite('steal');
    await this.flush();
  }

  close(): void {
    clearTimeout(this.#timer);
    this.#releaseLock();
  }

  #fail(kind: 'full' | 'blocked'): void {
    if (!this.#failing) this.#tell({ kind });
    this.#failing = true;
  }

  /** Ends once it is known whether this tab writes; the lock is held until the page goes or another steals it. */
  #askToWrite(how: 'ifAvailable' | 'steal'): Promise<void> {
    const locks = this.#locks;
    if (!locks) {
      this.#isWriter = true;
      return Promise.resolve();
    }
    return new Promise((known) => {
      const held = locks.request(LOCK, { [how]: true }, (lock) => {
        this.#isWriter = lock !== null;
        this.#tell({ kind: lock === null ? 'other-tab' : 'writer' });
        known();
        return lock === null ? undefined : new Promise<void>((release) => (this.#releaseLock = release));
      });
      held.catch(() => {
        // Stolen: another tab has taken over.
        this.#isWriter = false;
        this.#tell({ kind: 'other-tab' });
      });
    });
  }

  async #check(found: unknown): Promise<Bench | null> {
    const record = v.safeParse(BenchSchema, found);
    if (!record.success) return this.#setAside(found, 'its form is not known to this version');
    const { planText: text, seed, month } = record.output;
    const opened = openPlan(text);
    if ('refusals' in opened) return this.#setAside(found, whyRefused(opened.refusals));
    return { plan: opened.plan, seed, month: Math.min(month, opened.plan.months) };
  }

  async #setAside(record: unknown, why: string): Promise<null> {
    const aside = { why, record };
    // A tab that only reads leaves the record to the writer.
    if (this.#isWriter) await this.#shelf?.moveAside(aside).catch(() => this.#fail('blocked'));
    this.#tell({ kind: 'aside', aside });
    return null;
  }
}

function recordOf(bench: Bench): BenchRecord {
  return { shape: 1, planText: planText(bench.plan), seed: bench.seed, month: bench.month };
}

function whyRefused(refusals: readonly Refusal[]): string {
  const [first] = refusals;
  return first ? `${first.where}: ${first.found}` : 'it could not be read';
}

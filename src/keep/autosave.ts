/**
 * When the bench is written and what happens when that fails. Nothing is written before the store has been read, and
 * nothing stored that this tab neither wrote nor shows is written over: it is moved aside first. What cannot be
 * written stays in memory and is tried again.
 */
import * as v from 'valibot';
import { MAX_SEED_LETTERS, type Plan, type Refusal } from '../plan/plan';
import { benchText, openBench, type Bench as Tiles, type Place } from '../plan/bench';
import { openPlan, planText } from '../plan/file';
import type { AsideRecord, BenchRecord, Shelf } from './database';
import { WriterLock } from './writer-lock';

const WRITE_AFTER_MS = 500;
const RETRY_MS = 10_000;

export interface Bench {
  readonly plan: Plan;
  readonly seed: string;
  readonly month: number;
  /** The tiles and mothers beside the plan, and which tile or branch of them the plan is. */
  readonly rest?: {
    readonly tiles: Tiles;
    readonly at: Place | null;
  };
}

export type Trouble =
  | { readonly kind: 'full' | 'blocked' | 'saved-again' | 'other-tab' | 'writer' }
  | { readonly kind: 'aside'; readonly aside: AsideRecord }
  /** Stored by another tab, or by an earlier visit and not readable at first. */
  | { readonly kind: 'other-work'; readonly bench: Bench };

const BenchSchema = v.object({
  shape: v.literal(1),
  planText: v.string(),
  seed: v.pipe(v.string(), v.minLength(1), v.maxLength(MAX_SEED_LETTERS)),
  month: v.pipe(v.number(), v.integer(), v.minValue(0)),
  rest: v.optional(
    v.object({
      benchText: v.string(),
      at: v.nullable(v.object({ tile: v.string(), branch: v.nullable(v.string()) })),
    }),
  ),
});

export class Autosave {
  readonly #open: () => Promise<Shelf>;
  readonly #tell: (trouble: Trouble) => void;
  readonly #lock: WriterLock;
  #shelf: Shelf | null = null;
  /** The store has been read since this tab began, or since it became the writer. */
  #isRead = false;
  /** What this tab has read and shown, or written last. */
  #known: BenchRecord | null = null;
  /** Stored, and not to be written over before it has been moved aside. */
  #inTheWay: AsideRecord | null = null;
  #pending: Bench | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #failing = false;
  /** Writes go one after the other. */
  #writing: Promise<void> = Promise.resolve();

  constructor(open: () => Promise<Shelf>, tell: (trouble: Trouble) => void, locks: LockManager | undefined) {
    this.#open = open;
    this.#tell = tell;
    this.#lock = new WriterLock(locks, (isHeld) => {
      tell({ kind: isHeld ? 'writer' : 'other-tab' });
      if (isHeld) void this.#beginToWrite();
    });
  }

  /** The bench of the last visit, or null: none, unreadable (told of and moved aside) or storage blocked. */
  async start(): Promise<Bench | null> {
    await this.#lock.ask();
    let bench: Bench | null = null;
    try {
      bench = await this.#read(await this.#opened());
      if (bench) this.#known = recordOf(bench);
      // A tab that only reads leaves what cannot be read to the writer.
      if (this.#lock.isHeld) await this.#clearTheWay(await this.#opened());
    } catch {
      this.#fail('blocked');
    }
    if (!this.#lock.isHeld) {
      this.#tell({ kind: 'other-tab' });
      this.#lock.wait();
    }
    return bench;
  }

  /** Remembers the newest bench and writes it half a second later. */
  note(bench: Bench): void {
    this.#pending = bench;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), this.#failing ? RETRY_MS : WRITE_AFTER_MS);
  }

  /** Writes at once: the page is being hidden. */
  flush(): Promise<void> {
    clearTimeout(this.#timer);
    this.#writing = this.#writing.then(() => this.#write());
    return this.#writing;
  }

  /** Becomes the tab that writes; the other one is told and goes on reading. */
  async takeOver(): Promise<void> {
    await this.#lock.steal();
    this.#tell({ kind: 'writer' });
    await this.#beginToWrite();
  }

  close(): void {
    clearTimeout(this.#timer);
    this.#lock.release();
  }

  /** Another tab has written until now: what it left is read first, and offered. */
  #beginToWrite(): Promise<void> {
    this.#isRead = false;
    return this.flush();
  }

  async #write(): Promise<void> {
    if (!this.#lock.isHeld || (this.#pending === null && this.#isRead)) return;
    try {
      const shelf = await this.#opened();
      if (!this.#isRead) await this.#readAgain(shelf);
      const bench = this.#pending;
      if (bench === null) return;
      const record = recordOf(bench);
      // Who only looked at another month does not write over what another tab has made.
      if (this.#inTheWay && this.#known && isSameWork(record, this.#known)) return;
      await this.#clearTheWay(shelf);
      await shelf.writeBench(record);
      this.#known = record;
      if (this.#pending === bench) this.#pending = null;
      if (this.#failing) this.#tell({ kind: 'saved-again' });
      this.#failing = false;
    } catch (error) {
      this.#fail(error instanceof Error && error.name === 'QuotaExceededError' ? 'full' : 'blocked');
      if (this.#pending) this.note(this.#pending);
    }
  }

  async #opened(): Promise<Shelf> {
    this.#shelf ??= await this.#open();
    return this.#shelf;
  }

  #fail(kind: 'full' | 'blocked'): void {
    if (!this.#failing) this.#tell({ kind });
    this.#failing = true;
  }

  /** A stored bench that is not this tab's work is offered and counts as in the way. */
  async #readAgain(shelf: Shelf): Promise<void> {
    const bench = await this.#read(shelf);
    if (!bench) return;
    const record = recordOf(bench);
    if (this.#known && isSameWork(record, this.#known)) return;
    this.#inTheWay = { why: 'another tab or an earlier visit stored it', record };
    this.#tell({ kind: 'other-work', bench });
  }

  /** The stored bench, or null: none, or one that cannot be read, which is told of and counts as in the way. */
  async #read(shelf: Shelf): Promise<Bench | null> {
    const found = await shelf.readBench();
    this.#isRead = true;
    this.#inTheWay = null;
    if (found === undefined) return null;
    const read = benchOf(found);
    if (typeof read !== 'string') return read;
    this.#inTheWay = { why: read, record: found };
    this.#tell({ kind: 'aside', aside: this.#inTheWay });
    return null;
  }

  async #clearTheWay(shelf: Shelf): Promise<void> {
    if (!this.#inTheWay) return;
    await shelf.moveAside(this.#inTheWay);
    this.#inTheWay = null;
  }
}

/** The bench in a stored record, or the words that say why it cannot be read. */
function benchOf(found: unknown): Bench | string {
  const record = v.safeParse(BenchSchema, found);
  if (!record.success) return 'its form is not known to this version';
  const { planText: text, seed, month, rest } = record.output;
  const opened = openPlan(text);
  if ('refusals' in opened) return whyRefused(opened.refusals);
  const bench = { plan: opened.plan, seed, month: Math.min(month, opened.plan.months) };
  if (!rest) return bench;
  const tiles = openBench(rest.benchText);
  if ('refusals' in tiles) return whyRefused(tiles.refusals);
  return { ...bench, rest: { tiles: tiles.bench, at: rest.at } };
}

function isSameWork(one: BenchRecord, other: BenchRecord): boolean {
  return (
    one.planText === other.planText &&
    one.seed === other.seed &&
    one.rest?.benchText === other.rest?.benchText
  );
}

function recordOf(bench: Bench): BenchRecord {
  const { plan, seed, month, rest } = bench;
  const record: BenchRecord = { shape: 1, planText: planText(plan), seed, month };
  return rest ? { ...record, rest: { benchText: benchText(rest.tiles), at: rest.at } } : record;
}

function whyRefused(refusals: readonly Refusal[]): string {
  const [first] = refusals;
  return first ? `${first.where}: ${first.found}` : 'it could not be read';
}

/**
 * When work is written and what happens when that fails. Nothing is written before the store has been read, and
 * nothing stored that this tab neither wrote nor shows is written over: it is moved aside first. What cannot be
 * written stays in memory and is tried again.
 */
import type { AsideRecord, Drawer } from './database';
import { WriterLock } from './writer-lock';

const RETRY_MS = 10_000;

/** How one kind of work is stored. */
export interface Kind<Work, Stored> {
  /** Of the lock that one tab holds. */
  readonly lock: string;
  /** So long after a change it is written, if no other comes. */
  readonly afterMs: number;
  recordOf(work: Work): Stored;
  /** The work in a stored record, or the words that say why it cannot be read. */
  workOf(found: unknown): Work | string;
  isSameWork(one: Stored, other: Stored): boolean;
}

export type Trouble<Work> =
  | { readonly kind: 'full' | 'blocked' | 'saved-again' | 'other-tab' | 'writer' }
  | { readonly kind: 'aside'; readonly aside: AsideRecord }
  /** Stored by another tab, or by an earlier visit and not readable at first. */
  | { readonly kind: 'other-work'; readonly work: Work };

export class Autosave<Work extends object, Stored> {
  readonly #open: () => Promise<Drawer>;
  readonly #kind: Kind<Work, Stored>;
  readonly #tell: (trouble: Trouble<Work>) => void;
  readonly #lock: WriterLock;
  #drawer: Drawer | null = null;
  /** The store has been read since this tab began, or since it became the writer. */
  #isRead = false;
  /** What this tab has read and shown, or written last. */
  #known: Stored | null = null;
  /** Stored, and not to be written over before it has been moved aside. */
  #inTheWay: AsideRecord | null = null;
  #pending: Work | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #failing = false;
  /** Writes go one after the other. */
  #writing: Promise<void> = Promise.resolve();

  constructor(
    open: () => Promise<Drawer>,
    kind: Kind<Work, Stored>,
    tell: (trouble: Trouble<Work>) => void,
    locks: LockManager | undefined,
  ) {
    this.#open = open;
    this.#kind = kind;
    this.#tell = tell;
    this.#lock = new WriterLock(locks, kind.lock, (isHeld) => {
      tell({ kind: isHeld ? 'writer' : 'other-tab' });
      if (isHeld) void this.#beginToWrite();
    });
  }

  get isSoleWriter(): boolean {
    return this.#lock.isSole;
  }

  /** The work of the last visit, or null: none, unreadable (told of and moved aside) or storage blocked. */
  async start(): Promise<Work | null> {
    await this.#lock.ask();
    let work: Work | null = null;
    try {
      work = await this.#read(await this.#opened());
      if (work) this.#known = this.#kind.recordOf(work);
      // A tab that only reads leaves what cannot be read to the writer.
      if (this.#lock.isHeld) await this.#clearTheWay(await this.#opened());
    } catch {
      this.#fail('blocked');
    }
    if (!this.#lock.isHeld) {
      this.#tell({ kind: 'other-tab' });
      this.#lock.wait();
    }
    return work;
  }

  /** Remembers the newest work and writes it a little later. */
  note(work: Work): void {
    this.#pending = work;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), this.#failing ? RETRY_MS : this.#kind.afterMs);
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
      const drawer = await this.#opened();
      if (!this.#isRead) await this.#readAgain(drawer);
      const work = this.#pending;
      if (work === null) return;
      const record = this.#kind.recordOf(work);
      // Who only looked at another month does not write over what another tab has made.
      if (this.#inTheWay && this.#known && this.#kind.isSameWork(record, this.#known)) return;
      await this.#clearTheWay(drawer);
      await drawer.write(record);
      this.#known = record;
      if (this.#pending === work) this.#pending = null;
      if (this.#failing) this.#tell({ kind: 'saved-again' });
      this.#failing = false;
    } catch (error) {
      this.#fail(error instanceof Error && error.name === 'QuotaExceededError' ? 'full' : 'blocked');
      if (this.#pending) this.note(this.#pending);
    }
  }

  async #opened(): Promise<Drawer> {
    this.#drawer ??= await this.#open();
    return this.#drawer;
  }

  #fail(kind: 'full' | 'blocked'): void {
    if (!this.#failing) this.#tell({ kind });
    this.#failing = true;
  }

  /** Stored work that is not this tab's is offered and counts as in the way. */
  async #readAgain(drawer: Drawer): Promise<void> {
    const work = await this.#read(drawer);
    if (!work) return;
    const record = this.#kind.recordOf(work);
    if (this.#known && this.#kind.isSameWork(record, this.#known)) return;
    this.#inTheWay = { why: 'another tab or an earlier visit stored it', record };
    this.#tell({ kind: 'other-work', work });
  }

  /** The stored work, or null: none, or such that cannot be read, which is told of and counts as in the way. */
  async #read(drawer: Drawer): Promise<Work | null> {
    const found = await drawer.read();
    this.#isRead = true;
    this.#inTheWay = null;
    if (found === undefined) return null;
    const read = this.#kind.workOf(found);
    if (typeof read !== 'string') return read;
    this.#inTheWay = { why: read, record: found };
    this.#tell({ kind: 'aside', aside: this.#inTheWay });
    return null;
  }

  async #clearTheWay(drawer: Drawer): Promise<void> {
    if (!this.#inTheWay) return;
    await drawer.moveAside(this.#inTheWay);
    this.#inTheWay = null;
  }
}

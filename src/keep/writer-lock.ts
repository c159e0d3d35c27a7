/** One writer among the tabs of this browser: who holds the lock stores, the others wait in line behind it. */
export class WriterLock {
  /** Insecure hosts have no lock manager: then every tab writes and the last one wins. */
  readonly #locks: LockManager | undefined;
  readonly #name: string;
  readonly #changed: (isHeld: boolean) => void;
  #isHeld = false;
  #release: () => void = () => undefined;
  #waiting: AbortController | null = null;

  /** `changed` hears of what happens later: another tab has taken the lock, or has gone and left it to this one. */
  constructor(locks: LockManager | undefined, name: string, changed: (isHeld: boolean) => void) {
    this.#locks = locks;
    this.#name = name;
    this.#changed = changed;
  }

  get isHeld(): boolean {
    return this.#isHeld;
  }

  /** No other tab writes: known only where there is a lock. */
  get isSole(): boolean {
    return this.#isHeld && this.#locks !== undefined;
  }

  /** Takes the lock if no other tab has it; ends once that is known. */
  ask(): Promise<void> {
    return this.#request({ ifAvailable: true });
  }

  /** Takes the lock from whoever has it. */
  steal(): Promise<void> {
    this.#waiting?.abort();
    this.#waiting = null;
    return this.#request({ steal: true });
  }

  /** Gets the lock as soon as the tab that has it goes. */
  wait(): void {
    this.#waiting = new AbortController();
    void this.#request({ signal: this.#waiting.signal }).then(() => {
      if (this.#isHeld) this.#changed(true);
    });
  }

  release(): void {
    this.#waiting?.abort();
    this.#waiting = null;
    this.#isHeld = false;
    this.#release();
  }

  /** Ends once the lock is held or refused; it is held until the page goes or another tab steals it. */
  #request(how: LockOptions): Promise<void> {
    const locks = this.#locks;
    if (!locks) {
      this.#isHeld = true;
      return Promise.resolve();
    }
    return new Promise((known) => {
      const held = locks.request(this.#name, how, (lock) => {
        this.#isHeld = lock !== null;
        known();
        return lock === null ? undefined : new Promise<void>((release) => (this.#release = release));
      });
      held.catch(() => {
        // No longer wanted: this tab closes, or has stolen the lock instead of waiting.
        if (how.signal?.aborted) return;
        this.#isHeld = false;
        this.#changed(false);
        this.wait();
      });
    });
  }
}

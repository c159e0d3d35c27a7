/** What the person is told in one line, with its cure. A notice with the id of an older one takes its place. */
export interface Cure {
  readonly label: string;
  readonly act: () => void;
}

export interface Notice {
  readonly id: string;
  readonly words: string;
  readonly cures?: readonly Cure[];
  /** Something is wrong until it is put right; others leave by themselves. */
  readonly stays?: boolean;
}

const SHOWN_MS = 8000;

export class Notices {
  list = $state.raw<readonly Notice[]>([]);
  readonly #timers = new Map<string, ReturnType<typeof setTimeout>>();

  tell(notice: Notice): void {
    this.drop(notice.id);
    this.list = [...this.list, notice];
    if (!notice.stays) {
      this.#timers.set(
        notice.id,
        setTimeout(() => this.drop(notice.id), SHOWN_MS),
      );
    }
  }

  drop(id: string): void {
    clearTimeout(this.#timers.get(id));
    this.#timers.delete(id);
    if (this.list.some((notice) => notice.id === id)) {
      this.list = this.list.filter((notice) => notice.id !== id);
    }
  }
}

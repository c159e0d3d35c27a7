/** One sitting of the test: which tile is called, what was called so far, whether the tile's truth is shown. */
import type { Called, Calls } from '../../../lessons/calls';
import type { Call } from '../../../lessons/seam-kinds';
import type { SeamMark } from '../../../lessons/seam-marks';
import { type Round, TILES_OF } from '../../../lessons/seam-test';

/** A seam to be called, with its place on its tile. */
export interface Asked extends SeamMark {
  readonly seam: number;
}

export class Sitting {
  readonly rounds: readonly Round[];
  readonly by: string;
  /** A whole set, in place of what was missed. */
  readonly isWhole: boolean;
  #at = $state(0);
  #calls = $state.raw<ReadonlyMap<number, Call>>(new Map());
  #done = $state.raw<readonly (Called & { readonly set: string })[]>([]);
  /** Place among those asked of the seam that the next call is for. */
  chosen = $state(0);
  isShown = $state(false);

  readonly round: Round | undefined = $derived.by(() => this.rounds.at(this.#at));
  readonly at: number = $derived(this.#at);
  /** What was called on this tile, by the seam's place on it. */
  readonly calls: ReadonlyMap<number, Call> = $derived(this.#calls);

  constructor(rounds: readonly Round[], by: string, isWhole: boolean) {
    this.rounds = rounds;
    this.by = by;
    this.isWhole = isWhole;
  }

  /** Calls the chosen seam and goes on to the next that is not called yet. */
  call(call: Call, asked: readonly Asked[]): void {
    const one = asked.at(this.chosen);
    if (!one || this.isShown) return;
    this.#calls = new Map([...this.#calls, [one.seam, call]]);
    const open = asked.findIndex(({ seam }) => !this.#calls.has(seam));
    if (open >= 0) this.chosen = open;
  }

  isCalled(asked: readonly Asked[]): boolean {
    return asked.length > 0 && asked.every(({ seam }) => this.#calls.has(seam));
  }

  /** Shows what the seams are: from here on no call is changed. */
  show(asked: readonly Asked[]): void {
    const { round } = this;
    if (!round || this.isShown) return;
    const now = asked.flatMap(({ seam, is }) => {
      const call = this.#calls.get(seam);
      return call ? [{ set: round.set, tile: round.tile, seam, is, call }] : [];
    });
    this.#done = [...this.#done, ...now];
    this.isShown = true;
    this.chosen = 0;
  }

  /** False where that was the last tile. */
  next(): boolean {
    this.#calls = new Map();
    this.isShown = false;
    this.chosen = 0;
    this.#at++;
    return this.#at < this.rounds.length;
  }

  /** What was called, set by set. */
  callsOn(on: string): Calls[] {
    return [...new Set(this.#done.map(({ set }) => set))].map((set) => ({
      seambenchCalls: 1,
      set,
      tiles: TILES_OF,
      by: this.by,
      on,
      called: this.#done
        .filter((one) => one.set === set)
        .map(({ tile, seam, is, call }) => ({ tile, seam, is, call })),
    }));
  }
}

/** One sitting of the test on the page: what is open (lessons/open-test.ts), and which seam is looked at. */
import { type Judged, type OpenTest, withCall, withNextTile, withShown } from '../../../lessons/open-test';
import { type Call, isRightCall } from '../../../lessons/seam-kinds';
import type { RoundName } from '../../../lessons/seam-test';

export class Sitting {
  readonly #keep: (open: OpenTest) => void;
  #open: OpenTest;
  /** Of the seam chosen, its place on its tile; null for the one that wants a look next. */
  #chosen = $state<number | null>(null);

  readonly round: RoundName | undefined = $derived.by(() => this.#open.rounds.at(this.#open.at));
  /** What was called on this tile, by the seam's place on it. */
  readonly calls: ReadonlyMap<number, Call> = $derived.by(
    () => new Map(this.#open.calls.map(({ seam, call }) => [seam, call])),
  );

  /** `keep` hears of every change. */
  constructor(open: OpenTest, keep: (open: OpenTest) => void) {
    this.#open = $state.raw(open);
    this.#keep = keep;
  }

  get open(): OpenTest {
    return this.#open;
  }

  /** Of those asked: the one that was chosen; else the first that was missed, or that is not called yet. */
  chosenOf<T extends Judged>(asked: readonly T[]): T | undefined {
    const wants = ({ is, isEarly, seam }: T): boolean => {
      const call = this.calls.get(seam);
      return call === undefined || (this.#open.isShown && !isRightCall({ is, isEarly }, call));
    };
    return asked.find(({ seam }) => seam === this.#chosen) ?? asked.find(wants) ?? asked.at(0);
  }

  choose(seam: number): void {
    this.#chosen = seam;
  }

  /** Calls a seam and goes on to the next that is not called yet. */
  call(seam: number, call: Call, asked: readonly Judged[]): void {
    this.#put(withCall(this.#open, seam, call));
    this.#chosen = this.isCalled(asked) ? seam : null;
  }

  isCalled(asked: readonly Judged[]): boolean {
    return asked.length > 0 && asked.every(({ seam }) => this.calls.has(seam));
  }

  show(asked: readonly Judged[]): void {
    this.#put(withShown(this.#open, asked));
    this.#chosen = null;
  }

  /** False where that was the last tile. */
  next(): boolean {
    this.#put(withNextTile(this.#open));
    this.#chosen = null;
    return this.round !== undefined;
  }

  #put(open: OpenTest): void {
    this.#open = open;
    this.#keep(open);
  }
}

/** What the learner has done, on the page: whole values are replaced, and each change is heard by whoever stores it. */
import type { Calls } from '../../lessons/calls';
import { callsOf, type OpenTest } from '../../lessons/open-test';
import {
  cardsNow,
  joined,
  NO_PROGRESS,
  type Progress,
  withCalls,
  withLesson,
  withOpen,
  withTest,
} from '../../lessons/progress';
import { dueCards } from '../../lessons/repetition';
import { dayOfDate } from '../../units/quantity';
import { today } from '../today';

export class School {
  readonly #changed: (progress: Progress) => void;
  #progress = $state.raw<Progress>(NO_PROGRESS);

  constructor(changed: (progress: Progress) => void) {
    this.#changed = changed;
  }

  // no $derived: it would end with the view that opened School first
  get progress(): Progress {
    return this.#progress;
  }

  /** Seams that were missed and are to be seen again by today. */
  due() {
    return dueCards(cardsNow(this.#progress), dayOfDate(today()));
  }

  answered(lesson: string, tries: number): void {
    this.#put(withLesson(this.#progress, lesson, tries, today()));
  }

  /** A test that is being taken is kept after each call; null: it was given up. */
  keepOpen(open: OpenTest | null): void {
    this.#put(withOpen(this.#progress, open));
  }

  /** A test was called to its end. */
  finished(open: OpenTest): Calls[] {
    const day = dayOfDate(today());
    const all = callsOf(open, today());
    const add = open.isWhole ? withTest : withCalls;
    this.#put(all.reduce((progress, calls) => add(progress, calls, day), withOpen(this.#progress, null)));
    return all;
  }

  restore(progress: Progress): void {
    this.#progress = progress;
  }

  /** What another tab has learned meanwhile comes to what this one knows. */
  join(other: Progress): void {
    this.#put(joined(this.#progress, other));
  }

  #put(progress: Progress): void {
    this.#progress = progress;
    this.#changed(progress);
  }
}

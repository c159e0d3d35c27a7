/** What the learner has done, on the page: whole values are replaced, and each change is heard by whoever stores it. */
import type { Calls } from '../../lessons/calls';
import { callsOf, type OpenTest } from '../../lessons/open-test';
import type { Lesson } from '../../lessons/lesson';
import { titleOfCopy } from '../../lessons/draft';
import { lessonText, openDraft, openLesson } from '../../lessons/lesson-file';
import { lessonId } from '../../lessons/lesson-id';
import {
  cardsNow,
  joined,
  MOST_OWN,
  NO_PROGRESS,
  type Progress,
  withCalls,
  withDraft,
  withLesson,
  withOpen,
  withOwn,
  withTest,
} from '../../lessons/progress';
import { dueCards } from '../../lessons/repetition';
import { dayOfDate } from '../../units/quantity';
import { today } from '../today';

/** A lesson of the learner's own: null where its text can be read no more. */
export interface OwnLesson {
  readonly text: string;
  readonly lesson: Lesson | null;
}

/** A lesson that is being written, by the id that it has or will have; '' where it has none yet. */
export interface Draft extends OwnLesson {
  readonly id: string;
}

export class School {
  readonly #changed: (progress: Progress) => void;
  readonly #read = new Map<string, OwnLesson>();
  /** What was read or written last of each, by id: it is not read anew at each key. */
  readonly #drafts = new Map<string, Draft>();
  #progress = $state.raw<Progress>(NO_PROGRESS);

  constructor(changed: (progress: Progress) => void) {
    this.#changed = changed;
  }

  // no $derived: it would end with the view that opened School first
  get progress(): Progress {
    return this.#progress;
  }

  /** Newest last, each id once. */
  get own(): readonly OwnLesson[] {
    return (this.#progress.own ?? []).map((text) => this.#readOwn(text));
  }

  /** One object for one text: the page tells lessons apart by it. */
  #readOwn(text: string): OwnLesson {
    const known = this.#read.get(text);
    if (known) return known;
    const opened = openLesson(text);
    const own = { text, lesson: 'lesson' in opened ? opened.lesson : null };
    this.#read.set(text, own);
    return own;
  }

  /** Takes a lesson in, in place of one with the same id. */
  addOwn(lesson: Lesson): void {
    const others = this.own.filter((one) => one.lesson?.id !== lesson.id).map(({ text }) => text);
    this.#put(withOwn(this.#progress, [...others, lessonText(lesson)].slice(-MOST_OWN)));
  }

  removeOwn({ text }: OwnLesson): void {
    this.#put(
      withOwn(
        this.#progress,
        (this.#progress.own ?? []).filter((one) => one !== text),
      ),
    );
  }

  get drafts(): readonly Draft[] {
    return Object.entries(this.#progress.drafts ?? {}).map(([id, text]) => this.#readDraft(id, text));
  }

  #readDraft(id: string, text: string): Draft {
    const known = this.#drafts.get(id);
    if (known?.text === text) return known;
    const draft = { id, text, lesson: openDraft(text) };
    this.#drafts.set(id, draft);
    return draft;
  }

  /** Kept at each key; null: it was kept as a lesson or given up. */
  keepDraft(id: string, lesson: Lesson | null): void {
    if (lesson === null) {
      this.#drafts.delete(id);
      this.#put(withDraft(this.#progress, id, null));
      return;
    }
    const named = { ...lesson, id };
    const text = lessonText(named);
    this.#drafts.set(id, { id, text, lesson: named });
    this.#put(withDraft(this.#progress, id, text));
  }

  /** Begins a lesson from a copy of another; where such a copy still waits as it was, that one. */
  beginLike(lesson: Lesson): string {
    const copy = { ...lesson, title: titleOfCopy(lesson) };
    const waiting = this.drafts.find(({ id, text }) => text === lessonText({ ...copy, id }));
    if (waiting) return waiting.id;
    const id = this.freeId(copy.title);
    this.keepDraft(id, copy);
    return id;
  }

  /** An id that no lesson of the learner's and none that is being written has. */
  freeId(title: string): string {
    const own = this.own.flatMap(({ lesson }) => lesson?.id ?? []);
    return lessonId(title, [...own, ...this.drafts.map(({ id }) => id)]);
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

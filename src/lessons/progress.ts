/** What is kept of a learner: which lessons are done, which tests were taken, and what of them comes again. */
import * as v from 'valibot';
import { date, list, text, whole } from '../plan/plan';
import { type Calls, CallsSchema } from './calls';
import { openLesson } from './lesson-file';
import { type OpenTest, OpenTestSchema } from './open-test';
import { afterCall, type Card, CardSchema, isSameSeam } from './repetition';
import { isRightCall } from './seam-kinds';
import { TILES_OF } from './seam-test';

const MOST_TESTS = 500;
const MOST_CARDS = 5000;
export const MOST_OWN = 50;

export const ProgressSchema = v.object({
  shape: v.literal(1),
  /** By lesson: how many tries its question took, and the day it was answered. */
  lessons: v.record(text(60), v.object({ tries: whole(1, 100), on: date })),
  /** Newest last. */
  tests: list(CallsSchema, 0, MOST_TESTS, 'tests'),
  cards: list(CardSchema, 0, MOST_CARDS, 'seams to be seen again'),
  /** The test that is being taken; not in older records. */
  open: v.optional(OpenTestSchema),
  /** The learner's own lessons, each the text of its file, newest last; not in older records. */
  own: v.optional(list(v.string(), 0, MOST_OWN, 'lessons')),
  /**
   * Lessons that are being written, each a text of the same form that may be incomplete: by the id of the own lesson that
   * it changes or will be; '' for one that has no name yet. Not in older records.
   */
  drafts: v.optional(v.record(v.string(), v.string())),
});

export type Progress = v.InferOutput<typeof ProgressSchema>;

export const NO_PROGRESS: Progress = { shape: 1, lessons: {}, tests: [], cards: [] };

/** Of the days kept, the later one; of the tries, the fewer: whoever had it right at once has it right. */
function better(
  one: Progress['lessons'][string],
  other: Progress['lessons'][string],
): Progress['lessons'][string] {
  return { tries: Math.min(one.tries, other.tries), on: one.on > other.on ? one.on : other.on };
}

/** A lesson's question has been answered right. */
export function withLesson(progress: Progress, id: string, tries: number, on: string): Progress {
  const entry = { tries, on };
  const before = progress.lessons[id] as Progress['lessons'][string] | undefined;
  return { ...progress, lessons: { ...progress.lessons, [id]: before ? better(before, entry) : entry } };
}

/** Seams that can come again: another version grows other tiles. */
export function cardsNow({ cards }: Progress): readonly Card[] {
  return cards.filter(({ tiles }) => tiles === TILES_OF);
}

/** The cards after each call of a test or of what came again. */
export function withCalls(progress: Progress, { set, tiles, called }: Calls, day: number): Progress {
  // photos do not come again
  if (tiles !== TILES_OF) return progress;
  let cards = cardsNow(progress);
  for (const { tile, seam, is, isEarly, call } of called)
    cards = afterCall(cards, { set, tile, seam, tiles }, isRightCall({ is, isEarly }, call), day);
  return { ...progress, cards: cards.slice(-MOST_CARDS) };
}

/** A whole test is kept besides. */
export function withTest(progress: Progress, calls: Calls, day: number): Progress {
  const after = withCalls(progress, calls, day);
  return { ...after, tests: [...progress.tests, calls].slice(-MOST_TESTS) };
}

/** The test that is being taken after a call; null where none is any more. */
export function withOpen({ open: _open, ...rest }: Progress, open: OpenTest | null): Progress {
  return open ? { ...rest, open } : rest;
}

/** The texts of all own lessons. */
export function withOwn(progress: Progress, own: readonly string[]): Progress {
  return { ...progress, own };
}

/** The text of a lesson that is being written; null: it was kept or given up. */
export function withDraft({ drafts, ...rest }: Progress, id: string, text: string | null): Progress {
  const others = Object.entries(drafts ?? {}).filter(([key]) => key !== id);
  const all = text === null ? others : [...others, [id, text] as const];
  return all.length > 0 ? { ...rest, drafts: Object.fromEntries(all) } : rest;
}

/** Of an own lesson's text; one that can be read no more is known by its text. */
function idIn(text: string): string {
  const opened = openLesson(text);
  return 'lesson' in opened ? opened.lesson.id : text;
}

/** What two tabs have learned, put together. */
export function joined(mine: Progress, other: Progress): Progress {
  let both = mine;
  for (const [id, { tries, on }] of Object.entries(other.lessons)) both = withLesson(both, id, tries, on);
  const isNew = (calls: Calls): boolean =>
    !mine.tests.some((test) => JSON.stringify(test) === JSON.stringify(calls));
  const tests = [...other.tests.filter(isNew), ...mine.tests].slice(-MOST_TESTS);
  const cards = [
    ...other.cards.filter((card) => !mine.cards.some((own) => isSameSeam(own, card))),
    ...mine.cards,
  ].slice(-MOST_CARDS);
  // of one that both have changed, the one here
  const byId = new Map([...(other.own ?? []), ...(mine.own ?? [])].map((text) => [idIn(text), text]));
  const own = [...byId.values()].slice(-MOST_OWN);
  const all = own.length > 0 ? withOwn({ ...both, tests, cards }, own) : { ...both, tests, cards };
  const drafts = { ...other.drafts, ...mine.drafts };
  const withDrafts = Object.keys(drafts).length > 0 ? { ...all, drafts } : all;
  return withOpen(withDrafts, mine.open ?? other.open ?? null);
}

/**
 * Undo and redo over whole values that are replaced, never changed: plans, the log of trials. They share structure, so
 * two hundred of them cost less than one picture.
 * What is being tried (a drag, a slider) is no entry: its owner commits it once, when it rests.
 */
import type { Plan } from './plan';

/** With the plan also what the person saw of it. */
export interface PlanMoment {
  readonly plan: Plan;
  /** The luck it was looked at with. */
  readonly seed: string;
  readonly month: number;
}

export type Entry<Moment> = Moment & {
  /** The change that lay between this moment and the next: 'Move piece p3'. */
  readonly words: string;
};

export interface History<Moment> {
  /** Oldest first; each as it was before its change. */
  readonly past: readonly Entry<Moment>[];
  /** Next first; each as it was after its change. */
  readonly future: readonly Entry<Moment>[];
}

export type Step<Moment> = Entry<Moment> & { readonly history: History<Moment> };

const MOST_ENTRIES = 200;

export const EMPTY_HISTORY: History<never> = { past: [], future: [] };

/** The entry holds what was before the change. What had been undone can no longer be redone. */
export function commit<Moment>(history: History<Moment>, before: Entry<Moment>): History<Moment> {
  return { past: [...history.past, before].slice(-MOST_ENTRIES), future: [] };
}

/** What was before the last change, or null if there is none. */
export function undo<Moment extends object>(history: History<Moment>, now: Moment): Step<Moment> | null {
  const entry = history.past.at(-1);
  if (!entry) return null;
  const future = [{ ...now, words: entry.words }, ...history.future];
  return { ...entry, history: { past: history.past.slice(0, -1), future } };
}

/** What was after the change undone last, or null if there is none. */
export function redo<Moment extends object>(history: History<Moment>, now: Moment): Step<Moment> | null {
  const entry = history.future.at(0);
  if (!entry) return null;
  const past = [...history.past, { ...now, words: entry.words }];
  return { ...entry, history: { past, future: history.future.slice(1) } };
}

/**
 * Undo and redo over whole plans. Plans share structure, so two hundred of them cost less than one picture.
 * What is being tried (a drag, a slider) is no entry: its owner commits it once, when it rests.
 */
import type { Plan } from './plan';

export interface Moment {
  readonly plan: Plan;
  /** The luck it was looked at with. */
  readonly seed: string;
  /** Month shown at the time, so that undo brings back what the person saw. */
  readonly month: number;
}

export interface Entry extends Moment {
  /** The change that lay between this plan and the next: 'Move piece p3'. */
  readonly words: string;
}

export interface History {
  /** Oldest first; each as it was before its change. */
  readonly past: readonly Entry[];
  /** Next first; each as it was after its change. */
  readonly future: readonly Entry[];
}

export interface Step extends Moment {
  readonly history: History;
  readonly words: string;
}

const MOST_ENTRIES = 200;

export const EMPTY_HISTORY: History = { past: [], future: [] };

/** The entry holds the plan before the change. What had been undone can no longer be redone. */
export function commit(history: History, before: Entry): History {
  return { past: [...history.past, before].slice(-MOST_ENTRIES), future: [] };
}

/** The plan before the last change, or null if there is none. */
export function undo(history: History, now: Moment): Step | null {
  const entry = history.past.at(-1);
  if (!entry) return null;
  const future = [{ ...now, words: entry.words }, ...history.future];
  return { ...entry, history: { past: history.past.slice(0, -1), future } };
}

/** The plan after the change undone last, or null if there is none. */
export function redo(history: History, now: Moment): Step | null {
  const entry = history.future.at(0);
  if (!entry) return null;
  const past = [...history.past, { ...now, words: entry.words }];
  return { ...entry, history: { past, future: history.future.slice(1) } };
}

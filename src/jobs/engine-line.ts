/** Engine workers. The first is begun before the page's program is loaded, for it takes longest to be there. */
import type { Line } from './channel';
import { lineTo } from './line';

let waiting: Line | null = null;

function newLine(): Line {
  return lineTo(new Worker(new URL('../../workers/engine.worker.ts', import.meta.url), { type: 'module' }));
}

/** Loads the worker that the next engineLine gets. */
export function beginEngine(): void {
  try {
    waiting = newLine();
  } catch {
    // Where no worker can be made, the first ask meets the same fault and tells of it.
  }
}

export function engineLine(): Line {
  const line = waiting ?? newLine();
  waiting = null;
  return line;
}

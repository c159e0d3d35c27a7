/** Engine workers. The first is begun before the page's program is loaded, for it takes longest to be there. */
import type { Line } from './channel';

let waiting: Line | null = null;

function newLine(): Line {
  const worker = new Worker(new URL('../../workers/engine.worker.ts', import.meta.url), { type: 'module' });
  /** A fault that came before anybody listened. */
  let early: string | null = null;
  let tell = (reason: string): void => void (early = reason);
  worker.addEventListener('error', (event) => tell(event.message || 'the worker could not be loaded'));
  worker.addEventListener('messageerror', () => tell('a message could not be read'));
  return {
    endpoint: worker,
    onFault(report) {
      tell = report;
      if (early !== null) report(early);
    },
    end: () => worker.terminate(),
  };
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

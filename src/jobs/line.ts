/** A worker as a line: its faults are kept until somebody listens. */
import type { Line } from './channel';

export function lineTo(worker: Worker): Line {
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

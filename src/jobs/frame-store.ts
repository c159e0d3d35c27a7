/**
 * Runs that were grown, kept under a byte budget so that undo and scrubbing need no new run.
 * When the budget is passed the runs used longest ago go first, then odd months of the run in use, then of
 * what is left every second one; the month on screen stays.
 */
import type { Reading } from '../measure/reading';
import type { Frame, PolypSites } from '../model/frame';
import { arraysOf } from '../model/layers';

export interface KeptRun {
  readonly cellMm: number;
  readonly sites: PolypSites | null;
  /** By month; null where a frame was dropped or never asked for. */
  readonly frames: readonly (Frame | null)[];
  readonly readings: readonly Reading[];
  /** Grown to its last month. */
  readonly whole: boolean;
}

const MEGABYTE = 1_000_000;

/** Half the memory on machines that report 4 GB or less. */
export function frameBudget(deviceMemoryGb: number | undefined): number {
  return (deviceMemoryGb !== undefined && deviceMemoryGb <= 4 ? 64 : 128) * MEGABYTE;
}

function frameBytes(frame: Frame | null): number {
  return frame ? arraysOf(frame).reduce((sum, { byteLength }) => sum + byteLength, 0) : 0;
}

function runBytes(run: KeptRun): number {
  return run.frames.reduce((sum, frame) => sum + frameBytes(frame), run.sites?.offset.byteLength ?? 0);
}

export class FrameStore {
  readonly #budgetBytes: number;
  /** In order of use, the last used at the end. */
  readonly #runs = new Map<string, KeptRun>();

  constructor(budgetBytes: number) {
    this.#budgetBytes = budgetBytes;
  }

  /** A run that is whole; asking counts as use. */
  whole(key: string): KeptRun | null {
    const run = this.#runs.get(key);
    if (!run?.whole) return null;
    this.#put(key, run);
    return run;
  }

  /**
   * A new run under this key; what was kept of it before is forgotten. It begins with the first `months` months of
   * another run, where that is the same so far.
   */
  begin(key: string, cellMm: number, like?: { readonly run: KeptRun; readonly months: number }): KeptRun {
    return this.#put(key, {
      cellMm,
      sites: like?.run.sites ?? null,
      frames: like?.run.frames.slice(0, like.months) ?? [],
      readings: like?.run.readings.slice(0, like.months) ?? [],
      whole: false,
    });
  }

  /** A run as far as it has come; null where none is kept. */
  sofar(key: string): KeptRun | null {
    return this.#runs.get(key) ?? null;
  }

  addSites(key: string, sites: PolypSites): KeptRun | null {
    const run = this.#runs.get(key);
    return run ? this.#put(key, { ...run, sites }) : null;
  }

  addMonth(key: string, frame: Frame | null, reading: Reading, monthShown: number): KeptRun | null {
    const run = this.#runs.get(key);
    if (!run) return null;
    const frames = [...run.frames];
    const readings = [...run.readings];
    frames[reading.month] = frame;
    readings[reading.month] = reading;
    this.#put(key, { ...run, frames, readings });
    this.#economise(key, monthShown);
    return this.#runs.get(key) ?? null;
  }

  finish(key: string): KeptRun | null {
    const run = this.#runs.get(key);
    return run ? this.#put(key, { ...run, whole: true }) : null;
  }

  get bytes(): number {
    return [...this.#runs.values()].reduce((sum, run) => sum + runBytes(run), 0);
  }

  #put(key: string, run: KeptRun): KeptRun {
    this.#runs.delete(key);
    this.#runs.set(key, run);
    return run;
  }

  #economise(key: string, monthShown: number): void {
    for (const other of [...this.#runs.keys()]) {
      if (this.bytes <= this.#budgetBytes) return;
      if (other !== key) this.#runs.delete(other);
    }
    for (let stride = 2; this.bytes > this.#budgetBytes && stride <= 64; stride *= 2) {
      const run = this.#runs.get(key);
      if (!run) return;
      const frames = run.frames.map((frame, month) =>
        month % stride === 0 || month === monthShown ? frame : null,
      );
      this.#runs.set(key, { ...run, frames });
    }
  }
}

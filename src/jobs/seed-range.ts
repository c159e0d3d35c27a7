/**
 * What the same plan comes to on 16 other draws of luck: readings alone, at preview cell, in a worker of its
 * own and only while the tile rests. The newest plan wins.
 */
import type { Reading } from '../measure/reading';
import type { Plan } from '../plan/plan';
import { quantile } from '../stats/intervals';
import type { Channel } from './channel';
import { PREVIEW_CELL_MM, runKey } from './tile-run';

export const RANGE_SEEDS: readonly string[] = Array.from({ length: 16 }, (_, index) => String(index + 1));
const REST_MS = 600;

/** Median and the middle 80 % of a number over seeds; count tells on how many seeds it exists. */
export interface Range {
  readonly median: number;
  readonly low: number;
  readonly high: number;
  readonly count: number;
}

/** Readings of the seeds grown so far: by seed, then by month. */
export interface SeedReadings {
  readonly key: string;
  readonly seeds: readonly (readonly Reading[])[];
}

export function rangeOf(values: readonly (number | null)[]): Range | null {
  const there = values.filter((value) => value !== null);
  if (there.length === 0) return null;
  return {
    median: quantile(there, 0.5),
    low: quantile(there, 0.1),
    high: quantile(there, 0.9),
    count: there.length,
  };
}

/** The range of one number at a month over the seeds that have reached it. */
export function rangeAt(
  runs: SeedReadings,
  month: number,
  pick: (reading: Reading) => number | null,
): Range | null {
  const readings = runs.seeds.map((months) => months[month]).filter((reading) => reading !== undefined);
  return rangeOf(readings.map(pick));
}

export class SeedRange {
  readonly #channel: Channel;
  readonly #hear: (runs: SeedReadings) => void;
  #wantedKey = '';
  #done: SeedReadings = { key: '', seeds: [] };
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(channel: Channel, hear: (runs: SeedReadings) => void) {
    this.#channel = channel;
    this.#hear = hear;
  }

  /** The tile has come to rest on this plan: go on, or begin anew if the plan is another. */
  rest(plan: Plan): void {
    const key = runKey(plan, '', PREVIEW_CELL_MM);
    clearTimeout(this.#timer);
    this.#wantedKey = key;
    if (this.#done.key !== key) this.#done = { key, seeds: [] };
    this.#hear(this.#done);
    this.#timer = setTimeout(() => void this.#run(plan, key), REST_MS);
  }

  /** The tile is at work: what has been grown is kept, the run underway is not. */
  pause(): void {
    clearTimeout(this.#timer);
    if (this.#wantedKey !== '') this.#channel.cancel();
    this.#wantedKey = '';
  }

  close(): void {
    clearTimeout(this.#timer);
    this.#wantedKey = '';
    this.#channel.close();
  }

  async #run(plan: Plan, key: string): Promise<void> {
    while (this.#wantedKey === key && this.#done.seeds.length < RANGE_SEEDS.length) {
      const seed = RANGE_SEEDS[this.#done.seeds.length];
      const months: Reading[] = [];
      const ended = await this.#channel.grow(
        { plan, seed, cellMm: PREVIEW_CELL_MM, frames: false },
        { polyps: () => undefined, month: (_frame, reading) => void months.push(reading) },
      );
      if (ended !== 'whole' || this.#wantedKey !== key) return;
      this.#done = { key, seeds: [...this.#done.seeds, months] };
      this.#hear(this.#done);
    }
  }
}

/** Holds the claims of a lesson against the engine, seed after seed, in a worker of its own: readings at a preview's cell. */
import { type Look, runsOf, valueOf } from '../lessons/claim';
import type { Lesson } from '../lessons/lesson';
import { meanOf } from '../stats/intervals';
import type { Channel } from './channel';
import { PREVIEW_CELL_MM } from './tile-run';

export const CHECK_SEEDS = 8;

export interface Held {
  /** Over the seeds that have a value; null where none has. */
  readonly mean: number | null;
  readonly holds: boolean;
}

/** One entry a claim; null where the engine failed or the check was given up. */
export async function checkClaims(
  channel: Channel,
  lesson: Pick<Lesson, 'plan' | 'tries' | 'claims'>,
  hear: (seedsDone: number) => void,
): Promise<readonly Held[] | null> {
  const { claims } = lesson;
  const runs = runsOf(lesson, claims);
  const values = claims.map((): number[] => []);
  for (let k = 1; k <= CHECK_SEEDS; k++) {
    const looks = new Map<string, Look>();
    for (const { tile, plan, months, needsFrames } of runs) {
      const ended = await channel.grow(
        { plan, seed: String(k), cellMm: PREVIEW_CELL_MM, frames: needsFrames },
        {
          polyps: () => undefined,
          month: (frame, reading) => {
            if (months.includes(reading.month)) looks.set(`${tile} ${reading.month}`, { frame, reading });
          },
        },
      );
      if (ended !== 'whole') return null;
    }
    claims.forEach((claim, at) => {
      const value = valueOf(claim, (tile, month) => looks.get(`${tile} ${month}`));
      if (value !== null) values[at].push(value);
    });
    hear(k);
  }
  return claims.map(({ from, to }, at) => {
    if (values[at].length === 0) return { mean: null, holds: false };
    const { mean } = meanOf(values[at]);
    return { mean, holds: mean >= from && mean <= to };
  });
}

/** A reading to begin with: what was seen last, so that where nothing changed nothing needs a touch. */
import { pruned } from '../../plan/edit';
import { freshReadingId } from '../../trials/log';
import { inTime, isOf, lastMeasured, lastSeen, pairsOf } from '../../trials/last-seen';
import type { Log, Measured, Saw, Seen, Trial, TrialReading } from '../../trials/trial';

/** The initials that stand on the reading noted last in all of the log. */
function lastReader({ trials }: Log): string | undefined {
  let last: TrialReading | undefined;
  for (const { readings } of trials) {
    const own = inTime(readings).at(-1);
    if (own && (last === undefined || own.on >= last.on)) last = own;
  }
  return last?.by;
}

export function readingToBegin(log: Log, trial: Trial, on: string): TrialReading {
  const by = lastReader(log);
  const seen = pairsOf(trial.varieties).flatMap(([a, b]): Seen[] => {
    const last = lastSeen(trial, a, b);
    // heights change from month to month: these are measured anew
    return last.length === 0
      ? [{ a, b, saw: 'not-met' }]
      : last.map(({ saw, over, share }) => ({
          a,
          b,
          saw,
          ...(over === undefined ? {} : { over }),
          ...(share === undefined ? {} : { share }),
        }));
  });
  const measured = trial.varieties.flatMap((variety): Measured[] => {
    const state = lastMeasured(trial, variety)?.state;
    return state === undefined || state === 'alive' ? [] : [{ variety, state }];
  });
  return { id: freshReadingId(trial), on, ...(by === undefined ? {} : { by }), seen, measured };
}

/** The whole seam of a pair seen as one thing; who lay over whom is kept where it still can be so. */
export function seenAs(reading: TrialReading, a: string, b: string, saw: Saw): TrialReading {
  const before = reading.seen.find((row) => isOf(row, a, b));
  const over = saw === 'lapped' || saw === 'dead' ? before?.over : undefined;
  const now: Seen = { a, b, saw, ...(over === undefined ? {} : { over }) };
  return { ...reading, seen: [...reading.seen.filter((row) => !isOf(row, a, b)), now] };
}

/** One part of a pair's seam changed; `at` counts among the rows of the pair. */
export function seenChanged(
  reading: TrialReading,
  a: string,
  b: string,
  at: number,
  change: Partial<Seen> | null,
): TrialReading {
  const own = reading.seen.filter((row) => isOf(row, a, b));
  const others = reading.seen.filter((row) => !isOf(row, a, b));
  const changed = own.flatMap((row, k): Seen[] => {
    if (k !== at) return [row];
    return change === null ? [] : [pruned({ ...row, ...change })];
  });
  // what is alone is so along the whole seam
  const parts =
    change === null && changed.length === 1 ? [pruned({ ...changed[0], share: undefined })] : changed;
  return { ...reading, seen: [...others, ...parts] };
}

/** Another part of the pair's seam is something else: the parts share the seam evenly until it is said how. */
export function seenSplit(reading: TrialReading, a: string, b: string, saw: Saw): TrialReading {
  const own = reading.seen.filter((row) => isOf(row, a, b));
  const others = reading.seen.filter((row) => !isOf(row, a, b));
  const share = Math.round(100 / (own.length + 1)) / 100;
  const first = Math.round(100 * (1 - share * own.length)) / 100;
  const parts = [...own, { a, b, saw }].map((row, k): Seen => ({ ...row, share: k === 0 ? first : share }));
  return { ...reading, seen: [...others, ...parts] };
}

/** Sizes of a variety; what is undefined is left out, and a variety of which nothing is said as well. */
export function measuredAs(reading: TrialReading, variety: string, change: Partial<Measured>): TrialReading {
  const before = reading.measured.find((row) => row.variety === variety);
  const row = pruned<Measured>({ variety, ...before, ...change });
  const others = reading.measured.filter((other) => other.variety !== variety);
  return { ...reading, measured: Object.keys(row).length > 1 ? [...others, row] : others };
}

/** Of the tiles on which a pair has not settled: which of them may still do so. */
import { grouped } from './grouped';
import { isGone, monthsUnread } from './last-seen';
import type { PairCell } from './pair-table';
import type { PairVerdict } from './verdicts';

/** Why a pair has not settled by that day: it may yet, nobody reads the tile any more, or a piece was gone before. */
export function openSince({ trial, a, b }: PairVerdict, on: string): 'waits' | 'unread' | 'gone' {
  if (isGone(trial, a) || isGone(trial, b)) return 'gone';
  return monthsUnread(trial, on) === null ? 'waits' : 'unread';
}

/** '2 not settled yet, 3 not read for 7 months or more'; empty where all have settled. */
export function openWords({ verdicts }: PairCell, on: string): string {
  const open = grouped(
    verdicts.filter(({ isSettled }) => !isSettled),
    (verdict) => openSince(verdict, on),
  );
  const [waiting, unread, gone] = ['waits', 'unread', 'gone'].map((since) => open.get(since) ?? []);
  const least = Math.min(...unread.map(({ trial }) => monthsUnread(trial, on) ?? 0));
  return [
    ...(waiting.length > 0 ? [`${waiting.length} not settled yet`] : []),
    ...(unread.length > 0
      ? [`${unread.length} not read for ${least} months${unread.length > 1 ? ' or more' : ''}`]
      : []),
    ...(gone.length > 0 ? [`${gone.length} with a piece dead or lost before it settled`] : []),
  ].join(', ');
}

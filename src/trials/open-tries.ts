/** Of the tiles on which a pair has not settled: which of them may still do so. */
import { isGone, monthsUnread } from './last-seen';
import type { PairCell } from './pair-table';

/** '2 not settled yet, 3 not read for 7 months or more'; empty where all have settled. */
export function openWords({ a, b, verdicts }: PairCell, today: string): string {
  const open = verdicts.filter(({ isSettled }) => !isSettled).map(({ trial }) => trial);
  const over = open.filter((trial) => isGone(trial, a.id) || isGone(trial, b.id));
  const unread = open
    .filter((trial) => !over.includes(trial))
    .flatMap((trial) => monthsUnread(trial, today) ?? []);
  const waiting = open.length - over.length - unread.length;
  return [
    ...(waiting > 0 ? [`${waiting} not settled yet`] : []),
    ...(unread.length > 0
      ? [`${unread.length} not read for ${Math.min(...unread)} months${unread.length > 1 ? ' or more' : ''}`]
      : []),
    ...(over.length > 0 ? [`${over.length} with a piece dead or lost before it settled`] : []),
  ].join(', ');
}

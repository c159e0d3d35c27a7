/** Which tiles the list shows, and in what order. */
import { daysBetween, isLiving, lastDay, lastSeen, monthsUnread, pairsOf } from '../../trials/last-seen';
import type { Log, Trial } from '../../trials/trial';

export const ORDERS = {
  newest: 'set last',
  oldest: 'set first',
  tag: 'by tag',
  unread: 'longest unread',
} as const;
export type Order = keyof typeof ORDERS;

export const SHOWN = {
  all: 'all',
  living: 'living',
  open: 'not settled yet',
  unread: 'no longer read',
} as const;
export type Shown = keyof typeof SHOWN;

/** Some pair of the tile has been seen neither fused nor walled, lapped or dead. */
function isOpen(trial: Trial): boolean {
  return pairsOf(trial.varieties).some(([a, b]) => {
    const seen = lastSeen(trial, a, b);
    return seen.length === 0 || seen.some(({ saw }) => ['undecided', 'not-met', 'cant-tell'].includes(saw));
  });
}

/** Days since the last look; what is no longer read comes last. */
function waits(trial: Trial, today: string): number {
  const days = daysBetween(lastDay(trial), today);
  return monthsUnread(trial, today) === null ? days : -days;
}

const byText = new Intl.Collator('en', { numeric: true }).compare;

/** Words are looked for in tag, tank, note and names of varieties; each word must be found. */
export function tilesFor(log: Log, words: string, order: Order, shown: Shown, today: string): Trial[] {
  const names = new Map(log.varieties.map(({ id, name }) => [id, name]));
  const wanted = words.toLowerCase().split(/\s+/u).filter(Boolean);
  const found = log.trials.filter((trial) => {
    if (shown !== 'all' && !isLiving(trial)) return false;
    if (shown === 'open' && (!isOpen(trial) || monthsUnread(trial, today) !== null)) return false;
    if (shown === 'unread' && monthsUnread(trial, today) === null) return false;
    if (wanted.length === 0) return true;
    const { tag, tank, note = '', varieties } = trial;
    const text = [tag, tank, note, ...varieties.map((id) => names.get(id) ?? id)].join(' ').toLowerCase();
    return wanted.every((word) => text.includes(word));
  });
  const compare: Record<Order, (a: Trial, b: Trial) => number> = {
    newest: (a, b) => byText(b.setOn, a.setOn) || byText(a.tag, b.tag),
    oldest: (a, b) => byText(a.setOn, b.setOn) || byText(a.tag, b.tag),
    tag: (a, b) => byText(a.tag, b.tag),
    unread: (a, b) => waits(b, today) - waits(a, today) || byText(a.tag, b.tag),
  };
  return found.sort(compare[order]);
}

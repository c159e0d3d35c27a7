/**
 * Which items of a contest can be told apart by finite numbers. Greatest likelihood is finite where every item can be
 * reached from every other by steps 'i won or tied at least once against j' (Ford 1957, Am. Math. Mon. 64(8): 28-33, for
 * wins alone; a tie bounds the difference to both sides). With ties the tie parameter must be finite too. Wins and ties
 * are linear in (abilities, log nu), so it runs off exactly where numbers exist with every winner 2 or more above
 * the loser and ties at most 2 apart (Albert & Anderson 1984, Biometrika 71: 1-10); Bellman & Ford's search finds
 * them or shows that there are none.
 */
import type { Meetings } from './contest';

/**
 * apart: no chain of meetings leads to the others. above, below: the chain exists, but it was won, or lost, each time.
 * ladder: items are ordered one below the other and ties are so many that they say nothing of how far apart.
 */
export type NotOrdered = 'apart' | 'above' | 'below' | 'ladder';

/** For each item: null if it is among those that can be ordered, else why not. */
export function whoCanBeOrdered(count: number, meetings: readonly Meetings[]): (NotOrdered | null)[] {
  const won: number[][] = Array.from({ length: count }, () => []);
  const lost: number[][] = Array.from({ length: count }, () => []);
  for (const { a, b, aWins, bWins, ties } of meetings) {
    if (aWins + ties > 0) {
      won[a].push(b);
      lost[b].push(a);
    }
    if (bWins + ties > 0) {
      won[b].push(a);
      lost[a].push(b);
    }
  }
  const { below, above, group } = largestGroup(won, lost);
  const met = won.map((others, item) => [...others, ...lost[item]]);
  const joined = reached(met, group[0] ?? 0);
  const ladder = group.length < 2 || isLadder(count, within(meetings, new Set(group)));
  return won.map((_, item) => {
    if (below.has(item) && above.has(item)) return ladder ? lonely(group, met[item]) : null;
    if (!joined.has(item)) return 'apart';
    if (above.has(item)) return 'above';
    return below.has(item) ? 'below' : 'apart';
  });
}

/** Of one item alone nothing is known against others that it never met. */
function lonely(group: readonly number[], met: readonly number[]): NotOrdered {
  return group.length < 2 && met.length === 0 ? 'apart' : 'ladder';
}

/** Meetings of these items among themselves. */
export function within(meetings: readonly Meetings[], items: ReadonlySet<number>): Meetings[] {
  return meetings.filter(({ a, b }) => items.has(a) && items.has(b));
}

function reached(steps: readonly (readonly number[])[], from: number): Set<number> {
  const seen = new Set([from]);
  for (const item of seen) for (const next of steps[item] ?? []) seen.add(next);
  return seen;
}

/** The most items that reach each other, the earlier ones where two groups are as large; and all they reach or are reached by. */
function largestGroup(won: readonly (readonly number[])[], lost: readonly (readonly number[])[]) {
  let best = { below: new Set<number>(), above: new Set<number>(), group: [] as number[] };
  const settled = new Set<number>();
  won.forEach((_, item) => {
    if (settled.has(item)) return;
    const below = reached(won, item);
    const above = reached(lost, item);
    const group = [...below].filter((other) => above.has(other));
    for (const other of group) settled.add(other);
    if (group.length > best.group.length) best = { below, above, group };
  });
  return best;
}

function isLadder(count: number, meetings: readonly Meetings[]): boolean {
  if (!meetings.some(({ ties }) => ties > 0)) return false;
  const edges = meetings.flatMap(({ a, b, aWins, bWins, ties }) => [
    ...(aWins > 0 ? [{ from: a, to: b, by: -2 }] : []),
    ...(bWins > 0 ? [{ from: b, to: a, by: -2 }] : []),
    ...(ties > 0
      ? [
          { from: a, to: b, by: 2 },
          { from: b, to: a, by: 2 },
        ]
      : []),
  ]);
  const places = Array.from({ length: count }, () => 0);
  for (let round = 0; round <= count; round++) {
    let moved = false;
    for (const { from, to, by } of edges) {
      if (places[from] + by >= places[to]) continue;
      places[to] = places[from] + by;
      moved = true;
    }
    if (!moved) return true;
  }
  return false;
}

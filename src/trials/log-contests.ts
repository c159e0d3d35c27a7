/**
 * Aggression from a log: each seam that was lapped or dead is a win of the variety noted above, each ridge a tie
 * (contest-fit.ts). A seam that fused was no contest.
 */
import { Z95 } from '../stats/intervals';
import { type Contest, contestFit } from './contest-fit';
import { type Dates, datesOf, type FitChoice, type LeftOut, placing, tallied, WHOLE_LOG } from './fit-choice';
import { grouped } from './grouped';
import { lastDay, lastDayOf } from './last-seen';
import { openSince } from './open-tries';
import type { Log, LogVariety } from './trial';
import { type PairVerdict, verdictsOf } from './verdicts';

/** Null, with why, for one that cannot be placed. */
export interface LoggedStanding {
  readonly variety: LogVariety;
  readonly ability: number | null;
  readonly se: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly why: string | null;
  readonly won: number;
  readonly lost: number;
  readonly tied: number;
}

/** What two varieties came to against what the fit expects; null where one of them cannot be placed. */
export interface ContestPair {
  readonly a: LogVariety;
  readonly b: LogVariety;
  readonly aWins: number;
  readonly bWins: number;
  readonly ties: number;
  readonly expected: { readonly aWins: number; readonly bWins: number; readonly ties: number } | null;
}

/** Of varieties that a chain of meetings joins: those of another fit cannot be compared with them. */
export interface AggressionFit {
  readonly part: string;
  /** The strongest first, then those that cannot be placed. */
  readonly standings: readonly LoggedStanding[];
  /** Davidson's; null where nothing can be ordered. */
  readonly tie: number | null;
  readonly pairs: readonly ContestPair[];
  readonly n: number;
  readonly dates: Dates | null;
  /** Of all the part, told with its first fit. */
  readonly leftOut: readonly LeftOut[];
}

/** With the day on which its tile was last read. */
interface LoggedContest extends Contest {
  readonly on: string;
}

interface Sorted {
  readonly part: string;
  readonly contest: LoggedContest | null;
  readonly why: string | null;
}

/** For each part of the log one fit or more, the largest first; one with nothing in it where there were no contests. */
export function aggressionFits(log: Log, choice: FitChoice = WHOLE_LOG): AggressionFit[] {
  const place = placing(log, choice);
  const lastRead = lastDayOf(log);
  const sorted = verdictsOf(log).map((verdict): Sorted => {
    const placed = place(verdict.trial, 0, Math.max(1, verdict.days));
    if ('why' in placed) return { part: '', contest: null, why: placed.why };
    const contest = contestOf(verdict, lastRead);
    return typeof contest === 'string'
      ? { part: placed.part, contest: null, why: contest }
      : { part: placed.part, contest, why: null };
  });
  const varieties = new Map(log.varieties.map((variety) => [variety.id, variety]));
  const parts = [...grouped(sorted, ({ part }) => part)];
  return (parts.length === 0 ? [['', sorted] as const] : parts).flatMap(([part, own]) => {
    const contests = own.flatMap(({ contest }) => (contest === null ? [] : [contest]));
    const leftOut = tallied(own.flatMap(({ why }) => (why === null ? [] : [why])));
    return joined(contests).map((among, at) =>
      fitOf({ part, leftOut: at === 0 ? leftOut : [] }, among, varieties),
    );
  });
}

/** Contests by the varieties that a chain of them joins, most varieties first; a list of none for none. */
function joined<One extends Contest>(contests: readonly One[]): (readonly One[])[] {
  const heads = new Map<string, string>();
  const headOf = (name: string): string => {
    const next = heads.get(name);
    return next === undefined || next === name ? name : headOf(next);
  };
  for (const { winner, loser } of contests) heads.set(headOf(winner), headOf(loser));
  const groups = [...grouped(contests, ({ winner }) => headOf(winner)).values()];
  const size = (own: readonly Contest[]) => new Set(own.flatMap(({ winner, loser }) => [winner, loser])).size;
  return groups.length === 0 ? [[]] : groups.sort((one, other) => size(other) - size(one));
}

const OPEN = {
  waits: 'not settled yet',
  unread: 'not settled, and not read for half a year or more before the last of the log',
  gone: 'not settled before a piece died or was lost',
};

function contestOf(verdict: PairVerdict, lastRead: string): LoggedContest | string {
  const { trial, a, b, outcome, over } = verdict;
  const on = lastDay(trial);
  if (outcome === 'ridge') return { winner: a, loser: b, tie: true, on };
  if (outcome === 'fused') return 'fused: no contest';
  if (outcome === 'undecided') return OPEN[openSince(verdict, lastRead)];
  return over === null
    ? 'lapped or dead, but not noted which lies above'
    : { winner: over, loser: over === a ? b : a, tie: false, on };
}

function fitOf(
  of: Pick<AggressionFit, 'part' | 'leftOut'>,
  contests: readonly LoggedContest[],
  varieties: ReadonlyMap<string, LogVariety>,
): AggressionFit {
  const { items, tie } = contestFit(contests);
  const abilities = new Map(items.map(({ name, ability }) => [name, ability]));
  const standings = items.flatMap(({ name, ability, se, why }): LoggedStanding[] => {
    const variety = varieties.get(name);
    if (!variety) return [];
    const own = contests.filter(({ winner, loser }) => winner === name || loser === name);
    const half = se === null ? null : Z95 * se;
    return [
      {
        variety,
        ability,
        se,
        low: ability === null || half === null ? null : ability - half,
        high: ability === null || half === null ? null : ability + half,
        why: why ?? null,
        won: own.filter((contest) => !contest.tie && contest.winner === name).length,
        lost: own.filter((contest) => !contest.tie && contest.loser === name).length,
        tied: own.filter((contest) => contest.tie).length,
      },
    ];
  });
  return {
    ...of,
    standings: standings.sort((one, other) => (other.ability ?? -Infinity) - (one.ability ?? -Infinity) || 0),
    tie,
    pairs: pairsIn(contests, varieties, abilities, tie),
    n: contests.length,
    dates: datesOf(contests.map(({ on }) => on)),
  };
}

function pairsIn(
  contests: readonly Contest[],
  varieties: ReadonlyMap<string, LogVariety>,
  abilities: ReadonlyMap<string, number | null>,
  tie: number | null,
): ContestPair[] {
  const places = [...varieties.keys()];
  const order = new Map(places.map((id, at) => [id, at]));
  const inOrder = ({ winner, loser }: Contest) =>
    (order.get(winner) ?? 0) < (order.get(loser) ?? 0)
      ? ([winner, loser] as const)
      : ([loser, winner] as const);
  return [...grouped(contests, (contest) => inOrder(contest).join(' ')).values()].flatMap(
    (own): ContestPair[] => {
      const [first, second] = inOrder(own[0]);
      const [a, b] = [varieties.get(first), varieties.get(second)];
      if (!a || !b) return [];
      const aWins = own.filter((contest) => !contest.tie && contest.winner === first).length;
      const ties = own.filter((contest) => contest.tie).length;
      const [ofA, ofB] = [abilities.get(first) ?? null, abilities.get(second) ?? null];
      const expected =
        ofA === null || ofB === null || tie === null ? null : expectedOf(own.length, ofA, ofB, tie);
      return [{ a, b, aWins, bWins: own.length - aWins - ties, ties, expected }];
    },
  );
}

function expectedOf(n: number, ofA: number, ofB: number, tie: number): ContestPair['expected'] {
  const difference = ofA - ofB;
  const [a, tied] = [Math.exp(difference), tie * Math.exp(difference / 2)];
  const all = a + 1 + tied;
  return { aWins: (n * a) / all, bWins: n / all, ties: (n * tied) / all };
}

/** Who laps whom, as strengths with ties: abilities on the natural logarithmic scale that sum to 0. */
import { type Meetings, strengths } from '../stats/contest';
import { type NotOrdered, whoCanBeOrdered, within } from '../stats/ordered';
import { type Fields, readTable, type Table, Unfit, wordIn, yesIn } from './csv-table';

export interface Contest {
  readonly winner: string;
  readonly loser: string;
  /** Neither won; which of the two stands first then means nothing. */
  readonly tie: boolean;
}

/** Null, with why, for an item that cannot be placed. */
export interface Standing {
  readonly name: string;
  readonly ability: number | null;
  readonly se: number | null;
  readonly why?: string;
}

export interface ContestFit {
  readonly items: readonly Standing[];
  /** Davidson's; 0 without ties, null where nothing can be ordered. */
  readonly tie: number | null;
}

const WHY: Record<NotOrdered, string> = {
  apart: 'no chain of meetings leads to the others',
  above: 'never lost to the ordered ones: stronger, by how much cannot be told',
  below: 'never won against the ordered ones: weaker, by how much cannot be told',
  ladder: 'each pair went one way or was tied: more meetings are needed to tell how far apart',
};

function contestIn(fields: Fields): Contest {
  const [winner, loser] = [wordIn(fields, 'winner'), wordIn(fields, 'loser')];
  if (winner === loser) throw new Unfit(`winner and loser are both '${winner}'`);
  return { winner, loser, tie: fields.tie === '' ? false : yesIn(fields, 'tie') };
}

/** An empty `tie` is none. */
export function contestTable(text: string): Table<Contest> {
  return readTable(text, [['winner'], ['loser'], ['tie']], contestIn);
}

/** One row for each two names that met, so that the fit takes as long as there are pairs, not rows. */
function meetingsOf(contests: readonly Contest[], numbers: ReadonlyMap<string, number>): Meetings[] {
  const pairs = new Map<string, { a: number; b: number; aWins: number; bWins: number; ties: number }>();
  for (const { winner, loser, tie } of contests) {
    const [won, lost] = [numbers.get(winner) ?? 0, numbers.get(loser) ?? 0];
    const [a, b] = won < lost ? [won, lost] : [lost, won];
    const key = `${a} ${b}`;
    const pair = pairs.get(key) ?? { a, b, aWins: 0, bWins: 0, ties: 0 };
    if (tie) pair.ties += 1;
    else if (won === a) pair.aWins += 1;
    else pair.bWins += 1;
    pairs.set(key, pair);
  }
  return [...pairs.values()];
}

/** Items in the order in which they are first named. */
export function contestFit(contests: readonly Contest[]): ContestFit {
  const names = [...new Set(contests.flatMap(({ winner, loser }) => [winner, loser]))];
  const numbers = new Map(names.map((name, number) => [name, number]));
  const meetings = meetingsOf(contests, numbers);
  const why = whoCanBeOrdered(names.length, meetings);
  const ordered = names.flatMap((_, number) => (why[number] === null ? [number] : []));
  const place = new Map(ordered.map((number, at) => [number, at]));
  const among = within(meetings, new Set(ordered)).map((met) => ({
    ...met,
    a: place.get(met.a) ?? 0,
    b: place.get(met.b) ?? 0,
  }));
  const fit = ordered.length === 0 ? null : strengths(ordered.length, among);
  const items = names.map((name, number): Standing => {
    const at = place.get(number);
    if (at === undefined || fit === null) {
      return { name, ability: null, se: null, why: WHY[why[number] ?? 'ladder'] };
    }
    return { name, ability: fit.abilities[at], se: Math.sqrt(fit.covariance[at][at]) };
  });
  return { items, tie: fit?.tie ?? null };
}

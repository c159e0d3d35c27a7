/**
 * Which pairs to try next, and why.
 *
 * Worth of a try: the chance that it takes times what a merge of the two is worth to the grower (the mean of the two
 * varieties' worths). What it teaches: by how much one more verdict is expected to shrink the variance of the chance.
 * For Beta(a, b) with variance V that is V / (a + b + 1) (law of total variance; Raiffa & Schlaifer 1961, Applied
 * Statistical Decision Theory, 5.4 preposterior analysis). Of two pairs as good, the one whose varieties have taken with
 * more others in common goes first (judgement: what fuses with the same is likelier akin).
 */
import type { Beta } from '../stats/beta-binomial';
import { openWords } from './open-tries';
import { kindOf, type PairCell, type PairTable } from './pair-table';
import type { LogVariety } from './trial';

export interface NextPair {
  readonly cell: PairCell;
  readonly worth: number;
  readonly teaches: number;
  /** Varieties with which both have taken. */
  readonly inCommon: readonly string[];
  readonly why: string;
  /** The number by which it stands where it stands, and what it is made of. */
  readonly rank: string;
}

export type NextBy = 'worth' | 'teaches';
type Found = Omit<NextPair, 'why' | 'rank'>;

/** The best `most` pairs within groups, or of which no group is said; pairs that need no further try are left out. */
export function nextPairs(table: PairTable, by: NextBy, most: number, today: string): NextPair[] {
  const took = takers(table);
  const found: Found[] = [];
  const { varieties } = table;
  for (const [at, a] of varieties.entries()) {
    for (const b of varieties.slice(at + 1)) {
      // across groups nothing is expected to fuse
      if (kindOf(a, b) === 'across') continue;
      const cell = table.cell(a.id, b.id);
      if (isKnown(cell)) continue;
      const inCommon = [...(took.get(a.id) ?? [])].filter((id) => took.get(b.id)?.has(id));
      found.push({ cell, worth: cell.chance * worthOf(a, b), teaches: taughtBy(cell), inCommon });
    }
  }
  found.sort((one, other) => other[by] - one[by] || other.inCommon.length - one.inCommon.length);
  const names = new Map(varieties.map(({ id, name }) => [id, name]));
  return found
    .slice(0, most)
    .map((pair) => ({ ...pair, why: whyOf(pair, table, names, today), rank: rankOf(pair, by) }));
}

/** Whether it takes is settled: three tries or more, and the range of its chance lies on one side of a half. */
function isKnown({ tried, low, high }: PairCell): boolean {
  return tried >= 3 && (low > 0.5 || high < 0.5);
}

function worthOf(a: LogVariety, b: LogVariety): number {
  return ((a.worth ?? 1) + (b.worth ?? 1)) / 2;
}

export function taughtBy({ posterior }: PairCell): number {
  return varianceOf(posterior) / (posterior.a + posterior.b + 1);
}

function varianceOf({ a, b }: Beta): number {
  const sum = a + b;
  return (a * b) / (sum * sum * (sum + 1));
}

function rankOf({ cell, worth, teaches }: Found, by: NextBy): string {
  const { a, b, chance, posterior } = cell;
  if (by === 'worth') {
    const percent = Number((100 * chance).toPrecision(2));
    return `Worth of a try ${worth.toFixed(2)}: ${percent} % of ${Number(worthOf(a, b).toFixed(2))}, the mean worth of the two.`;
  }
  const points = (variance: number) => (100 * Math.sqrt(variance)).toFixed(1);
  const now = varianceOf(posterior);
  return `Its chance is known to ± ${points(now)} in 100; after one more verdict to about ± ${points(now - teaches)}.`;
}

function takers({ noted }: PairTable): Map<string, Set<string>> {
  const took = new Map<string, Set<string>>();
  const add = (one: string, other: string) => took.set(one, (took.get(one) ?? new Set<string>()).add(other));
  for (const cell of noted) {
    if (cell.took === 0 || cell.kind === 'self') continue;
    add(cell.a.id, cell.b.id);
    add(cell.b.id, cell.a.id);
  }
  return took;
}

function whyOf(
  { cell, inCommon }: Found,
  table: PairTable,
  names: ReadonlyMap<string, string>,
  today: string,
): string {
  const { a, b, tried, took, kind } = cell;
  const open = openWords(cell, today);
  const parts = [tried === 0 ? 'Never tried to a verdict' : `${took} of ${tried} took so far`];
  if (open !== '') parts.push(open);
  const own = table.priorOf(a, b);
  const others = { pairs: own.pairs - (tried > 0 ? 1 : 0), tried: own.tried - tried, took: own.took - took };
  if (others.tried > 0) {
    const where = kind === 'within' ? `within ${a.group}` : 'without a group';
    parts.push(`of the other pairs ${where} ${others.took} of ${others.tried} took`);
  }
  if (inCommon.length > 0) {
    const named = inCommon.slice(0, 3).map((id) => names.get(id) ?? id);
    parts.push(`both have taken with ${named.join(' and ')}`);
  }
  return `${parts.join('; ')}.`;
}

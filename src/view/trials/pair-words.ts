/** What the table of pairs says, in words. */
import { openWords } from '../../trials/open-tries';
import type { PairCell } from '../../trials/pair-table';

const percent = (share: number): string => `${(100 * share).toFixed(share < 0.095 && share > 0 ? 1 : 0)} %`;

function rangeWords({ low, high }: Pick<PairCell, 'low' | 'high'>): string {
  return `${percent(low)} to ${percent(high)}`;
}

export function chanceWords(cell: PairCell): string {
  return `${percent(cell.chance)} (${rangeWords(cell)})`;
}

/** 'took 3 of 5' */
export function tookWords({ took, tried, undecided }: PairCell): string {
  if (tried > 0) return `took ${took} of ${tried}`;
  return undecided > 0 ? 'no verdict yet' : 'never tried';
}

/** 'took 3 of 5, 1 not settled yet' */
export function tookAndOpen(cell: PairCell, today: string): string {
  const open = openWords(cell, today);
  if (open === '') return tookWords(cell);
  return cell.tried === 0 ? open : `${tookWords(cell)}, ${open}`;
}

export function kindWords({ kind, a, b }: PairCell): string {
  switch (kind) {
    case 'within':
      return `Both are ${a.group}.`;
    case 'across':
      return `${a.name} is ${a.group}, ${b.name} is ${b.group}: only varieties of one species are expected to fuse.`;
    case 'unsaid':
      return 'Of one of them no group is said: only varieties of one species are expected to fuse.';
    case 'self':
      return 'A variety beside itself is a control: pieces of one colony always fuse.';
  }
}

/** Who lay over whom, as often as it was noted; empty where it never was. */
export function overWords({ a, b, aOver, bOver }: PairCell): string {
  const times = (count: number) => (count === 1 ? 'once' : `${count} times`);
  return [
    ...(aOver > 0 ? [`${a.name} over ${b.name} ${times(aOver)}`] : []),
    ...(bOver > 0 ? [`${b.name} over ${a.name} ${times(bOver)}`] : []),
  ].join(', ');
}

/** What a claim can read off a tile, in words. */
import type { Amount, Claim } from '../../../lessons/lesson';
import { CALLS } from '../../../lessons/seam-kinds';
import type { Plan } from '../../../plan/plan';

export const AMOUNT_WORDS: Readonly<Record<Amount['of'], string>> = {
  fused: 'share of the seam that is fused',
  ridge: 'share of the seam that is a ridge',
  lapped: 'share of the seam that is lapped',
  dead: 'share of the seam that is dead',
  undecided: 'share of the seam that is undecided',
  'looks-fused': 'share of all seams that looks fused from above and is a ridge',
  tissue: 'share of the tissue that is of one variety',
  cut: 'share of what was cut out that is of one variety',
  'vein-width': 'width of the veins of colour',
  radius: 'radius of a disc as large as all tissue',
};

export const AMOUNTS = Object.keys(AMOUNT_WORDS) as readonly Amount['of'][];

export const isOfPair = (of: Amount['of']): boolean => CALLS.some((call) => call === of);
export const isOfVariety = (of: Amount['of']): boolean => of === 'tissue' || of === 'cut';

/** Another thing to read keeps of the old one what it can have too. */
export function readingOf({ pair, variety, ...rest }: Amount, of: Amount['of'], plan: Plan): Amount {
  const first = variety ?? plan.varieties.at(0)?.id;
  return {
    ...rest,
    of,
    ...(isOfPair(of) && pair && { pair }),
    ...(isOfVariety(of) && first !== undefined && { variety: first }),
  };
}

/** A claim's bounds are typed as percent, mm or times. */
export function unitOf({ amount, by }: Pick<Claim, 'amount' | 'by'>): { word: string; factor: number } {
  if (by) return { word: 'times', factor: 1 };
  return amount.of === 'vein-width' || amount.of === 'radius'
    ? { word: 'mm', factor: 1 }
    : { word: 'percent', factor: 100 };
}

/** 'share of the seam that is fused, at month 4' */
export function amountWords({ of, pair, variety, month, try: attempt }: Amount): string {
  const which = pair ? `, of ${pair.join(' with ')}` : variety === undefined ? '' : `, of ${variety}`;
  return `${AMOUNT_WORDS[of]}${which}, at month ${month}${attempt === undefined ? '' : `, on thing to try ${attempt}`}`;
}

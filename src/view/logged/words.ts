/** Words of the log: what was seen, what happened, what became of a piece. */
import type { Measured, Saw, Seen, TankEvent, Trial } from '../../trials/trial';

export const SAW_WORDS: Readonly<Record<Saw, { label: string; words: string }>> = {
  fused: { label: 'fused', words: 'One tissue, no line between them: the section shows one skeleton.' },
  ridge: { label: 'ridge', words: 'A wall from both sides, and neither passes it.' },
  lapped: { label: 'lapped', words: 'One grows over the other.' },
  dead: { label: 'dead', words: 'A bare pale line that neither settles.' },
  undecided: { label: 'undecided', words: 'They touch, and it is not settled yet.' },
  'not-met': { label: 'not met', words: 'They do not touch yet.' },
  'cant-tell': { label: 'can’t tell', words: 'Looked at, and not to be told.' },
};

export const STATE_WORDS: Readonly<Record<NonNullable<Measured['state']>, string>> = {
  alive: 'alive',
  died: 'died',
  lost: 'lost',
};

export const EVENT_WORDS: Readonly<Record<TankEvent['kind'], string>> = {
  dip: 'dip',
  pest: 'pest seen',
  move: 'moved',
  fault: 'fault',
  light: 'light changed',
  other: 'other',
};

/** 'fused 60 %, Fern over Amber' */
export function seenWords({ saw, over, a, b, share, ridgeMm }: Seen, nameOf: (id: string) => string): string {
  const parts = [SAW_WORDS[saw].label + (share === undefined ? '' : ` ${Math.round(100 * share)} %`)];
  if (over !== undefined) parts.push(`${nameOf(over)} over ${nameOf(over === a ? b : a)}`);
  if (ridgeMm !== undefined) parts.push(`${ridgeMm} mm high`);
  return parts.join(', ');
}

export function layoutWords({ layout, varieties }: Trial): string {
  if ('plan' in layout) return 'by a plan';
  const many = `${varieties.length} piece${varieties.length === 1 ? '' : 's'} side by side`;
  const size = layout.pieceMm === undefined ? '' : `, ${layout.pieceMm} mm`;
  const gap = layout.gapMm === undefined ? '' : `, gap ${layout.gapMm} mm`;
  return many + size + gap;
}

export function daysWords(days: number): string {
  return `${days} ${days === 1 ? 'day' : 'days'}`;
}

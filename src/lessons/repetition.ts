/**
 * When a missed seam is shown again: the algorithm SM-2.
 * Source: P. A. Wozniak 1990, Optimization of learning, master's thesis, University of Technology in Poznan, section 3.2.
 * I(1) = 1 day, I(2) = 6, then I(n) = I(n-1) EF, fractions rounded up; EF starts at 2.5 and after an answer of quality q
 * (0 to 5) becomes EF + 0.1 - (5-q)(0.08 + (5-q) 0.02), never below 1.3; a quality below 3 starts the repetitions anew and
 * leaves EF as it is. A call is right or wrong and nothing between, so which quality it is taken for is judgement.
 */
import * as v from 'valibot';
import { number, SeedSchema, text, whole } from '../plan/plan';

export const FIRST_EASE = 2.5;
const LEAST_EASE = 1.3;
const LEAST_PASS = 3;

/** Qualities of the description: 4 correct after a hesitation, 3 correct with difficulty (it was missed last time), 1 wrong. */
function qualityOf(isRight: boolean, inRow: number): number {
  if (!isRight) return 1;
  return inRow === 0 ? 3 : 4;
}

export const CardSchema = v.object({
  set: SeedSchema,
  tile: whole(0, 100),
  seam: whole(0, 20),
  /** Which tiles the set's name stood for (TILES_OF); not in older records. */
  tiles: v.optional(text(20)),
  /** Right answers in a row. */
  inRow: whole(0, 1000),
  /** Days from the last answer to the next showing. */
  intervalDays: number(0, 100_000),
  ease: number(LEAST_EASE, 10),
  /** Days since 1970-01-01. */
  dueDay: whole(0, 1_000_000),
});

export type Card = v.InferOutput<typeof CardSchema>;

interface Memory {
  readonly inRow: number;
  readonly intervalDays: number;
  readonly ease: number;
}

/** What an answer of quality 0 to 5 makes of it. */
export function afterAnswer(memory: Memory, quality: number): Memory {
  if (quality < LEAST_PASS) return { inRow: 0, intervalDays: 1, ease: memory.ease };
  const off = 5 - quality;
  const ease = Math.max(LEAST_EASE, memory.ease + 0.1 - off * (0.08 + off * 0.02));
  const inRow = memory.inRow + 1;
  const intervalDays = inRow === 1 ? 1 : inRow === 2 ? 6 : Math.ceil(memory.intervalDays * memory.ease);
  return { inRow, intervalDays, ease };
}

/** Which seam of which set. */
export type SeamName = Pick<Card, 'set' | 'tile' | 'seam' | 'tiles'>;

export function isSameSeam(one: SeamName, other: SeamName): boolean {
  const isSameTile = one.tiles === other.tiles && one.set === other.set && one.tile === other.tile;
  return isSameTile && one.seam === other.seam;
}

/** The cards after a call: a seam that was missed becomes one; a seam without a card that was called right needs none. */
export function afterCall(
  cards: readonly Card[],
  seam: SeamName,
  isRight: boolean,
  today: number,
): readonly Card[] {
  const old = cards.find((card) => isSameSeam(card, seam));
  if (!old && isRight) return cards;
  const before = old ?? { inRow: 0, intervalDays: 0, ease: FIRST_EASE };
  const memory = afterAnswer(before, qualityOf(isRight, before.inRow));
  const card: Card = { ...seam, ...memory, dueDay: today + memory.intervalDays };
  return old ? cards.map((one) => (one === old ? card : one)) : [...cards, card];
}

/** What is to be seen again by today, longest due first. */
export function dueCards(cards: readonly Card[], today: number): Card[] {
  return cards.filter(({ dueDay }) => dueDay <= today).sort((a, b) => a.dueDay - b.dueDay);
}

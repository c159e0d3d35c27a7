/**
 * SM-2 against its published description: P. A. Wozniak 1990, Optimization of learning, master's thesis, University of
 * Technology in Poznan, section 3.2. And what becomes of a seam that was missed.
 */
import { expect, it } from 'vitest';
import { afterAnswer, afterCall, dueCards, FIRST_EASE } from '../../src/lessons/repetition';

const NEW = { inRow: 0, intervalDays: 0, ease: FIRST_EASE };

it('intervals are 1, 6 and then the one before times the ease, rounded up: 1, 6, 15, 38, 95 days at 2.5', () => {
  const days: number[] = [];
  let memory: ReturnType<typeof afterAnswer> = NEW;
  for (let n = 0; n < 5; n++) {
    memory = afterAnswer(memory, 4);
    days.push(memory.intervalDays);
  }
  expect(days).toEqual([1, 6, 15, 38, 95]);
});

// EF' - EF = 0.1 - (5-q)(0.08 + (5-q) 0.02): printed for q = 5, 4, 3
it.each([
  [5, 0.1],
  [4, 0],
  [3, -0.14],
])('an answer of quality %d changes the ease by %d', (quality, by) => {
  expect(afterAnswer(NEW, quality).ease).toBeCloseTo(FIRST_EASE + by, 12);
});

it('ease never falls below 1.3', () => {
  expect(afterAnswer({ inRow: 3, intervalDays: 10, ease: 1.35 }, 3).ease).toBe(1.3);
});

it.each([0, 1, 2])('quality %d starts again at one day, with the ease as it was', (quality) => {
  expect(afterAnswer({ inRow: 4, intervalDays: 38, ease: 2.1 }, quality)).toEqual({
    inRow: 0,
    intervalDays: 1,
    ease: 2.1,
  });
});

it('only a seam that was missed comes again, the next day; called right it moves off, missed it comes back', () => {
  const seam = { set: 'reef', tile: 2, seam: 1 };
  expect(afterCall([], seam, true, 100)).toEqual([]);
  let cards = afterCall([], seam, false, 100);
  expect(cards).toMatchObject([{ ...seam, dueDay: 101 }]);
  expect(dueCards(cards, 100)).toEqual([]);
  expect(dueCards(cards, 101)).toHaveLength(1);
  cards = afterCall(cards, seam, true, 101);
  expect(cards[0]?.dueDay).toBe(102);
  cards = afterCall(cards, seam, true, 102);
  expect(cards[0]?.dueDay).toBe(108);
  cards = afterCall(cards, seam, false, 108);
  expect(cards).toMatchObject([{ dueDay: 109, inRow: 0 }]);
});

it('what is due longest comes first', () => {
  const card = (seam: number, dueDay: number) => ({ set: 'reef', tile: 0, seam, ...NEW, dueDay });
  expect(dueCards([card(0, 9), card(1, 5), card(2, 20)], 10).map(({ seam }) => seam)).toEqual([1, 0]);
});

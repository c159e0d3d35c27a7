import { describe, expect, it } from 'vitest';
import { balanceOf, sharesOf } from '../../src/measure/balance';
import { takeCensus } from '../../src/measure/census';
import { areasMm2, coverMm2 } from '../../src/measure/cover';
import { seamLengths, touchingPairOfRow } from '../../src/measure/seam';
import { firstTouchDay, settledDay } from '../../src/measure/settled';
import { FATE } from '../../src/model/seam-table';
import type { State } from '../../src/model/state';
import { paintedState, type Painting } from '../fixtures/painted-state';

const HALVES: Painting = { sizeMm: 40, cellMm: 0.5, varieties: [1, 2], piece: (x) => (x < 0 ? 1 : 2) };

function settled(state: State): number | null {
  return settledDay(state, seamLengths(state, touchingPairOfRow(state)));
}

describe('first touch and settled day', () => {
  /** Touched from day 5 at the top, one day later each mm down; a verdict 20 days after, down to `undecidedFromMm`. */
  const zipped = (undecidedFromMm: number) =>
    paintedState({
      ...HALVES,
      contact: (_x, y) => {
        const decided = y < undecidedFromMm;
        return {
          fate: decided ? FATE.fused : FATE.undecided,
          touchedDay: 5 + Math.floor(y + 20),
          settledDay: decided ? 25 + Math.floor(y + 20) : Infinity,
        };
      },
    });

  it('names the least day by which 95 % of the length has a verdict', () => {
    // 38 of 40 mm: the mm from 37 to 38 is the last needed, or its neighbour where the ends read short
    expect([62, 63]).toContain(settled(zipped(20)));
  });

  it('is null while more than 5 % of the length waits', () => {
    expect(settled(zipped(17.5))).toBeNull();
    expect(settled(zipped(19))).not.toBeNull();
  });

  it('first touch is the least day of contact, and null where none has touched yet', () => {
    expect(firstTouchDay(zipped(20))).toBe(5);
    const waiting = paintedState({
      ...HALVES,
      day: 3,
      contact: () => ({ fate: 1, touchedDay: 5, settledDay: Infinity }),
    });
    expect(firstTouchDay(waiting)).toBeNull();
    expect(settled(waiting)).toBeNull();
    expect(firstTouchDay(paintedState({ ...HALVES, varieties: [1, 1] }))).toBeNull();
  });

  it('first touch stays when a lapped border has moved off the row where it began', () => {
    const lapped = paintedState({
      ...HALVES,
      contact: () => ({ fate: FATE.lapped, touchedDay: 12, settledDay: 30 }),
    });
    lapped.seam.cell.fill(-1);
    expect(firstTouchDay(lapped)).toBe(12);
  });
});

describe('cover, shares and colour balance', () => {
  const areas = (state: State) => areasMm2(takeCensus(state));

  it('counts tissue, and not bare or empty ground', () => {
    const state = paintedState({
      ...HALVES,
      varieties: [1, 3],
      variety: (x, y, piece) => (y > 10 ? 0 : x > 10 ? 255 : piece === 1 ? 1 : 3),
    });
    expect([...areas(state)]).toEqual([0, 600, 0, 300, 0, 0, 0, 0, 0]);
    expect(coverMm2(areas(state))).toBe(900);
    const census = takeCensus(state);
    expect((census.bareCells + census.emptyCells) * census.cellMm2).toBe(700);
    expect(sharesOf(areas(state))[1]).toBeCloseTo(2 / 3, 12);
  });

  it.each([
    [1, 20, 1],
    [1, 10, 0.5],
    [1, 0, 0],
  ])(
    'balance of two varieties with the border moved: piece %d to %d mm reads %d (definition)',
    (_piece, widthMm, expected) => {
      const state = paintedState({ ...HALVES, variety: (x) => (x < widthMm - 20 ? 1 : 2) });
      expect(balanceOf(areas(state), state.pieces)).toBeCloseTo(expected, 12);
    },
  );

  it('balance counts a variety that died out, and is null for one variety', () => {
    const three = paintedState({ ...HALVES, varieties: [1, 2, 3], variety: (_x, _y, piece) => piece });
    // shares 1/2, 1/2, 0 of three: 1 - 3/4 (1/6 + 1/6 + 1/3)
    expect(balanceOf(areas(three), three.pieces)).toBeCloseTo(0.5, 12);
    const one = paintedState({ ...HALVES, varieties: [2, 2] });
    expect(balanceOf(areas(one), one.pieces)).toBeNull();
    const gone = paintedState({ ...HALVES, variety: () => 255 });
    expect(balanceOf(areas(gone), gone.pieces)).toBeNull();
    expect([...sharesOf(areas(gone))]).toEqual(new Array(9).fill(0));
  });
});

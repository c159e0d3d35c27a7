import { describe, expect, it } from 'vitest';
import { pairKey, seamByFate, seamLengths, touchingPairOfRow } from '../../src/measure/seam';
import type { SeamMm } from '../../src/measure/reading';
import { FATE } from '../../src/model/seam-table';
import type { State } from '../../src/model/state';
import { paintedState, type Painting } from '../fixtures/painted-state';

function seamOf(state: State, key = 0): SeamMm {
  const keyOfRow = touchingPairOfRow(state);
  return seamByFate(state, seamLengths(state, keyOfRow), keyOfRow, key);
}

const HALVES: Painting = { sizeMm: 40, cellMm: 0.25, varieties: [1, 2], piece: (x) => (x < 0 ? 1 : 2) };
/** A line of 40 mm along the lattice reads 0.98620 of itself, less 0.93 cells at its ends (see boundary.ts). */
const LINE_40 = 0.9862 * 40 - 0.93 * 0.25;

const settledAs = (fate: number) => ({ fate, touchedDay: 10, settledDay: 30 });

describe('seam length', () => {
  it('of halves is the line between them', () => {
    expect(seamOf(paintedState(HALVES)).lengthMm).toBeCloseTo(LINE_40, 3);
  });

  it('is booked by fate where the fates are, each a quarter or a half', () => {
    const fates = [FATE.fused, FATE.ridge, FATE.lapped, FATE.dead];
    const seam = seamOf(
      paintedState({
        ...HALVES,
        contact: (_x, y) => settledAs(fates[Math.floor((y + 20) / 10)] ?? FATE.undecided),
      }),
    );
    // 0.2 mm: pairs that stand for 0.25 mm of line may fall to either side of a boundary of fates
    for (const part of [seam.fusedMm, seam.ridgeMm, seam.lappedMm, seam.deadMm])
      expect(Math.abs(part - LINE_40 / 4)).toBeLessThan(0.2);
    expect(seam.undecidedMm).toBe(0);
    expect(seam.fusedMm + seam.ridgeMm + seam.lappedMm + seam.deadMm).toBeCloseTo(seam.lengthMm, 10);
  });

  it('is 0 between pieces of one variety, though they were set apart', () => {
    expect(seamOf(paintedState({ ...HALVES, varieties: [1, 1] })).lengthMm).toBe(0);
  });

  it('is 0 until cut edges that face each other have healed', () => {
    const healing = paintedState({
      ...HALVES,
      day: 20,
      contact: () => ({ fate: FATE.undecided, touchedDay: 30, settledDay: Infinity }),
    });
    expect(seamOf(healing).lengthMm).toBe(0);
    healing.day = 30;
    expect(seamOf(healing).undecidedMm).toBeCloseTo(LINE_40, 3);
  });

  it('is 0 across a gap, also of one cell, and at a corner that only touches', () => {
    const gap = paintedState({ ...HALVES, piece: (x) => (x < 0 ? 1 : x < 0.25 ? 0 : 2) });
    expect(seamOf(gap).lengthMm).toBe(0);
    const corner = paintedState({
      ...HALVES,
      piece: (x, y) => (x < 0 && y < 0 ? 1 : x > 0 && y > 0 ? 2 : 0),
    });
    expect(seamOf(corner).lengthMm).toBe(0);
  });

  it('keeps the length of a dead seam whose cells are bare', () => {
    const dead = paintedState({
      ...HALVES,
      variety: (x, _y, piece) => (Math.abs(x) < 1 ? 255 : piece),
      contact: () => settledAs(FATE.dead),
    });
    expect(seamOf(dead).deadMm).toBeCloseTo(LINE_40, 3);
  });

  it('does not change when colours wander in a fused colony', () => {
    const wandered = paintedState({
      ...HALVES,
      variety: (x, y) => (Math.sin(x) + Math.cos(y / 2) > 0 ? 1 : 2),
      joined: [[1, 2]],
      contact: () => settledAs(FATE.fused),
    });
    expect(seamOf(wandered).fusedMm).toBeCloseTo(LINE_40, 3);
  });

  it('of three varieties adds up over pairs, short of a cell where the three meet', () => {
    const star = paintedState({
      ...HALVES,
      varieties: [1, 2, 3],
      piece: (x, y) => (x < 0 ? 1 : y < 0 ? 2 : 3),
      contact: (_x, _y, own, other) => settledAs(own + other === 5 ? FATE.ridge : FATE.fused),
    });
    const pairs = [pairKey(1, 2), pairKey(1, 3), pairKey(2, 3)].map((key) => seamOf(star, key));
    const all = seamOf(star);
    expect(pairs.reduce((sum, pair) => sum + pair.lengthMm, 0)).toBeCloseTo(all.lengthMm, 10);
    expect(Math.abs((pairs[0]?.fusedMm ?? 0) - LINE_40 / 2)).toBeLessThan(0.3);
    expect(Math.abs((pairs[1]?.fusedMm ?? 0) - LINE_40 / 2)).toBeLessThan(0.3);
    expect(Math.abs((pairs[2]?.ridgeMm ?? 0) - LINE_40 / 2)).toBeLessThan(0.6);
    expect(pairs[2]?.fusedMm).toBe(0);
  });

  it('of a disc in a ring is the circle, at 0.25 and 0.5 mm alike (circle, 0.6 %)', () => {
    for (const cellMm of [0.25, 0.5]) {
      const disc = paintedState({
        ...HALVES,
        cellMm,
        piece: (x, y) => (Math.hypot(x - 0.1, y + 0.07) < 12 ? 1 : 2),
      });
      expect(Math.abs(seamOf(disc).lengthMm / (24 * Math.PI) - 1)).toBeLessThan(0.006);
    }
  });

  it('of a slanted line is the line within 2.5 %: 1.5 by its angle, 0.7 at its two ends (boundary.ts)', () => {
    for (const degrees of [10, 33, 45, 71]) {
      const [s, c] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
      const slant = paintedState({
        ...HALVES,
        piece: (x, y) => (Math.hypot(x, y) > 18 ? 0 : s * x - c * y < 0.1 ? 1 : 2),
      });
      expect(Math.abs(seamOf(slant).lengthMm / 36 - 1)).toBeLessThan(0.025);
    }
  });
});

import { describe, expect, it } from 'vitest';
import { parentOf, roughnessGain, travel, workOutDue } from '../../../src/model/front';
import { createState, type State } from '../../../src/model/state';
import { expMinus, ridgeHeightMm } from '../../../src/model/ridge';
import { compile } from '../../../src/plan/compile';
import { discPiece, smallPlan } from '../../fixtures/small-plan';

const CELL_DAYS = Float64Array.of(Infinity, 4);

function bare(): State {
  const plan = smallPlan({
    tile: { shape: 'square', sizeMm: 20 },
    pieces: [discPiece('p', 'a', 0, 0, 1)],
    settings: { roughness: 0 },
  });
  return createState(compile(plan, 0.5), 'front');
}

/** A plane rim that travels at `deg` from the x axis, clockwise as seen, on all cells behind the middle one. */
function plane(deg: number): { state: State; cell: number; expectedDay: number; n: [number, number] } {
  const state = bare();
  const { columns } = state.layout;
  const n: [number, number] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  const middle = 20 * columns + 20;
  for (let i = 0; i < state.arrival.length; i++) {
    const ahead = ((i % columns) - 20) * n[0] + (Math.floor(i / columns) - 20) * n[1];
    if (ahead >= -1e-9) continue;
    state.arrival[i] = 100 + ahead * CELL_DAYS[1];
    state.variety[i] = 1;
    state.origin[i] = 1;
  }
  return { state, cell: middle, expectedDay: 100, n };
}

describe('due day of a cell', () => {
  it('is exact for a plane rim in every direction, and so is its direction of travel', () => {
    for (let deg = 0; deg < 360; deg += 7) {
      const { state, cell, expectedDay, n } = plane(deg);
      workOutDue(state, cell, CELL_DAYS);
      // arrivals are kept in 32 bits: 100 days to 4e-6
      expect(state.due[cell], `${deg} degrees`).toBeCloseTo(expectedDay, 4);
      const [x, y] = travel(state, cell, CELL_DAYS);
      expect(x).toBeCloseTo(n[0], 4);
      expect(y).toBeCloseTo(n[1], 4);
      expect(state.variety[parentOf(state, cell)]).toBe(1);
    }
  });

  it('does not pass diagonally between two cells of another colony', () => {
    const state = bare();
    const { columns } = state.layout;
    const cell = 20 * columns + 20;
    const put = (i: number, origin: number): void => {
      state.arrival[i] = 10;
      state.variety[i] = 1;
      state.origin[i] = origin;
    };
    put(cell - columns - 1, 1);
    workOutDue(state, cell, CELL_DAYS);
    expect(state.due[cell]).toBeCloseTo(10 + 4 * Math.SQRT2, 4);
    for (const i of [cell - 1, cell - columns]) {
      state.variety[i] = 255;
      state.origin[i] = 1;
    }
    workOutDue(state, cell, CELL_DAYS);
    expect(state.due[cell]).toBe(Infinity);
  });
});

describe('rates', () => {
  it('takes the gain of rough rims off, linear between the measured points', () => {
    expect(roughnessGain(0, 0.25)).toBe(1);
    expect(roughnessGain(0.1, 0.25)).toBeCloseTo(1.037, 9);
    expect(roughnessGain(0.3, 1)).toBeCloseTo(1.205, 9);
    expect(roughnessGain(0.25, 0.5)).toBeCloseTo((1.108 + 1.232) / 2, 9);
    expect(roughnessGain(0.1, 0.375)).toBeCloseTo((1.037 + 1.029) / 2, 9);
  });

  it('works out exp(-x) to 1e-13 without the host', () => {
    for (const x of [0, 1e-6, 0.05, 0.3, 1, 2.5, 7, 20, 300]) {
      expect(Math.abs(expMinus(x) - Math.exp(-x))).toBeLessThan(1e-13);
    }
    expect(expMinus(1e4)).toBe(0);
  });

  it('raises a ridge at its first rate and never over its cap', () => {
    const { rates } = bare().layout;
    expect(ridgeHeightMm(-3, rates)).toBe(0);
    expect(ridgeHeightMm(0.01, rates) / 0.01).toBeCloseTo(rates.ridgeMmPerDay, 5);
    expect(ridgeHeightMm(1e6, rates)).toBe(rates.ridgeCapMm);
  });
});

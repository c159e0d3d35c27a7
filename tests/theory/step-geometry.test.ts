/**
 * What each step takes, against closed forms: areas by plane geometry, lost tissue as width times length.
 * Tolerances: one ring of cells for an area, half a cell for the width of a cut.
 */
import { describe, expect, it } from 'vitest';
import type { Step, Xy } from '../../src/plan/plan';
import { discPiece, rectanglePiece, squarePiece } from '../fixtures/small-plan';
import { areaMm2, near, planOf, ring, square, taken, through, tileOn } from '../fixtures/step-tile';

describe.each([0.5, 0.25])('geometry, exact to a ring of cells of %d mm', (cellMm) => {
  it('a disc trimmed by w is a disc of radius r - w, and what came off is counted', () => {
    const disc = discPiece('p1', 'a', 1.3, -0.7, 30);
    for (const widthMm of [0.9, 4, 11.2]) {
      const state = tileOn(planOf([disc], [{ id: 't', day: 0, kind: 'trim', widthMm }]), 0, cellMm);
      const left = 15 - widthMm;
      near(areaMm2(state), Math.PI * left * left, ring(2 * Math.PI * left, cellMm));
      const before = areaMm2(tileOn(planOf([disc], []), 0, cellMm));
      expect(taken(state)).toEqual({ cut: before - areaMm2(state), lost: 0 });
    }
  });

  it('a stretch is trimmed no farther than it was drawn', () => {
    const along: readonly Xy[] = [[-20, 10], [20, 10]]; // prettier-ignore
    const piece = squarePiece('p1', 'a', 0, 0, 20);
    const state = tileOn(planOf([piece], [{ id: 't', day: 0, kind: 'trim', widthMm: 3, along }]), 0, cellMm);
    // ground beside the stretch counts as rim for as far as the trim is wide: round the two corners too
    near(areaMm2(state), 20 * 17, ring(20, cellMm) + 2 * 3 * 3);
    expect(areaMm2(state)).toBeLessThanOrEqual(20 * 17 + ring(20, cellMm));
    near(taken(state).cut, 400 - areaMm2(state), 1e-9);
  });

  it('only the piece that was named is trimmed', () => {
    const pieces = [rectanglePiece('p1', 'a', [-5, 0], 10, 20), rectanglePiece('p2', 'b', [5, 0], 10, 20)];
    const step: Step = { id: 't', day: 0, kind: 'trim', widthMm: 2, piece: 'p2' };
    const state = tileOn(planOf(pieces, [step]), 0, cellMm);
    expect(areaMm2(state, 1)).toBe(200);
    // three of its four sides are rim, the fourth is seam
    near(areaMm2(state, 2), 8 * 16, ring(48, cellMm));
  });

  it('a grid of cuts loses kerf times length, each crossing once', () => {
    const places = [-9, 0, 9];
    const lines = places.flatMap((at): Xy[][] => [through([at, 0], 90), through([0, at], 0)]);
    const step: Step = { id: 'c', day: 0, kind: 'recut', lines, kerfMm: 1, then: [] };
    const state = tileOn(planOf([squarePiece('p1', 'a', 0, 0, 30)], [step]), 0, cellMm);
    near(taken(state).lost, 6 * 30 - 9, (6 * 30 * cellMm) / 2);
    expect(areaMm2(state) + taken(state).lost).toBe(900);
    expect(new Set(state.origin.filter((o) => o !== 0)).size).toBe(16);
  });

  it('the width of a cut is its kerf to half a cell, whatever the tilt', () => {
    const side = 30;
    for (const kerfMm of [0.5, 0.8, 1, 1.7])
      for (const tiltDeg of [3, 7, 12, 18, 22.5, 30, 37, 45]) {
        const line = through([0.13, 0.21], tiltDeg);
        const step: Step = { id: 'c', day: 0, kind: 'recut', lines: [line], kerfMm, then: [] };
        const state = tileOn(planOf([squarePiece('p1', 'a', 0, 0, side)], [step]), 0, cellMm);
        const lengthMm = side / Math.cos((tiltDeg * Math.PI) / 180);
        near(taken(state).lost / lengthMm, kerfMm, cellMm / 2);
      }
  });

  it('along the lattice a cut takes the whole cells nearest to its kerf: less than a cell too few or too many', () => {
    for (const kerfMm of [0.3, 0.5, 0.8, 1, 1.25])
      for (const at of [0, 0.1, 0.25, -0.4]) {
        const step: Step = {
          id: 'c',
          day: 0,
          kind: 'recut',
          lines: [through([at, 0], 90)],
          kerfMm,
          then: [],
        };
        const state = tileOn(planOf([squarePiece('p1', 'a', 0, 0, 30)], [step]), 0, cellMm);
        near(taken(state).lost / 30, kerfMm, cellMm - 1e-9);
        // where cells fit the kerf exactly, they are it
        if (Number.isInteger(kerfMm / cellMm)) near(taken(state).lost / 30, kerfMm, 1e-9);
      }
  });

  it('what is isolated leaves less the kerf, the hole is wider by it', () => {
    const [side, kerfMm] = [10, 0.8];
    for (const middle of [
      [0, 0],
      [1.13, -2.31],
    ] as const) {
      const step: Step = { id: 'i', day: 0, kind: 'isolate', around: square(middle, side), kerfMm };
      const state = tileOn(planOf([squarePiece('p1', 'a', 0, 0, 30)], [step]), 0, cellMm);
      const { cut, lost } = taken(state);
      near(cut, (side - kerfMm) ** 2, ring(4 * side, cellMm));
      // the blade's corners are round outside
      const hole = (side + kerfMm) ** 2 - (1 - Math.PI / 4) * kerfMm ** 2;
      near(cut + lost, hole, ring(4 * side, cellMm));
      expect(areaMm2(state)).toBe(900 - cut - lost);
      expect(state.works[0].cuttings).toBe(1);
    }
  });

  it('scraping takes width times length', () => {
    const step: Step = { id: 's', day: 0, kind: 'scrape', along: through([0, 0], 31), widthMm: 2 };
    const state = tileOn(planOf([squarePiece('p1', 'a', 0, 0, 30)], [step]), 0, cellMm);
    const lengthMm = 30 / Math.cos((31 * Math.PI) / 180);
    near(taken(state).lost, 2 * lengthMm, (lengthMm * cellMm) / 2);
    expect(areaMm2(state) + taken(state).lost).toBe(900);
  });

  it('moved and turned, a piece keeps its area: exactly by quarter turns, to a ring by any', () => {
    for (const turnDeg of [90, 180, -90, 33, 45]) {
      const step: Step = { id: 'm', day: 0, kind: 'move', piece: 'p1', at: [4, 3], turnDeg };
      const state = tileOn(planOf([squarePiece('p1', 'a', -6, -5, 12)], [step]), 0, cellMm);
      expect(areaMm2(state)).toBeLessThanOrEqual(144);
      near(areaMm2(state), 144, turnDeg % 90 === 0 ? 0 : ring(48, cellMm));
      expect(areaMm2(state) + taken(state).lost).toBe(144);
      let [x, y] = [0, 0];
      state.variety.forEach((v, i) => {
        if (v === 0) return;
        x += (i % state.layout.columns) - (state.layout.columns - 1) / 2;
        y += Math.floor(i / state.layout.columns) - (state.layout.rows - 1) / 2;
      });
      const perMm = cellMm / (areaMm2(state) / cellMm ** 2);
      near(x * perMm, 4, cellMm / 2);
      near(y * perMm, 3, cellMm / 2);
    }
  });

  it('lift takes the whole piece off, add puts another on: on bare ground only', () => {
    const pieces = [squarePiece('p1', 'a', -8, 0, 10), squarePiece('p2', 'b', 8, 0, 10)];
    const lifted = tileOn(planOf(pieces, [{ id: 'l', day: 0, kind: 'lift', piece: 'p1' }]), 0, cellMm);
    expect([areaMm2(lifted, 1), areaMm2(lifted, 2), taken(lifted).cut]).toEqual([0, 100, 100]);
    const piece = squarePiece('p3', 'a', 0, 0, 10);
    const added = tileOn(planOf(pieces, [{ id: 'a', day: 0, kind: 'add', piece }]), 0, cellMm);
    // it overlaps either neighbour by 2 mm
    expect([areaMm2(added), taken(added).lost]).toEqual([200 + 60, 40]);
  });
});

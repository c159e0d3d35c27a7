import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compile } from '../../../src/plan/compile';
import { outlineOf } from '../../../src/plan/outline';
import type { Piece, Plan, Xy } from '../../../src/plan/plan';
import { perDay } from '../../../src/units/quantity';
import { isSimple, signedDistance } from '../../../src/units/polygon';

const RIM_MM_PER_MONTH = 3;

function planOf(piece: Piece, sizeMm = 40): Plan {
  return {
    seambench: 1,
    name: 'one piece',
    tile: { shape: 'square', sizeMm },
    varieties: [{ id: 'a', name: 'a', colour: '#336644', rimMmPerMonth: RIM_MM_PER_MONTH, aggression: 0 }],
    pairs: [],
    pieces: [piece],
    steps: [],
    months: 1,
    settings: { healingDays: 0 },
  };
}

function outlined(outline: Xy[], at: Xy = [0, 0], turnDeg = 0): Piece {
  return { id: 'p', variety: 'a', at, turnDeg, outline };
}

describe('a piece as cells', () => {
  it('holds the cells whose centres are inside, each as old as its distance to the outline, to 3 mm', () => {
    const star = fc
      .array(fc.double({ min: 2, max: 14, noNaN: true }), { minLength: 3, maxLength: 24 })
      .map((radii) =>
        radii.map((radius, k): Xy => {
          const turn = (2 * Math.PI * k) / radii.length;
          return [radius * Math.cos(turn), radius * Math.sin(turn)];
        }),
      )
      .filter(isSimple);
    fc.assert(
      fc.property(star, fc.integer({ min: -180, max: 180 }), (outline, turnDeg) => {
        const piece = outlined(outline, [1.3, -2.1], turnDeg);
        const layout = compile(planOf(piece), 0.5);
        const middle = (layout.columns - 1) / 2;
        for (let i = 0; i < layout.piece.length; i++) {
          if (layout.inside[i] === 0) continue;
          const x = ((i % layout.columns) - middle) * 0.5;
          const y = (Math.floor(i / layout.columns) - middle) * 0.5;
          const distance = signedDistance(outlineOf(piece), [x, y]);
          if (Math.abs(distance) < 1e-9) continue;
          expect(layout.piece[i]).toBe(distance < 0 ? 1 : 0);
          if (distance < 0) {
            expect(layout.startDay[i]).toBeCloseTo(Math.max(-3, distance) / perDay(RIM_MM_PER_MONTH), 4);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('looks at cells near the outline only, so that 2,000 corners on a large tile are quick', () => {
    const outline = Array.from({ length: 2000 }, (_, k): Xy => {
      const turn = (2 * Math.PI * k) / 2000;
      const radius = 120 + 10 * Math.sin(9 * turn);
      return [radius * Math.cos(turn), radius * Math.sin(turn)];
    });
    const layout = compile(planOf(outlined(outline), 300), 0.5);
    const areaMm2 = layout.piece.reduce((sum, piece) => sum + piece, 0) * 0.25;
    // r = R + a sin(9 t): area pi (R R + a a / 2)
    expect(areaMm2 / (Math.PI * (120 * 120 + 50))).toBeCloseTo(1, 3);
  });

  it('keeps a piece that is too small to hold the centre of a cell', () => {
    for (let k = 0; k < 40; k++) {
      const at: Xy = [k * 0.137 - 3, k * 0.311 - 6];
      const disc = compile(planOf({ id: 'p', variety: 'a', at, turnDeg: 0, disc: { diameterMm: 0.5 } }), 0.5);
      expect(disc.piece.includes(1)).toBe(true);
      const h = 0.1;
      const strip = outlined(
        [
          [-h, -5],
          [h, -5],
          [h, 5],
          [-h, 5],
        ],
        at,
      );
      expect(compile(planOf(strip), 0.5).piece.includes(1)).toBe(true);
    }
  });
});

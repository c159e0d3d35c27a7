import { describe, expect, it } from 'vitest';
import { takeCensus } from '../../src/measure/census';
import { cellsInSmallPatches } from '../../src/measure/patches';
import { swirlOf } from '../../src/measure/swirl';
import type { State } from '../../src/model/state';
import { paintedState, type Painting } from '../fixtures/painted-state';

const SIZE = 100;

type Pattern = (x: number, y: number) => number;

function paint(cellMm: number, variety: Pattern, more: Partial<Painting> = {}): State {
  return paintedState({ sizeMm: SIZE, cellMm, varieties: [1, 2, 3], piece: () => 1, variety, ...more });
}

function swirl(cellMm: number, variety: Pattern, more: Partial<Painting> = {}): number | null {
  const state = paint(cellMm, variety, more);
  return swirlOf(state, takeCensus(state));
}

/** The first factor of the swirl by its definition, cell by cell around each mm, two varieties. */
function mixedByDefinition(variety: Pattern): number {
  const at = Array.from({ length: SIZE }, (_, mm) => mm - SIZE / 2 + 0.5);
  const chances = at.flatMap((y0) =>
    at.map((x0) => {
      let second = 0;
      let cells = 0;
      for (let y = y0 - 3.875; y < y0 + 4; y += 0.25)
        for (let x = x0 - 3.875; x < x0 + 4; x += 0.25) {
          if (Math.abs(x) > SIZE / 2 || Math.abs(y) > SIZE / 2) continue;
          cells++;
          if (variety(x, y) === 2) second++;
        }
      return 4 * (second / cells) * (1 - second / cells);
    }),
  );
  return chances.reduce((sum, chance) => sum + chance, 0) / chances.length;
}

/** A fair coin for each square millimetre, the same for every run. */
function coin(a: number, b: number): boolean {
  let h = Math.imul(a + 512, 0x9e3779b1) ^ Math.imul(b + 512, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return ((h ^ (h >>> 15)) & 1) === 1;
}

const halves = (x: number) => (x < 0 ? 1 : 2);
const veins = (x: number) => (Math.floor((x + SIZE / 2) / 4) % 2 === 0 ? 1 : 2);
const speckle = (x: number, y: number) => (coin(Math.floor(x), Math.floor(y)) ? 1 : 2);

describe('swirl', () => {
  it.each([0.25, 0.5])(
    'half and half on 100 mm reads 16/300 at cell %d mm (integral of 4 f (1 - f) over 8 mm)',
    (cellMm) => {
      // f runs from 0 to 1 over the 8 mm square: 8 * 4 / 6 mm of the 100 are mixed. 0.001: sampled each mm
      expect(Math.abs((swirl(cellMm, halves) ?? 0) - 16 / 300)).toBeLessThan(0.001);
    },
  );

  it('veins of 4 mm read near 0.98 (prototype), speckle of 1 mm near 0.89 (prototype; random draw)', () => {
    expect(Math.abs((swirl(0.25, veins) ?? 0) - 0.98)).toBeLessThan(0.01);
    expect(Math.abs((swirl(0.25, speckle) ?? 0) - 0.89)).toBeLessThan(0.03);
  });

  it('cells of 0.25 and 0.5 mm agree within 0.001', () => {
    for (const pattern of [halves, veins, speckle])
      expect(Math.abs((swirl(0.25, pattern) ?? 0) - (swirl(0.5, pattern) ?? 1))).toBeLessThan(0.001);
  });

  it('dots under 6 mm2 are speckle: they lose half of their share, dots over it nothing (definition)', () => {
    const dots = (side: number) => (x: number, y: number) =>
      Math.abs(((x + SIZE / 2) % 10) - 5) < side / 2 && Math.abs(((y + SIZE / 2) % 10) - 5) < side / 2
        ? 2
        : 1;
    // a bridge one cell wide makes one patch of all dots in a row and adds little else
    const bridged = (side: number) => (x: number, y: number) =>
      Math.abs(((y + SIZE / 2) % 10) - 5.1) < 0.13 ? 2 : dots(side)(x, y);
    const speckled = swirl(0.25, dots(2)) ?? 0;
    const small = cellsInSmallPatches(paint(0.25, dots(2)), 6);
    expect(small[1]).toBe((100 * 2 * 2) / 0.25 ** 2);
    expect(cellsInSmallPatches(paint(0.25, dots(3)), 6)[1]).toBe(0);
    expect(cellsInSmallPatches(paint(0.25, bridged(2)), 6)[1]).toBe(0);
    const whole = mixedByDefinition(dots(2));
    expect(Math.abs(speckled - whole * (1 - 4 / 100 / 2))).toBeLessThan(0.002);
  });

  it('weighs colonies by their tissue, scales by each one’s own varieties, and is null without a mixed colony', () => {
    const byHalf = (x: number) => (x < 0 ? 1 : 2);
    const piece = { piece: byHalf, varieties: [1, 2] };
    expect(swirl(0.5, (x) => byHalf(x), piece)).toBeNull();
    // left colony veined, right plain: only the left one counts
    const left = swirl(0.5, (x) => (x < 0 ? veins(x) : 3), { piece: byHalf, varieties: [1, 3] }) ?? 0;
    expect(Math.abs(left - 0.97)).toBeLessThan(0.02);
    // both mixed, one finely and one in halves: the mean by area
    const both =
      swirl(0.5, (x) => (x < 0 ? veins(x) : x < 25 ? 1 : 3), { piece: byHalf, varieties: [1, 3] }) ?? 0;
    expect(Math.abs(both - (left + 32 / 300) / 2)).toBeLessThan(0.005);
  });
});

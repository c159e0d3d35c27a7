import { describe, expect, it } from 'vitest';
import { takeCensus } from '../../src/measure/census';
import { touchingPairOfRow } from '../../src/measure/seam';
import { veinWidthMm } from '../../src/measure/vein-width';
import { FATE } from '../../src/model/seam-table';
import { paintedState } from '../fixtures/painted-state';

const SIZE = 120;

/** A tile of one colony of two varieties, coloured by `second`. */
function width(cellMm: number, second: (x: number, y: number) => boolean): number | null {
  const state = paintedState({
    sizeMm: SIZE,
    cellMm,
    varieties: [1, 2],
    piece: () => 1,
    variety: (x, y) => (second(x, y) ? 2 : 1),
  });
  return veinWidthMm(state, takeCensus(state), touchingPairOfRow(state));
}

/** A fair coin for each square of a lattice, the same for every run. */
function coin(a: number, b: number, salt: number): boolean {
  let h = Math.imul(a + 64, 0x9e3779b1) ^ Math.imul(b + 64, 0x85ebca6b) ^ Math.imul(salt, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return ((h ^ (h >>> 15)) & 1) === 1;
}

// Expected: A / B by arithmetic. Lines along the lattice read 0.98620 of their length; what ends of lines and corners
// read short at one cell is carried on to none (vein-width.ts), so nothing below knows of the cell.
const ALONG = 0.9862;

describe('vein width', () => {
  it.each([0.25, 0.5])('strips read their width at cell %d mm (A / B, exact)', (cellMm) => {
    for (const strip of [4, 6, 10]) {
      const borders = SIZE / strip - 1;
      const exact = (SIZE * SIZE) / (borders * SIZE);
      const read = width(cellMm, (x) => Math.floor((x + SIZE / 2) / strip) % 2 === 1) ?? 0;
      expect(Math.abs(read / exact - 1)).toBeLessThan(0.02);
      expect(read).toBeCloseTo((SIZE * SIZE) / (borders * ALONG * SIZE), 3);
    }
  });

  it('slanted strips read their width within 1.5 % (boundary.ts), less what the tile edge takes', () => {
    const strip = 6;
    const read = width(0.25, (x, y) => Math.floor((0.6 * x + 0.8 * y + 300) / strip) % 2 === 1);
    expect(Math.abs((read ?? 0) / strip - 1)).toBeLessThan(0.025);
  });

  it.each([4, 6, 10])('a chequer of side %d mm reads half its side (A / B, exact)', (side) => {
    const even = (x: number) => Math.floor((x + SIZE / 2) / side);
    const lines = SIZE / side - 1;
    const ideal = SIZE / (2 * lines);
    const read = width(0.25, (x, y) => (even(x) + even(y)) % 2 === 1) ?? 0;
    expect(Math.abs(read / ideal - 1)).toBeLessThan(0.02);
    expect(Math.abs((read * ALONG) / ideal - 1)).toBeLessThan(0.001);
  });

  it('random squares at half share read their side in the mean of 12 draws (arithmetic)', () => {
    const side = 4;
    const square = (x: number) => Math.floor((x + SIZE / 2) / side);
    const draws = Array.from({ length: 12 }, (_, salt) => salt + 1);
    const reads = draws.map((salt) => width(0.25, (x, y) => coin(square(x), square(y), salt)) ?? 0);
    const mean = reads.reduce((sum, read) => sum + read, 0) / reads.length;
    // half of the 2 x 29 x 30 inner sides part colours
    const borders = 29 * 30 * side;
    // 0.02: 1740 coins give the share of parting sides a standard error of 1.2 % a draw, 0.35 % over 12
    expect(Math.abs((mean * ALONG * borders) / (SIZE * SIZE) - 1)).toBeLessThan(0.02);
  });

  it('a disc in another colour: for one colour alone 2 A / P reads d / 2 (circle)', () => {
    const radius = 12;
    const read = width(0.25, (x, y) => x * x + y * y < radius * radius) ?? 0;
    const border = (SIZE * SIZE) / read;
    expect(Math.abs((2 * Math.PI * radius * radius) / border / radius - 1)).toBeLessThan(0.01);
  });

  it('cells of 0.25 and 0.5 mm agree within 1 % on a wavy border', () => {
    const wave = (x: number, y: number) => Math.floor((x + 5 * Math.sin(y / 6) + 300) / 7) % 2 === 1;
    expect(Math.abs((width(0.25, wave) ?? 0) / (width(0.5, wave) ?? 1) - 1)).toBeLessThan(0.01);
  });

  it('is null where no colony holds two varieties, and does not look across a wall', () => {
    const halves = (fate: number, joined: boolean) => {
      const state = paintedState({
        sizeMm: 40,
        cellMm: 0.5,
        varieties: [1, 2],
        piece: (x) => (x < 0 ? 1 : 2),
        joined: joined ? [[1, 2]] : [],
        contact: (_x, y) => ({ fate: y < 0 ? fate : FATE.fused, touchedDay: 10, settledDay: 20 }),
      });
      return veinWidthMm(state, takeCensus(state), touchingPairOfRow(state));
    };
    expect(halves(FATE.ridge, false)).toBeNull();
    const open = halves(FATE.fused, true) ?? 0;
    const halfWalled = halves(FATE.ridge, true) ?? 0;
    expect(open).toBeCloseTo(40 / ALONG, 2);
    expect(Math.abs(halfWalled / (2 * open) - 1)).toBeLessThan(0.03);
  });
});

import { describe, expect, it } from 'vitest';
import { blankGrid, borderMm, type LabelGrid } from '../../src/measure/boundary';

/** A square grid of `sizeMm`, label 1 where `inside` says so, else 2; the border cells stay 0. */
function painted(sizeMm: number, cellMm: number, inside: (x: number, y: number) => boolean): LabelGrid {
  const side = Math.round(sizeMm / cellMm) + 2;
  const grid = blankGrid(side, side, cellMm);
  for (let r = 1; r < side - 1; r++)
    for (let c = 1; c < side - 1; c++) {
      const x = (c - (side - 1) / 2) * cellMm;
      const y = (r - (side - 1) / 2) * cellMm;
      grid.label[r * side + c] = inside(x, y) ? 1 : 2;
    }
  return grid;
}

/** Length read over true length of a line at an angle: the part of it inside a square of 40 mm, two sizes apart. */
function lineRatio(degrees: number, cellMm: number): number {
  const angle = (degrees * Math.PI) / 180;
  const nx = -Math.sin(angle);
  const ny = Math.cos(angle);
  const within = (sizeMm: number): number =>
    borderMm(painted(sizeMm, cellMm, (x, y) => nx * (x - 0.041) + ny * (y + 0.067) < 0));
  const chord = (sizeMm: number): number => sizeMm / Math.max(Math.abs(nx), Math.abs(ny));
  // the difference of two squares: what the ends of the line miss at the tile's edge cancels
  return (within(120) - within(40)) / (chord(120) - chord(40));
}

describe('length of a border (Cauchy-Crofton in 8 directions)', () => {
  it.each([
    [3, 0.25],
    [5, 0.25],
    [20, 0.25],
    [3, 0.5],
    [5, 0.5],
    [20, 0.5],
  ])('disc of %d mm at cell %d mm within 0.6 % over 16 places (Legland et al. 2007)', (radius, cellMm) => {
    const lengths = Array.from({ length: 16 }, (_, at) => {
      const dx = ((at % 4) / 4) * cellMm + 0.013;
      const dy = (Math.floor(at / 4) / 4) * cellMm + 0.029;
      return borderMm(
        painted(2 * radius + 6, cellMm, (x, y) => (x - dx) ** 2 + (y - dy) ** 2 < radius * radius),
      );
    });
    const mean = lengths.reduce((sum, length) => sum + length, 0) / lengths.length;
    expect(Math.abs(mean / (2 * Math.PI * radius) - 1)).toBeLessThan(0.006);
    // one disc of 6 cells radius may read 2 % off by where its centre falls
    for (const length of lengths) expect(Math.abs(length / (2 * Math.PI * radius) - 1)).toBeLessThan(0.02);
  });

  it('tilted lines: 0.98545 to 1.01308 by angle, 0.9997 in the mean (numbers recomputed for 8 directions)', () => {
    const ratios = Array.from({ length: 180 }, (_, degrees) => lineRatio(degrees + 0.5, 0.5));
    const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
    // 0.002: the 80 mm of line that are compared hold 160 cells, so one pair more or less shows
    expect(Math.min(...ratios)).toBeGreaterThan(0.98545 - 0.002);
    expect(Math.max(...ratios)).toBeLessThan(1.01308 + 0.002);
    expect(Math.abs(mean - 0.9997)).toBeLessThan(0.0007);
  });

  it.each([
    [0, 0.9862],
    [22.5, 0.99984],
    [45, 0.98545],
  ])('a line at %d degrees reads %d of its length (same source)', (degrees, expected) => {
    expect(Math.abs(lineRatio(degrees, 0.5) - expected)).toBeLessThan(0.002);
  });

  it('does not see the edge of what is labelled, and adds up over several labels', () => {
    const grid = painted(20, 0.5, () => true);
    expect(borderMm(grid)).toBe(0);
    const halves = borderMm(painted(20, 0.5, (x) => x < 0));
    expect(Math.abs(halves - 20 * 0.9862)).toBeLessThan(0.5);
  });
});

/**
 * The job of the front rows: two varieties spread from a disc each until 60 % of a square lattice is covered.
 * The peers grow it by the plainest rule that makes a front: on each day every empty cell looks at one of its eight
 * neighbours, drawn by lot, and with chance PACE takes over the variety that it finds there. All cells of a day see
 * the lattice of the day before. A lot is a hash of seed, day and cell, so that every program that does the job must
 * come to the same cells, in whatever order it asks them: the bench compares their sums.
 */

/** Cells each way, and as many mm at four cells to a mm. */
export const SIDES = [400, 1200] as const;
export const COVER = 0.6;

/**
 * Chance to take over what was found. Fitted so that a front advances as far in a month as the engine's rim of
 * 3 mm/month on cells of 0.25 mm: 12 cells. The bench prints the speed that it measures for each program.
 */
const PACE = 0.6;

export interface Spread {
  /** Days until COVER was reached. */
  readonly days: number;
  readonly cells: number;
  /** Sum over covered cells of variety times place: equal sums, equal tiles. */
  readonly sum: number;
}

/** One program's way to do the job. */
export type Spreader = (side: number, seed: number) => Spread;

/** Steps to the eight neighbours, by lot: from the upper left round to the left. */
export const STEP_X = [-1, 0, 1, 1, 1, 0, -1, -1] as const;
export const STEP_Y = [-1, -1, -1, 0, 1, 1, 1, 0] as const;

/** What the cell takes over today: 0 to 7 names a neighbour, 8 none. */
export function lot(seed: number, day: number, cell: number): number {
  let h = Math.imul(cell ^ Math.imul(day, 0x9e3779b1) ^ Math.imul(seed, 0x85ebca6b), 0x2c1b3c6d);
  h ^= h >>> 15;
  h = Math.imul(h, 0x297a2d39);
  h ^= h >>> 15;
  return h >>> 3 < PACE * 0x20000000 ? h & 7 : 8;
}

/** Where the two discs lie: a tenth of the side across, a quarter of the side left and right of the middle. */
export function setVariety(side: number, x: number, y: number): 0 | 1 | 2 {
  const reach = side / 20;
  const dy = y + 0.5 - side / 2;
  for (const variety of [1, 2] as const) {
    const dx = x + 0.5 - (variety === 1 ? side / 4 : (3 * side) / 4);
    if (dx * dx + dy * dy <= reach * reach) return variety;
  }
  return 0;
}

export function sumOf(side: number, varietyAt: (x: number, y: number) => number): number {
  let sum = 0;
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) sum = (sum + varietyAt(x, y) * (y * side + x + 1)) % 0x1fffffffffffff;
  }
  return sum;
}

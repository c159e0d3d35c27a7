/** A flat rim that runs along a strip: layouts in cells that no plan can ask for, made from the layout of a small plan. */
import type { Layout } from '../model/layout';
import { compile } from '../plan/compile';
import { DAYS_PER_MONTH } from '../units/quantity';
import { benchPlan, disc } from './bench-tile';

export interface Strip {
  readonly widthCells: number;
  /** Cells that the rim can run. */
  readonly lengthCells: number;
  readonly roughness: number;
  /** Days that it is given. */
  readonly days: number;
}

/**
 * One polyp to a cell of 1 mm on an exact lattice, 1 cell a day before noise; one piece along the first row, whose rim
 * stands at the middle of that row on day 0.
 */
export function stripLayout({ widthCells, lengthCells, roughness, days }: Strip): Layout {
  const base = compile(
    benchPlan({ sizeMm: 20, months: 1, rims: [DAYS_PER_MONTH / 3], pieces: [disc('a', [0, 0], 5)] }),
    1,
  );
  const columns = widthCells + 2;
  const rows = lengthCells + 3;
  const inside = new Uint8Array(columns * rows);
  const piece = new Uint16Array(columns * rows);
  for (let r = 1; r < rows - 1; r++) inside.fill(1, r * columns + 1, (r + 1) * columns - 1);
  piece.fill(1, columns + 1, 2 * columns - 1);
  return {
    ...base,
    columns,
    rows,
    inside,
    piece,
    startDay: new Float32Array(columns * rows),
    rimMmPerDay: Float64Array.of(0, 1),
    rates: { ...base.rates, roughness, polypMm: 1, polypJitter: 0 },
    days,
  };
}

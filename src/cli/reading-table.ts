/** Readings as a table for people: one row a reading, lengths in mm, shares in per cent. */
import type { Reading } from '../measure/reading';
import type { Plan } from '../plan/plan';

interface Column {
  readonly head: string;
  readonly cell: (reading: Reading) => string;
}

function share(part: number, whole: number): string {
  return whole > 0 ? `${Math.round((100 * part) / whole)} %` : '-';
}

function orDash(value: number | null, digits: number): string {
  return value === null ? '-' : value.toFixed(digits);
}

const SEAM_COLUMNS: readonly Column[] = [
  { head: 'seam mm', cell: ({ seam }) => seam.lengthMm.toFixed(1) },
  { head: 'fused', cell: ({ seam }) => share(seam.fusedMm, seam.lengthMm) },
  { head: 'ridge', cell: ({ seam }) => share(seam.ridgeMm, seam.lengthMm) },
  { head: 'lapped', cell: ({ seam }) => share(seam.lappedMm, seam.lengthMm) },
  { head: 'dead', cell: ({ seam }) => share(seam.deadMm, seam.lengthMm) },
  { head: 'undecided', cell: ({ seam }) => share(seam.undecidedMm, seam.lengthMm) },
  { head: 'swirl', cell: ({ swirl }) => orDash(swirl, 2) },
  { head: 'vein mm', cell: ({ veinWidthMm }) => orDash(veinWidthMm, 1) },
  { head: 'ridge mm', cell: ({ ridgeHeightMm }) => orDash(ridgeHeightMm, 1) },
  { head: 'touch day', cell: ({ firstTouchDay }) => orDash(firstTouchDay, 0) },
  { head: 'settled day', cell: ({ settledDay }) => orDash(settledDay, 0) },
];

/** Columns are as wide as their head or this, so that rows can be written as they come. */
const LEAST_WIDTH = 6;

export class ReadingTable {
  readonly #columns: readonly Column[];
  readonly #widths: readonly number[];

  constructor(plan: Plan, seeds: readonly string[]) {
    const shares = plan.varieties.map(({ id, name }) => ({
      head: name === '' ? id : name,
      cell: ({ varieties }: Reading) => `${Math.round(100 * (varieties[id]?.share ?? 0))} %`,
    }));
    this.#columns = [
      { head: 'seed', cell: ({ seed }) => seed },
      { head: 'month', cell: ({ month }) => String(month) },
      { head: 'cover mm2', cell: ({ coverMm2 }) => coverMm2.toFixed(0) },
      ...shares,
      ...SEAM_COLUMNS,
    ];
    const longestSeed = Math.max(...seeds.map((seed) => seed.length));
    this.#widths = this.#columns.map(({ head }, index) =>
      Math.max(index === 0 ? longestSeed : LEAST_WIDTH, head.length),
    );
  }

  head(): string {
    return this.#line(this.#columns.map(({ head }) => head));
  }

  row(reading: Reading): string {
    return this.#line(this.#columns.map(({ cell }) => cell(reading)));
  }

  #line(cells: readonly string[]): string {
    return cells.map((cell, index) => cell.padStart(this.#widths[index])).join('  ');
  }
}

/** What a preset reads at several cells and steps: one table of the report. */
export interface LatticeTable {
  readonly preset: string;
  readonly seeds: number;
  /** Names of the grains, in the order of each row. */
  readonly grains: readonly string[];
  readonly rows: readonly LatticeRow[];
}

export interface LatticeRow {
  readonly measure: string;
  readonly unit: string;
  /** Mean and standard deviation over seeds, by grain. */
  readonly found: readonly { readonly mean: number; readonly spread: number }[];
  readonly shifts: readonly Shift[];
}

export interface Shift {
  readonly words: string;
  /** Mean over seeds of finer less coarser, of the finer's mean; null where that mean is 0. */
  readonly percent: number | null;
  /** The same in standard errors of the difference, seed by seed. */
  readonly errors: number;
  /** Less than 3 % or 2 standard errors. */
  readonly pass: boolean;
}

export function shiftWords({ percent, errors }: Shift): string {
  const share = percent === null ? 'no mean' : `${percent.toFixed(1)} %`;
  return `${share}, ${errors.toFixed(1)} se`;
}

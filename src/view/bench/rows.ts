/** The numbers of a month that two branches are compared by. */
import type { Reading } from '../../measure/reading';
import type { Plan } from '../../plan/plan';

export interface Row {
  readonly name: string;
  readonly unit: string;
  readonly decimals: number;
  readonly pick: (reading: Reading) => number | null;
}

const NONE = '–';

export function rowsOf(plan: Plan): Row[] {
  const seam = (name: string, pick: (of: Reading['seam']) => number): Row => ({
    name,
    unit: 'mm',
    decimals: 0,
    pick: (reading) => pick(reading.seam),
  });
  return [
    { name: 'tissue', unit: 'mm²', decimals: 0, pick: (reading) => reading.coverMm2 },
    ...plan.varieties.map(({ id, name }): Row => ({
      name,
      unit: '% of tissue',
      decimals: 0,
      pick: (reading) => 100 * (reading.varieties[id]?.share ?? 0),
    })),
    seam('fused', (of) => of.fusedMm),
    seam('ridge', (of) => of.ridgeMm),
    seam('lapped', (of) => of.lappedMm),
    seam('dead', (of) => of.deadMm),
    seam('undecided', (of) => of.undecidedMm),
    { name: 'swirl', unit: '0 to 1', decimals: 2, pick: (reading) => reading.swirl },
    { name: 'vein width', unit: 'mm', decimals: 1, pick: (reading) => reading.veinWidthMm },
    { name: 'balance', unit: '0 to 1', decimals: 2, pick: (reading) => reading.balance },
  ];
}

export function valueOf(row: Row, reading: Reading | undefined): string {
  const value = reading ? row.pick(reading) : null;
  return value === null ? NONE : value.toFixed(row.decimals);
}

/** The second less the first, of the numbers as they are and not as they are printed; a dash where one is missing. */
export function differenceOf(row: Row, first: Reading | undefined, second: Reading | undefined): string {
  const [one, other] = [first ? row.pick(first) : null, second ? row.pick(second) : null];
  if (one === null || other === null) return NONE;
  const written = (other - one).toFixed(row.decimals);
  if (Number(written) === 0) return '0';
  return other > one ? `+${written}` : written.replace('-', '−');
}

/** Survival of cuttings by size: a logistic fit of alive on log10(size in mm2) for each group. */
import { logistic, type NoLogistic } from '../stats/logistic';
import { aboveZeroIn, type Fields, readTable, type Table, wordIn, yesIn } from './csv-table';
import { grouped } from './grouped';

export interface Cutting {
  readonly group: string;
  readonly sizeMm2: number;
  readonly alive: boolean;
}

/** On the scale log(p / (1 - p)); slope per tenfold area. Null, with why, where there is no finite number. */
export interface SurvivalFit {
  readonly group: string;
  readonly n: number;
  readonly intercept: number | null;
  readonly slope: number | null;
  readonly seIntercept: number | null;
  readonly seSlope: number | null;
  readonly why?: string;
}

/** Why there is no curve. */
export const WHY: Record<NoLogistic, string> = {
  'one-answer': 'all lived or all died: no size can be told from another',
  'one-number': 'all cuttings have one size',
  separated:
    'some size parts all that lived from all that died, so the slope has no greatest value: try sizes near it',
};

function cuttingIn(fields: Fields): Cutting {
  return {
    group: wordIn(fields, 'group'),
    sizeMm2: aboveZeroIn(fields, 'size_mm2'),
    alive: yesIn(fields, 'alive'),
  };
}

export function survivalTable(text: string): Table<Cutting> {
  return readTable(text, [['group'], ['size_mm2'], ['alive']], cuttingIn);
}

export function survivalFits(cuttings: readonly Cutting[]): SurvivalFit[] {
  return [...grouped(cuttings, ({ group }) => group)].map(([group, own]) => {
    const fit = logistic(own.map(({ sizeMm2, alive }) => ({ x: Math.log10(sizeMm2), yes: alive })));
    const n = own.length;
    if (typeof fit === 'string') {
      return { group, n, intercept: null, slope: null, seIntercept: null, seSlope: null, why: WHY[fit] };
    }
    const { intercept, slope, interceptError, slopeError } = fit;
    return { group, n, intercept, slope, seIntercept: interceptError, seSlope: slopeError };
  });
}

/** Holds a lesson's claim against the engine: the mean over seeds of what it measures, with its standard error. */
import { read } from '../measure/read';
import type { Reading, SeamMm } from '../measure/reading';
import { frameOf } from '../model/frame';
import { grow } from '../model/grow';
import { compile } from '../plan/compile';
import { meanOf, type Mean } from '../stats/intervals';
import { dayOfMonth } from '../units/quantity';
import type { Claim, ClaimRun, Look } from './lesson';

/** As while a piece is dragged: quick, and what a claim says must not hang on it. */
const CELL_MM = 0.5;

export function holdClaim(claim: Claim, seeds: number): Mean {
  const values: number[] = [];
  for (let k = 1; k <= seeds; k++) {
    const value = claim.measure(claim.runs.map((run) => looksAt(run, String(k))));
    if (value !== null) values.push(value);
  }
  return meanOf(values);
}

function looksAt({ plan, months }: ClaimRun, seed: string): Look[] {
  const upTo = { ...plan, months: Math.max(...months) };
  const ids = ['', ...plan.varieties.map((variety) => variety.id)];
  const found: Look[] = [];
  for (const state of grow(compile(upTo, CELL_MM), seed)) {
    const month = months.find((wanted) => dayOfMonth(wanted) === state.day);
    if (month !== undefined)
      found.push({ reading: read(state, ids, seed, month), frame: frameOf(state, month) });
  }
  return found;
}

type FateMm = Exclude<keyof SeamMm, 'lengthMm'>;

/** Share of a seam that came to one outcome, 0 where there is no seam. */
export function shareOf(seam: SeamMm, fate: FateMm): number {
  return seam.lengthMm > 0 ? seam[fate] / seam.lengthMm : 0;
}

/** The same of one pair of a tile. */
export function pairShare({ pairs }: Reading, a: string, b: string, fate: FateMm): number {
  const pair = pairs.find((one) => (one.a === a && one.b === b) || (one.a === b && one.b === a));
  return pair ? shareOf(pair, fate) : 0;
}

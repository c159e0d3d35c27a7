/**
 * First touch and the day by which the seam has settled, in days since day 0.
 * First touch: least day of contact between pieces of unlike variety up to today; null while none has touched.
 * Settled: least day by which 95 % of today's seam length has its verdict; null while less of it has one. It may move
 * as the seam grows. 95 % is judgement: the last stretch of a growing seam is always young.
 * Known bias: none of its own; days of contact are as exact as the engine's arrival times.
 */
import { FATE } from '../model/seam-table';
import type { State } from '../model/state';

const SETTLED_SHARE = 0.95;

/** Rows that left the seam count too if they had a verdict: a lapped border moves away from where it first met. */
export function firstTouchDay(state: State): number | null {
  const { seam, day } = state;
  let first = Number.POSITIVE_INFINITY;
  for (let row = 1; row < seam.count; row++) {
    const touchedHere = seam.cell[row] >= 0 || seam.fate[row] > FATE.undecided;
    if (touchedHere && seam.touched[row] <= day && seam.touched[row] < first) first = seam.touched[row];
  }
  return Number.isFinite(first) ? first : null;
}

export function settledDay(state: State, lengthOfRow: Float64Array): number | null {
  const { seam } = state;
  const decided: number[] = [];
  let total = 0;
  for (let row = 1; row < lengthOfRow.length; row++) {
    total += lengthOfRow[row];
    if (lengthOfRow[row] > 0 && seam.fate[row] > FATE.undecided) decided.push(row);
  }
  decided.sort((a, b) => seam.settled[a] - seam.settled[b]);
  let sum = 0;
  for (const row of decided) {
    sum += lengthOfRow[row];
    if (sum >= SETTLED_SHARE * total) return seam.settled[row];
  }
  return null;
}

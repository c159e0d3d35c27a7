/**
 * Ridge height, mm: mean over ridge contacts weighted by their length, and the greatest.
 * Definition: a contact's height is a function of the days since its verdict, model/ridge.ts, also while a veil lies over
 * it in the picture: readings count what is, not what shows. Null without a ridge.
 * Source: the engine's rule S3 (judgement: nobody has measured the rise of a ridge). No bias of its own.
 */
import { ridgeHeightMm } from '../model/ridge';
import { FATE } from '../model/seam-table';
import type { State } from '../model/state';

export interface RidgeHeight {
  readonly meanMm: number | null;
  readonly maxMm: number | null;
}

export function ridgeHeights(state: State, lengthOfRow: Float64Array): RidgeHeight {
  const { seam, day, layout } = state;
  let length = 0;
  let sum = 0;
  let maxMm = 0;
  for (let row = 1; row < lengthOfRow.length; row++) {
    if (seam.fate[row] !== FATE.ridge || lengthOfRow[row] === 0) continue;
    const height = ridgeHeightMm(day - seam.settled[row], layout.rates);
    length += lengthOfRow[row];
    sum += lengthOfRow[row] * height;
    maxMm = Math.max(maxMm, height);
  }
  return length > 0 ? { meanMm: sum / length, maxMm } : { meanMm: null, maxMm: null };
}

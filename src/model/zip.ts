/**
 * The queue of verdicts under way along the seams: a binary heap by (day, cell, nucleus), so that the outcome does not
 * depend on the order in which verdicts were queued.
 */
import { doubleColumns } from './cell-list';

export interface Zip {
  count: number;
  day: Float64Array;
  cell: Int32Array;
  nucleus: Int32Array;
}

export function createZip(): Zip {
  return { count: 0, day: new Float64Array(256), cell: new Int32Array(256), nucleus: new Int32Array(256) };
}

function before(zip: Zip, i: number, j: number): boolean {
  if (zip.day[i] !== zip.day[j]) return zip.day[i] < zip.day[j];
  if (zip.cell[i] !== zip.cell[j]) return zip.cell[i] < zip.cell[j];
  return zip.nucleus[i] < zip.nucleus[j];
}

function swap(zip: Zip, i: number, j: number): void {
  const { day, cell, nucleus } = zip;
  const d = day[i];
  day[i] = day[j];
  day[j] = d;
  const c = cell[i];
  cell[i] = cell[j];
  cell[j] = c;
  const n = nucleus[i];
  nucleus[i] = nucleus[j];
  nucleus[j] = n;
}

export function queue(zip: Zip, day: number, cell: number, nucleus: number): void {
  if (zip.count === zip.day.length) doubleColumns(zip);
  let k = zip.count++;
  zip.day[k] = day;
  zip.cell[k] = cell;
  zip.nucleus[k] = nucleus;
  while (k > 0) {
    const up = (k - 1) >> 1;
    if (!before(zip, k, up)) break;
    swap(zip, k, up);
    k = up;
  }
}

/** Drops the first entry. */
export function dequeue(zip: Zip): void {
  const last = --zip.count;
  if (last === 0) return;
  zip.day[0] = zip.day[last];
  zip.cell[0] = zip.cell[last];
  zip.nucleus[0] = zip.nucleus[last];
  for (let k = 0; ;) {
    const left = 2 * k + 1;
    if (left >= last) break;
    const least = left + 1 < last && before(zip, left + 1, left) ? left + 1 : left;
    if (!before(zip, least, k)) break;
    swap(zip, k, least);
    k = least;
  }
}

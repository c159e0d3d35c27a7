/**
 * The layers of a tile: what lies beneath tissue that lapped over other tissue.
 *
 * A cell holds skeleton in layers, and tissue lives on the topmost alone. State's dense arrays tell of that layer: its
 * variety, whose rim it is, and since when. A layer comes to lie beneath in one way only: lapping covers it (lap.ts).
 * Then its tissue dies, its skeleton stays as thick as it was on that day, and one entry is written here: which cell,
 * which variety, since when it had stood there and on which day it was covered. A cell that is covered twice has two
 * entries, the lower one first. Few cells are ever covered, so the log is sparse: 13 bytes an entry.
 *
 * How thick a layer is, is not state but a function of these days: layersOf in frame.ts.
 * Bare skeleton is never lapped, so what lies beneath always died by being covered.
 */
import { doubleColumns } from './cell-list';

/** Entries in the order in which they came: by day, then by cell; of one cell always the lower layer first. */
export interface CoveredLog {
  count: number;
  cell: Int32Array;
  variety: Uint8Array;
  /** Day on which the covered tissue had come. */
  since: Float32Array;
  /** Day on which it was covered. */
  day: Float32Array;
}

export function createCovered(): CoveredLog {
  const size = 64;
  return {
    count: 0,
    cell: new Int32Array(size),
    variety: new Uint8Array(size),
    since: new Float32Array(size),
    day: new Float32Array(size),
  };
}

export function addCovered(log: CoveredLog, cell: number, variety: number, since: number, day: number): void {
  if (log.count === log.cell.length) doubleColumns(log);
  const k = log.count++;
  log.cell[k] = cell;
  log.variety[k] = variety;
  log.since[k] = since;
  log.day[k] = day;
}

/** Numbers of the entries by cell, and of one cell from the lowest layer up. */
export function byCell({ cell, count }: CoveredLog): Uint32Array {
  // cell and number in one key: sorting numbers is ten times as fast as sorting by a comparison
  const keys = new Float64Array(count);
  for (let k = 0; k < count; k++) keys[k] = cell[k] * count + k;
  keys.sort();
  const order = new Uint32Array(count);
  for (let at = 0; at < count; at++) order[at] = keys[at] - count * Math.floor(keys[at] / count);
  return order;
}

/**
 * What lies beneath goes along with what lies on it: `from` names for each cell the cell its tissue came from, itself
 * where it stayed. Layers under cells that hold no lapping tissue any more are forgotten; resampled tissue may bring
 * its layers twice.
 */
export function carried(old: CoveredLog, from: Int32Array, isLapped: (cell: number) => boolean): CoveredLog {
  if (old.count === 0) return old;
  const order = byCell(old);
  const first = new Map<number, number>();
  order.forEach((k, at) => {
    if (!first.has(old.cell[k])) first.set(old.cell[k], at);
  });
  const log = createCovered();
  for (let i = 0; i < from.length; i++) {
    const start = first.get(from[i]);
    if (start === undefined || !isLapped(i)) continue;
    for (let at = start; at < order.length && old.cell[order[at]] === from[i]; at++) {
      const k = order[at];
      addCovered(log, i, old.variety[k], old.since[k], old.day[k]);
    }
  }
  return log;
}

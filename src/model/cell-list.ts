/** A growing list of cell indices: nothing is allocated while it is long enough. */
export interface CellList {
  cell: Int32Array;
  count: number;
}

export function createList(size = 1024): CellList {
  return { cell: new Int32Array(size), count: 0 };
}

export function push(list: CellList, cell: number): void {
  if (list.count === list.cell.length) {
    const more = new Int32Array(list.count * 2);
    more.set(list.cell);
    list.cell = more;
  }
  list.cell[list.count++] = cell;
}

/** Sorts by index and drops repeats: what follows does not depend on the order in which cells were found. */
export function sortUnique(list: CellList): void {
  const { cell } = list;
  cell.subarray(0, list.count).sort();
  let kept = 0;
  for (let k = 0; k < list.count; k++) if (k === 0 || cell[k] !== cell[k - 1]) cell[kept++] = cell[k];
  list.count = kept;
}

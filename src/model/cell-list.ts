/** A copy of twice the length. */
export function doubled<T extends Int32Array | Uint16Array | Float32Array | Float64Array | Uint8Array>(
  from: T,
): T {
  const to = new (from.constructor as new (length: number) => T)(from.length * 2);
  to.set(from);
  return to;
}

/** Room for twice as many rows: every typed array of a table of columns is doubled. */
export function doubleColumns(table: object): void {
  for (const [name, column] of Object.entries(table))
    if (ArrayBuffer.isView(column)) Object.assign(table, { [name]: doubled(column as Int32Array) });
}

/** A growing list of cell indices: nothing is allocated while it is long enough. */
export interface CellList {
  cell: Int32Array;
  count: number;
}

export function createList(size = 1024): CellList {
  return { cell: new Int32Array(size), count: 0 };
}

export function push(list: CellList, cell: number): void {
  if (list.count === list.cell.length) list.cell = doubled(list.cell);
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

/** 1 for each cell that the test holds for. (`from` with a mapping takes ten times as long on a tile.) */
export function marked(cells: number, test: (cell: number) => boolean): Uint8Array {
  const marks = new Uint8Array(cells);
  for (let i = 0; i < cells; i++) if (test(i)) marks[i] = 1;
  return marks;
}

/** Every cell its own number. */
export function ownPlaces(cells: number): Int32Array {
  const places = new Int32Array(cells);
  for (let i = 0; i < cells; i++) places[i] = i;
  return places;
}

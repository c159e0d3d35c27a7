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

/** Visits, in order, the places of `bytes` where one of `bits` is set. Four at a time are passed over: most have none. */
export function forMarked(bytes: Uint8Array, bits: number, visit: (place: number) => void): void {
  const words = new Int32Array(bytes.buffer, 0, bytes.length >> 2);
  const mask = Math.imul(bits, 0x01010101);
  for (let w = 0; w < words.length; w++) {
    if ((words[w] & mask) === 0) continue;
    for (let i = 4 * w; i < 4 * w + 4; i++) if ((bytes[i] & bits) !== 0) visit(i);
  }
  for (let i = 4 * words.length; i < bytes.length; i++) if ((bytes[i] & bits) !== 0) visit(i);
}

/** Every cell its own number. */
export function ownPlaces(cells: number): Int32Array {
  const places = new Int32Array(cells);
  for (let i = 0; i < cells; i++) places[i] = i;
  return places;
}

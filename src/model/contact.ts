/**
 * First touch: rows of the seam table where tissue of one piece meets that of another.
 * Two pieces of one variety join at once and make no seam. A row's pair is that of its origins, never of the colours
 * that its cells hold at present: colours wander in a fused colony, seams do not.
 */
import { AXIS_X, AXIS_Y } from './front';
import { isKin } from './pieces';
import { addNucleus, addRow, FATE, type SeamTable } from './seam-table';
import { BARE, FLAG, joinColonies, type State } from './state';
import { queue } from './zip';

/** How far behind a cut the cells lie that meet what comes over it, cells. */
const EDGE_CELLS = 1.5;

/** Registers the contacts of cells that have just been filled; those that touch a stranger in order of cell index. */
export function meet(state: State, cells: Int32Array, count: number): void {
  const touching = touchingOther(state, cells, count);
  if (touching.length === 0) return;
  const { origin, variety, layout } = state;
  const { columns } = layout;
  const varietyOf = state.pieces.variety;
  for (const cell of touching.sort((a, b) => a - b)) {
    const own = origin[cell];
    for (let axis = 0; axis < 4; axis++) {
      const j = cell + AXIS_X[axis] + AXIS_Y[axis] * columns;
      const other = origin[j];
      if (other === 0 || other === own || variety[j] === BARE) continue;
      if (varietyOf[other] === varietyOf[own]) {
        joinColonies(state, own, other);
        continue;
      }
      openRow(state, cell);
      openRow(state, j);
    }
  }
}

/** Those of the cells that lie beside another piece. By itself, so that what is seldom met is not compiled with it. */
function touchingOther({ origin, ring }: State, cells: Int32Array, count: number): number[] {
  const touching: number[] = [];
  for (let k = 0; k < count; k++) {
    const cell = cells[k];
    const own = origin[cell];
    for (let axis = 0; axis < 8; axis += 2) {
      const other = origin[cell + ring[axis]];
      if (other === 0 || other === own) continue;
      touching.push(cell);
      break;
    }
  }
  return touching;
}

/** Gives a cell its row if it lies on a seam and has none. */
export function openRow(state: State, cell: number): void {
  if (state.row[cell] !== 0) return;
  const partner = partnerOf(state, cell);
  if (partner < 0) return;
  const { origin, seam } = state;
  const own = origin[cell];
  const other = origin[partner];
  const touched = Math.max(readySince(state, cell), readySince(state, partner));
  const r = addRow(seam, cell, partner, own, other, touched);
  state.row[cell] = r;
  state.open.push(r);
  if (isKin(state.pieces, own, other))
    queue(state.zip, touched, cell, kinNucleus(state, own, other, touched));
  // a verdict already standing beside the new contact runs on into it
  forNeighbours(state, r, (n) => {
    if (seam.nucleus[n] >= 0) queueFrom(state, n, r);
  });
  runOnOverBare(state, r);
}

/** A dead seam bares the tissue ahead of it: its verdict runs on over that gap to where the two touch next. */
function runOnOverBare(state: State, r: number): void {
  const { seam, row, layout } = state;
  const { columns, rows, cellMm, rates } = layout;
  const reachMm = rates.stingMm + 2 * cellMm;
  const reach = Math.ceil(reachMm / cellMm);
  const column = seam.cell[r] % columns;
  const line = (seam.cell[r] - column) / columns;
  const right = Math.min(columns - 1, column + reach);
  const bottom = Math.min(rows - 1, line + reach);
  for (let y = Math.max(0, line - reach); y <= bottom; y++) {
    for (let x = Math.max(0, column - reach); x <= right; x++) {
      const n = row[y * columns + x];
      if (n === 0 || seam.fate[n] !== FATE.dead || !areOfOnePair(seam, n, r)) continue;
      if (apartMm(state, n, r) <= reachMm) queueFrom(state, n, r);
    }
  }
}

/** Day from which the tissue of a cell can join: it is there, and the cut behind which it stands has healed. */
function readySince({ arrival, origin, variety, flags, pieces, layout }: State, cell: number): number {
  const since = arrival[cell];
  const healed = pieces.healedDay[origin[cell]];
  if (since <= healed) return healed;
  if ((flags[cell] & FLAG.set) === 0) return since;
  // behind the cut of a step the rim is said to have stood a little earlier, by the depth over its rate
  const latest = since + (EDGE_CELLS * layout.cellMm) / layout.rimMmPerDay[variety[cell]];
  for (const { day } of layout.cuts) {
    const heals = day + layout.rates.healingDays;
    if (heals >= since && heals <= latest) return heals;
  }
  return since;
}

/** Parted pieces of one colony rejoin where they meet, without a coin: one verdict for the two. */
function kinNucleus(state: State, own: number, other: number, day: number): number {
  const pair = Math.min(own, other) * 65536 + Math.max(own, other);
  const known = state.kinNuclei.get(pair);
  if (known !== undefined) return known;
  const made = addNucleus(state.nuclei, day, FATE.fused, own, other);
  state.kinNuclei.set(pair, made);
  return made;
}

export function closeRow(state: State, cell: number): void {
  const r = state.row[cell];
  if (r === 0) return;
  state.seam.cell[r] = -1;
  state.row[cell] = 0;
}

/** The living cell across the seam: least arrival, then least index; -1 where the cell is on no seam. */
export function partnerOf(state: State, cell: number): number {
  const { arrival, origin, variety, layout } = state;
  const varietyOf = state.pieces.variety;
  const own = origin[cell];
  let partner = -1;
  for (let axis = 0; axis < 4; axis++) {
    const j = cell + AXIS_X[axis] + AXIS_Y[axis] * layout.columns;
    const other = origin[j];
    if (other === 0 || other === own || varietyOf[other] === varietyOf[own]) continue;
    if (variety[j] === BARE) continue;
    if (partner < 0 || arrival[j] < arrival[partner] || (arrival[j] === arrival[partner] && j < partner))
      partner = j;
  }
  return partner;
}

/** Queues the spread of row `from`'s verdict to row `to`, if that is still open. `since`: day from which it runs. */
export function queueFrom(state: State, from: number, to: number, since = state.seam.settled[from]): void {
  const { seam, layout } = state;
  if (seam.fate[to] !== FATE.undecided) return;
  const day = Math.max(seam.touched[to], since + apartMm(state, from, to) / layout.rates.zipMmPerDay);
  queue(state.zip, day, seam.cell[to], seam.nucleus[from]);
}

/** Distance between the mid-points of two contacts, mm: along the seam, never free across it. */
function apartMm(state: State, a: number, b: number): number {
  const { seam, layout } = state;
  const { columns, cellMm } = layout;
  const [cellA, acrossA, cellB, acrossB] = [seam.cell[a], seam.partner[a], seam.cell[b], seam.partner[b]];
  const dx = ((cellA % columns) + (acrossA % columns) - (cellB % columns) - (acrossB % columns)) / 2;
  const dy =
    (Math.floor(cellA / columns) +
      Math.floor(acrossA / columns) -
      Math.floor(cellB / columns) -
      Math.floor(acrossB / columns)) /
    2;
  return Math.sqrt(dx * dx + dy * dy) * cellMm;
}

/** Calls `visit` with each row of the same pair of origins among the eight cells around row `r`. */
export function forNeighbours(state: State, r: number, visit: (row: number) => void): void {
  const { seam, row, layout } = state;
  const { columns } = layout;
  const cell = seam.cell[r];
  for (let dy = -columns; dy <= columns; dy += columns) {
    for (let dx = -1; dx <= 1; dx++) {
      const n = row[cell + dy + dx];
      if (n !== 0 && n !== r && areOfOnePair(seam, n, r)) visit(n);
    }
  }
}

function areOfOnePair({ own, other }: SeamTable, a: number, b: number): boolean {
  return (own[a] === own[b] && other[a] === other[b]) || (own[a] === other[b] && other[a] === own[b]);
}

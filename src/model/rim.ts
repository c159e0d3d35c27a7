/** One day of growth by rule G, in sub-steps so short that the fastest rim crosses less than one cell in each. */
import { openDay, refile } from './calendar';
import { forMarked, push } from './cell-list';
import { meet } from './contact';
import { daysPerCell, parentOf, polypOf, toSite, workOutDue } from './front';
import { inherit } from './inherit';
import { reconsider } from './lap';
import { FATE } from './seam-table';
import { FLAG, type State } from './state';
import { bringAround, markStale } from './wake';

/** sqrt(3): a uniform draw of unit standard deviation reaches so far. */
const REACH = 1.7321;

/** How a day is cut: days per cell by variety, and sub-steps. */
export interface Pace {
  readonly cellDays: Float64Array;
  /** Of the fastest variety. */
  readonly leastCellDays: number;
  readonly subSteps: number;
}

export function paceOf(state: State): Pace {
  const cellDays = daysPerCell(state);
  const fastest = 1 - REACH * state.layout.rates.roughness;
  let subSteps = 1;
  for (let v = 1; v <= state.layout.varieties; v++) {
    subSteps = Math.max(subSteps, Math.ceil(1 / (0.9 * cellDays[v] * fastest)));
  }
  return { cellDays, leastCellDays: Math.min(...cellDays), subSteps };
}

export function growDay(state: State, pace: Pace): void {
  const { growing } = state;
  openDay(growing, state.day);
  for (let q = 1; q <= pace.subSteps; q++) {
    refreshDue(state, pace);
    takeDue(state, q === pace.subSteps ? state.day + 1 : state.day + q / pace.subSteps);
    fill(state, growing.taken.cell, growing.taken.count, pace.cellDays);
  }
}

function refreshDue(state: State, { cellDays, leastCellDays }: Pace): void {
  const { growing, due, variety, flags, day } = state;
  if (state.joined) {
    // one colony where there were two: neighbours that could not be combined now can
    state.joined = false;
    forMarked(flags, FLAG.edge, (i) => {
      if (variety[i] === 0 && (flags[i] & FLAG.stale) === 0) markStale(state, i);
    });
  }
  const { stale, taken } = growing;
  bringAround(state, taken.cell, taken.count, cellDays, leastCellDays);
  taken.count = 0;
  for (let k = 0; k < stale.count; k++) {
    const i = stale.cell[k];
    flags[i] &= ~FLAG.stale;
    if (variety[i] !== 0) continue;
    const old = due[i];
    workOutDue(state, i, cellDays);
    refile(growing, i, old, due[i], day);
  }
  stale.count = 0;
}

function takeDue(state: State, end: number): void {
  const { growing, due, variety, flags } = state;
  const { today, taken } = growing;
  for (let k = 0; k < today.count; k++) {
    const i = today.cell[k];
    if (variety[i] !== 0 || due[i] > end || (flags[i] & FLAG.taken) !== 0) continue;
    flags[i] |= FLAG.taken;
    push(taken, i);
  }
}

/** Fills the cells, in whatever order they come: births first, from the old state, then the cells, then their contacts. */
export function fill(state: State, cells: Int32Array, count: number, cellDays: Float64Array): void {
  const { arrival, due, origin, variety, row, colony, seam, polyps, flags } = state;
  bear(state, cells, count, cellDays);
  for (let k = 0; k < count; k++) {
    const i = cells[k];
    const parent = parentOf(state, i);
    const p = polypOf(state, i);
    const own = origin[parent];
    // colours may not leak round a wall: a polyp of another origin counts only across a fused contact
    const passes =
      polyps.origin[p] === own ||
      (colony[polyps.origin[p]] === colony[own] &&
        row[parent] !== 0 &&
        seam.fate[row[parent]] === FATE.fused);
    variety[i] = passes ? polyps.variety[p] : variety[parent];
    origin[i] = own;
    arrival[i] = due[i];
    due[i] = Infinity;
    flags[i] &= ~FLAG.taken;
  }
  meet(state, cells, count);
  // new tissue may have come beside tissue that laps
  if (state.lapPairs.size > 0) for (let k = 0; k < count; k++) reconsider(state, cells[k], 0);
}

/** Each unborn polyp is claimed by its earliest cell; ties by distance to the site, else borders drift. */
function bear(state: State, cells: Int32Array, count: number, cellDays: Float64Array): void {
  const { due, origin, polyps } = state;
  const { claim } = polyps;
  const claimed: number[] = [];
  for (let k = 0; k < count; k++) {
    const i = cells[k];
    const p = polypOf(state, i);
    if (polyps.variety[p] !== 0) continue;
    const holder = claim[p] - 1;
    if (holder < 0) claimed.push(p);
    else if (due[i] > due[holder]) continue;
    else if (due[i] === due[holder] && !isNearer(state, i, holder, p)) continue;
    claim[p] = i + 1;
  }
  const taken = claimed.map((p) => {
    const cell = claim[p] - 1;
    return inherit(state, p, cell, parentOf(state, cell), cellDays);
  });
  claimed.forEach((p, k) => {
    const cell = claim[p] - 1;
    claim[p] = 0;
    polyps.variety[p] = taken[k];
    polyps.origin[p] = origin[parentOf(state, cell)];
  });
}

function isNearer(state: State, cell: number, other: number, p: number): boolean {
  const [here, there] = [toSite(state, cell, p), toSite(state, other, p)];
  return here === there ? cell < other : here < there;
}

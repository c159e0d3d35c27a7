/**
 * Rule G: the day on which tissue reaches a cell, from its eight neighbours.
 *
 * First-order solution of |grad T| = slowness on the eight-neighbour stencil (Tsitsiklis 1995, IEEE Trans. Autom.
 * Control 40: 1528-1538). For each of the eight triangles of an axis neighbour a and a diagonal neighbour d of one
 * colony, e = T(a) - T(d) and s = days per cell:
 *   e <= 0: T(a) + s;   0 < e < s/sqrt2: T(a) + sqrt(s*s - e*e);   else T(d) + s*sqrt2.
 * Colonies are never combined. The parent, whose origin and colour the cell inherits, is the nearer of a and d to the
 * foot of the ray. First-order error: rim rate within 1 % in every direction (src/checks/fronts.ts).
 *
 * `via` packs who gave T: bits 0-1 the axis direction (E, S, W, N), bit 2 the side on which the diagonal lies,
 * bit 3 the parent is the diagonal, bit 4 both count (the ray comes from between them).
 */
import { draw } from './noise';
import { fillBox } from './polyps';
import { BARE, FLAG, type State } from './state';

export const AXIS_X = [1, 0, -1, 0];
export const AXIS_Y = [0, 1, 0, -1];

export const SIDE = 4;
export const DIAGONAL = 8;
export const BETWEEN = 16;

/** Whatever the triangle, a cell's day is at least that of each neighbour it uses + s/sqrt2; a little less, for rounding. */
export const NEAREST = 0.707;
/** As much of a diagonal neighbour, whose triangles bring it a whole s or more. */
export const NEAREST_DIAGONAL = 0.9999;

/** A step from a diagonal neighbour alone: the only one that other cells can bar. */
export function isLoneDiagonal(via: number): boolean {
  return (via & (DIAGONAL | BETWEEN)) === DIAGONAL;
}

/** Place on State.ring of the parent that each `via` names. */
const PARENT = Uint8Array.from({ length: 32 }, (_, via) => {
  const axis = 2 * (via & 3);
  if ((via & DIAGONAL) === 0) return axis;
  return (axis + ((via & SIDE) === 0 ? 1 : 7)) & 7;
});

/** The neighbour that gave the cell its due day. */
export function parentOf(state: State, cell: number): number {
  return cell + state.ring[PARENT[state.via[cell]]];
}

/** The polyp that a cell belongs to; looked up once for all cells of its lattice box. */
export function polypOf(state: State, cell: number): number {
  const known = state.polyp[cell];
  if (known > 0) return known - 1;
  const { columns, rows, cellMm } = state.layout;
  fillBox(state.polyps, state.polyp, columns, rows, cellMm, cell);
  return state.polyp[cell] - 1;
}

/** Squared distance of a cell's centre to a polyp's site, mm2. */
export function toSite(state: State, cell: number, p: number): number {
  const { columns, rows, cellMm } = state.layout;
  const dx = ((cell % columns) - (columns - 1) / 2) * cellMm - state.polyps.xMm[p];
  const dy = (Math.floor(cell / columns) - (rows - 1) / 2) * cellMm - state.polyps.yMm[p];
  return dx * dx + dy * dy;
}

/**
 * Noise makes rims faster, for the front takes the quick paths: about sigma^(4/3) (Krug & Meakin 1990,
 * J. Phys. A 23: L987, weak-disorder scaling). The factor divides the gain out; measured on the prototype after
 * 12 to 24 mm. Rows: roughness; columns: cell / polyp spacing 0.25, 0.5, 1. Linear between.
 */
const GAIN_ROUGHNESS = [0, 0.05, 0.1, 0.15, 0.2, 0.3];
const GAIN = [
  [1, 1.01, 1.037, 1.075, 1.122, 1.252],
  [1, 1.006, 1.029, 1.063, 1.108, 1.232],
  [1, 1, 1.018, 1.047, 1.087, 1.205],
];

export function roughnessGain(roughness: number, cellPerPolyp: number): number {
  let k = 0;
  while (k < GAIN_ROUGHNESS.length - 2 && roughness > GAIN_ROUGHNESS[k + 1]) k++;
  const f = (roughness - GAIN_ROUGHNESS[k]) / (GAIN_ROUGHNESS[k + 1] - GAIN_ROUGHNESS[k]);
  const at = (row: number): number => GAIN[row][k] + f * (GAIN[row][k + 1] - GAIN[row][k]);
  if (cellPerPolyp >= 0.5) {
    const g = Math.min(1, (cellPerPolyp - 0.5) / 0.5);
    return at(1) + g * (at(2) - at(1));
  }
  const g = Math.max(0, (cellPerPolyp - 0.25) / 0.25);
  return at(0) + g * (at(1) - at(0));
}

/** Days per cell by variety for a polyp of mean slowness; index 0 unused. */
export function daysPerCell(state: State): Float64Array {
  const { layout } = state;
  const gain = roughnessGain(layout.rates.roughness, layout.cellMm / layout.rates.polypMm);
  return Float64Array.from(layout.rimMmPerDay, (rate, v) =>
    v === 0 ? Infinity : (gain * layout.cellMm) / rate,
  );
}

/** Works out `due` and `via` of one empty cell anew, from all its neighbours. */
export function workOutDue(state: State, cell: number, cellDays: Float64Array): void {
  const { variety, arrival, ring, due, via } = state;
  const slow = state.polyps.slowness[polypOf(state, cell)];
  due[cell] = Infinity;
  via[cell] = 0;
  for (let k = 0; k < 8; k++) {
    const n = cell + ring[k];
    const v = variety[n];
    if (v === 0 || v === BARE) continue;
    const s = slow * cellDays[v];
    if (Math.fround(arrival[n] + NEAREST * s) > due[cell]) continue;
    if ((k & 1) === 1) offerDiagonal(state, cell, k, n, s);
    else offerAxis(state, cell, k, n, slow, cellDays);
  }
  // a colour that turned to a faster one behind the rim would have been here long ago: it starts from yesterday on
  if (due[cell] < state.day - 1) due[cell] = state.day - 1;
}

/** A step from the axis neighbour n at place k of the ring, alone and with each of the two diagonal ones beside it. */
function offerAxis(
  state: State,
  cell: number,
  k: number,
  n: number,
  slow: number,
  cellDays: Float64Array,
): void {
  offer(state, cell, Math.fround(state.arrival[n] + slow * cellDays[state.variety[n]]), k >> 1, n);
  offerBetween(state, cell, k, 0, slow, cellDays);
  offerBetween(state, cell, k, SIDE, slow, cellDays);
}

/** A step from the diagonal neighbour alone. */
function offerDiagonal(state: State, cell: number, k: number, n: number, s: number): void {
  const { ring, due } = state;
  const t = Math.fround(state.arrival[n] + s * Math.SQRT2);
  if (t > due[cell] || pinched(state, n, cell + ring[k - 1], cell + ring[(k + 1) & 7])) return;
  offer(state, cell, t, ((k - 1) >> 1) | DIAGONAL, n);
}

/** The triangle of the axis neighbour at place k of the ring and the diagonal one on the given side of it. */
function offerBetween(
  state: State,
  cell: number,
  k: number,
  side: number,
  slow: number,
  cellDays: Float64Array,
): void {
  const { ring, variety, arrival, origin, colony, due } = state;
  const a = cell + ring[k];
  const d = cell + ring[(k + (side === 0 ? 1 : 7)) & 7];
  const v = variety[a];
  const vd = variety[d];
  if (v === 0 || vd === 0 || v === BARE || vd === BARE) return;
  const t = arrival[a];
  const e = t - arrival[d];
  const s = slow * cellDays[v];
  if (e <= 0 || e >= s * Math.SQRT1_2) return;
  const back = Math.sqrt(s * s - e * e);
  const then = Math.fround(t + back);
  if (then > due[cell]) return;
  if (origin[a] !== origin[d] && colony[origin[a]] !== colony[origin[d]]) return;
  // the foot of the ray lies e / back of the way from the axis neighbour to the diagonal one
  const isDiagonal = 2 * e > back;
  offer(state, cell, then, (k >> 1) | side | (isDiagonal ? DIAGONAL : 0) | BETWEEN, isDiagonal ? d : a);
}

/** Keeps a day, in 32 bits as `due` holds it, if it is the earlier. Who offers first makes no difference. */
export function offer(state: State, cell: number, t: number, via: number, parent: number): void {
  const best = state.due[cell];
  if (t > best || (t === best && !wins(state, cell, parent, via))) return;
  state.due[cell] = t;
  state.via[cell] = via;
}

/** A diagonal step may not pass between two cells that both bar it: other colonies, bare skeleton, the tile's edge. */
export function pinched(state: State, d: number, flankA: number, flankB: number): boolean {
  return bars(state, flankA, d) && bars(state, flankB, d);
}

function bars(state: State, cell: number, d: number): boolean {
  const v = state.variety[cell];
  if (v === 0) return (state.flags[cell] & FLAG.inside) === 0;
  return v === BARE || state.colony[state.origin[cell]] !== state.colony[state.origin[d]];
}

/** Equal days: the earlier neighbour, then by lot of the polyp among origins, then the smaller `via`: a total order. */
function wins(state: State, cell: number, challenger: number, via: number): boolean {
  const { arrival, origin } = state;
  const holder = parentOf(state, cell);
  if (arrival[challenger] !== arrival[holder]) return arrival[challenger] < arrival[holder];
  const a = origin[challenger];
  const b = origin[holder];
  if (a === b) return via < state.via[cell];
  const site = state.polyps.site[polypOf(state, cell)];
  const lotA = draw(state.keys.tie, site, a);
  const lotB = draw(state.keys.tie, site, b);
  return lotA === lotB ? a < b : lotA < lotB;
}

/** Direction of travel into the cell, a unit vector, from the triangle that `via` names. */
export function travel(state: State, cell: number, cellDays: Float64Array): [number, number] {
  const via = state.via[cell];
  const axis = via & 3;
  const turned = (axis + ((via & SIDE) === 0 ? 1 : 3)) & 3;
  if ((via & BETWEEN) === 0) {
    if ((via & DIAGONAL) === 0) return [-AXIS_X[axis], -AXIS_Y[axis]];
    return [-(AXIS_X[axis] + AXIS_X[turned]) * Math.SQRT1_2, -(AXIS_Y[axis] + AXIS_Y[turned]) * Math.SQRT1_2];
  }
  const { columns } = state.layout;
  const a = cell + AXIS_X[axis] + AXIS_Y[axis] * columns;
  const d = a + AXIS_X[turned] + AXIS_Y[turned] * columns;
  const s = state.polyps.slowness[polypOf(state, cell)] * cellDays[state.variety[a]];
  const e = (state.arrival[a] - state.arrival[d]) / s;
  const back = Math.sqrt(Math.max(0, 1 - e * e));
  return [-(AXIS_X[axis] * back + AXIS_X[turned] * e), -(AXIS_Y[axis] * back + AXIS_Y[turned] * e)];
}

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
import { nearestPolyp } from './polyps';
import { BARE, FLAG, type State } from './state';

export const AXIS_X = [1, 0, -1, 0];
export const AXIS_Y = [0, 1, 0, -1];

export const SIDE = 4;
export const DIAGONAL = 8;
const BETWEEN = 16;

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

/** The polyp that a cell belongs to; looked up once. */
export function polypOf(state: State, cell: number): number {
  const known = state.polyp[cell];
  if (known > 0) return known - 1;
  const { columns, rows, cellMm } = state.layout;
  const x = ((cell % columns) - (columns - 1) / 2) * cellMm;
  const y = (Math.floor(cell / columns) - (rows - 1) / 2) * cellMm;
  const p = nearestPolyp(state.polyps, x, y);
  state.polyp[cell] = p + 1;
  return p;
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

/** Works out `due` and `via` of one empty cell anew. */
export function workOutDue(state: State, cell: number, cellDays: Float64Array): void {
  const { arrival, origin, variety, colony, polyps, ring } = state;
  const slow = polyps.slowness[polypOf(state, cell)];
  let best = Infinity;
  let bestVia = 0;
  let bestParent = -1;
  for (let k = 0; k < 8; k++) {
    const n = cell + ring[k];
    const v = variety[n];
    if (v === 0 || v === BARE) continue;
    const t = arrival[n];
    // whatever the triangle, T is at least T(n) + s/sqrt2: most neighbours are passed over here
    const s = slow * cellDays[v];
    if ((k & 1) === 1) {
      const alone = t + s * Math.SQRT2;
      if (alone > best || pinched(state, n, cell + ring[k - 1], cell + ring[(k + 1) & 7])) continue;
      if (alone < best || wins(state, cell, n, bestParent)) {
        best = alone;
        bestVia = ((k - 1) >> 1) | DIAGONAL;
        bestParent = n;
      }
      continue;
    }
    if (t + s * Math.SQRT1_2 > best) continue;
    const axis = k >> 1;
    if (t + s <= best && (t + s < best || wins(state, cell, n, bestParent))) {
      best = t + s;
      bestVia = axis;
      bestParent = n;
    }
    for (let side = 0; side < 2; side++) {
      const d = cell + ring[(k + (side === 0 ? 1 : 7)) & 7];
      const vd = variety[d];
      if (vd === 0 || vd === BARE) continue;
      const e = t - arrival[d];
      if (e <= 0 || e >= s * Math.SQRT1_2) continue;
      if (origin[n] !== origin[d] && colony[origin[n]] !== colony[origin[d]]) continue;
      const back = Math.sqrt(s * s - e * e);
      if (t + back > best) continue;
      // the foot of the ray lies e / back of the way from the axis neighbour to the diagonal one
      const diagonal = 2 * e > back;
      const parent = diagonal ? d : n;
      if (t + back < best || wins(state, cell, parent, bestParent)) {
        best = t + back;
        bestVia = axis | (side * SIDE) | (diagonal ? DIAGONAL : 0) | BETWEEN;
        bestParent = parent;
      }
    }
  }
  // a colour that turned to a faster one behind the rim would have been here long ago: it starts from yesterday on
  state.due[cell] = Math.max(best, state.day - 1);
  state.via[cell] = bestVia;
}

/** A diagonal step may not pass between two cells that both bar it: other colonies, bare skeleton, the tile's edge. */
function pinched(state: State, d: number, flankA: number, flankB: number): boolean {
  return bars(state, flankA, d) && bars(state, flankB, d);
}

function bars(state: State, cell: number, d: number): boolean {
  const v = state.variety[cell];
  if (v === 0) return (state.flags[cell] & FLAG.inside) === 0;
  return v === BARE || state.colony[state.origin[cell]] !== state.colony[state.origin[d]];
}

/** Equal days: the earlier neighbour, then a coin of the polyp for the two origins. */
function wins(state: State, cell: number, challenger: number, holder: number): boolean {
  const { arrival, origin } = state;
  if (arrival[challenger] !== arrival[holder]) return arrival[challenger] < arrival[holder];
  const a = origin[challenger];
  const b = origin[holder];
  if (a === b) return false;
  const coin = draw(
    state.keys.tie,
    state.polyps.site[polypOf(state, cell)],
    Math.min(a, b) * 65536 + Math.max(a, b),
  );
  return coin < 0.5 === a < b;
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

/**
 * Lapping: the stronger side creeps over the weaker one's tissue. It is rule G again, over the loser's cells instead of
 * over empty ground, at lapMmPerDay times the difference in aggression, from the day of the verdict on. The covered
 * cells take the winner's origin and colour, so the seam moves along.
 */
import { forMarked, push, sortUnique } from './cell-list';
import { openDay, refile } from './calendar';
import { closeRow } from './contact';
import { addCovered } from './covered';
import { AXIS_X, AXIS_Y, DIAGONAL, parentOf, polypOf, SIDE } from './front';
import { moveSeam } from './moved-seam';
import { FATE } from './seam-table';
import { BARE, FLAG, type State } from './state';
import { markStaleAround } from './wake';

/** A row has been settled as lapped: its loser's tissue lies open to the winner. */
export function exposeToLap(state: State, r: number): void {
  const { seam, lapPairs, flags, origin } = state;
  const own = seam.own[r];
  const other = seam.other[r];
  // who lies over a stronger one holds its ground and no more
  if (!liesOver(state, r) || lead(state, own, other) <= 0) return;
  const pair = own * 65536 + other;
  if (!lapPairs.has(pair)) {
    lapPairs.set(pair, seam.nucleus[r]);
    // tissue that came by lapping another piece presses on this one too, wherever they touch
    forMarked(flags, FLAG.lapped, (i) => {
      if (origin[i] === own) reconsider(state, i, 1);
    });
  }
  reconsider(state, seam.cell[r], 1);
}

/** Something changed that decides when the living cells within `reach` are lapped: their days are worked out anew. */
export function reconsider(state: State, cell: number, reach: number): void {
  const { variety, due, lapping, lapPairs, layout } = state;
  if (lapPairs.size === 0) return;
  const { columns, rows } = layout;
  const column = cell % columns;
  const line = (cell - column) / columns;
  for (let y = Math.max(1, line - reach); y <= Math.min(rows - 2, line + reach); y++) {
    for (let x = Math.max(1, column - reach); x <= Math.min(columns - 2, column + reach); x++) {
      const i = y * columns + x;
      if (variety[i] === 0 || variety[i] === BARE) continue;
      if (isBesideStranger(state, i)) push(lapping.stale, i);
      else due[i] = Infinity;
    }
  }
}

function isBesideStranger({ origin, ring }: State, cell: number): boolean {
  const own = origin[cell];
  for (let k = 0; k < 8; k++) {
    const other = origin[cell + ring[k]];
    if (other !== own && other !== 0) return true;
  }
  return false;
}

/** Day at which lapping tissue stands at `cell`, for a loser of so slow a cell; +Infinity where none presses. */
function pressingSince(state: State, cell: number, loser: number, slow: number): number {
  const { seam, variety, origin, arrival, flags } = state;
  const own = origin[cell];
  if (variety[cell] === 0 || variety[cell] === BARE || own === loser) return Infinity;
  if (!state.lapPairs.has(own * 65536 + loser)) return Infinity;
  if ((flags[cell] & FLAG.lapped) !== 0) return arrival[cell];
  const r = state.row[cell];
  if (r === 0 || seam.fate[r] !== FATE.lapped || seam.other[r] !== loser || !liesOver(state, r))
    return Infinity;
  // the contact lies half a cell ahead of this cell's centre
  return seam.settled[r] - (0.5 * slow) / lead(state, own, loser);
}

/** Whether of a lapped row the own side covers the other: as it came, else by aggression. */
export function liesOver(state: State, r: number): boolean {
  const { seam, nuclei, pieces } = state;
  const over = nuclei.over[seam.nucleus[r]];
  return over === 0 ? lead(state, seam.own[r], seam.other[r]) > 0 : over === pieces.variety[seam.own[r]];
}

/** How much more aggressive the one origin's variety is. */
function lead({ layout, pieces }: State, winner: number, loser: number): number {
  const { aggression } = layout;
  return aggression[pieces.variety[winner]] - aggression[pieces.variety[loser]];
}

/** Works out the day on which `cell` will be covered, from the pressing cells around it. */
function workOutLap(state: State, cell: number): void {
  const { origin, polyps, layout } = state;
  const { columns, cellMm, rates } = layout;
  const loser = origin[cell];
  const slow = (polyps.slowness[polypOf(state, cell)] * cellMm) / rates.lapMmPerDay;
  let best = Infinity;
  let bestVia = 0;
  for (let axis = 0; axis < 4; axis++) {
    const a = cell + AXIS_X[axis] + AXIS_Y[axis] * columns;
    const ta = pressingSince(state, a, loser, slow);
    const s = ta < Infinity ? slow / lead(state, origin[a], loser) : 0;
    if (ta + s < best) {
      best = ta + s;
      bestVia = axis;
    }
    for (let side = 0; side < 2; side++) {
      const turned = (axis + (side === 0 ? 1 : 3)) & 3;
      const d = a + AXIS_X[turned] + AXIS_Y[turned] * columns;
      const td = pressingSince(state, d, loser, slow);
      if (td === Infinity) continue;
      const e = ta - td;
      if (ta < Infinity && origin[a] === origin[d] && e > 0 && e < s * Math.SQRT1_2) {
        const t = ta + Math.sqrt(s * s - e * e);
        if (t < best) {
          best = t;
          bestVia = axis;
        }
      }
      const t = td + (slow / lead(state, origin[d], loser)) * Math.SQRT2;
      if (t < best) {
        best = t;
        bestVia = axis | (side * SIDE) | DIAGONAL;
      }
    }
  }
  // tissue that grew beside an old lapping edge is covered from today on, not from before it was there
  state.due[cell] = Math.max(best, state.day);
  state.via[cell] = bestVia;
}

/** One day of lapping, after growth and verdicts. */
export function lap(state: State): void {
  const { lapping, due, variety } = state;
  const now = state.day + 1;
  openDay(lapping, state.day);
  if (lapping.stale.count > 0) {
    sortUnique(lapping.stale);
    const { cell, count } = lapping.stale;
    for (let k = 0; k < count; k++) {
      const i = cell[k];
      if (variety[i] === BARE || variety[i] === 0) continue;
      const old = due[i];
      workOutLap(state, i);
      refile(lapping, i, old, due[i], state.day);
    }
    lapping.stale.count = 0;
  }
  const { taken, today } = lapping;
  taken.count = 0;
  for (let k = 0; k < today.count; k++) {
    const i = today.cell[k];
    if (due[i] <= now && variety[i] !== BARE) push(taken, i);
  }
  sortUnique(taken);
  // whose tissue comes is read off the old state, then written
  const parents = new Int32Array(taken.count);
  for (let k = 0; k < taken.count; k++) parents[k] = parentOf(state, taken.cell[k]);
  const losers = new Uint16Array(taken.count);
  const winners = new Uint16Array(taken.count);
  const colours = new Uint8Array(taken.count);
  for (let k = 0; k < taken.count; k++) {
    losers[k] = state.origin[taken.cell[k]];
    winners[k] = state.origin[parents[k]];
    colours[k] = variety[parents[k]];
  }
  for (let k = 0; k < taken.count; k++) cover(state, taken.cell[k], winners[k], colours[k]);
  for (let k = 0; k < taken.count; k++) moveSeam(state, taken.cell[k], losers[k]);
  // a cell and its neighbours may have got other rows, and those decide about the cells around them
  for (let k = 0; k < taken.count; k++) reconsider(state, taken.cell[k], 2);
}

function cover(state: State, cell: number, winner: number, colour: number): void {
  const { origin, variety, arrival, due, flags, polyps } = state;
  addCovered(state.covered, cell, variety[cell], arrival[cell], due[cell]);
  origin[cell] = winner;
  variety[cell] = colour;
  arrival[cell] = due[cell];
  due[cell] = Infinity;
  flags[cell] |= FLAG.lapped;
  closeRow(state, cell);
  const p = polypOf(state, cell);
  polyps.variety[p] = colour;
  polyps.origin[p] = winner;
  markStaleAround(state, cell);
}

/**
 * Lapping: the stronger side creeps over the weaker one's tissue. It is rule G again, over the loser's cells instead of
 * over empty ground, at lapMmPerDay times the difference in aggression, from the day of the verdict on. The covered
 * cells take the winner's origin and colour, so the seam moves along.
 */
import { push, sortUnique } from './cell-list';
import { dayOf, file, openDay } from './calendar';
import { closeRow } from './contact';
import { AXIS_X, AXIS_Y, DIAGONAL, parentOf, polypOf, SIDE } from './front';
import { moveSeam } from './moved-seam';
import { FATE } from './seam-table';
import { BARE, FLAG, type State } from './state';
import { markStaleAround } from './wake';

/** A row has been settled as lapped: its loser's tissue lies open to the winner. */
export function exposeToLap(state: State, r: number): void {
  const { seam } = state;
  const own = seam.own[r];
  const other = seam.other[r];
  if (lead(state, own, other) <= 0) return;
  const pair = own * 65536 + other;
  if (!state.lapPairs.has(pair)) state.lapPairs.set(pair, seam.nucleus[r]);
  expose(state, seam.cell[r], other);
}

function expose(state: State, source: number, loser: number): void {
  const { origin, variety, lapping } = state;
  const { columns } = state.layout;
  for (let dy = -columns; dy <= columns; dy += columns) {
    for (let dx = -1; dx <= 1; dx++) {
      const i = source + dy + dx;
      if (origin[i] === loser && variety[i] !== BARE && variety[i] !== 0) push(lapping.stale, i);
    }
  }
}

/** Day at which lapping tissue stands at `cell`, for a loser of so slow a cell; +Infinity where none presses. */
function pressingSince(state: State, cell: number, loser: number, slow: number): number {
  const { seam, variety, origin, arrival, flags } = state;
  const own = origin[cell];
  if (variety[cell] === 0 || variety[cell] === BARE || own === loser) return Infinity;
  if (!state.lapPairs.has(own * 65536 + loser)) return Infinity;
  if ((flags[cell] & FLAG.lapped) !== 0) return arrival[cell];
  const r = state.row[cell];
  if (r === 0 || seam.fate[r] !== FATE.lapped || seam.other[r] !== loser) return Infinity;
  // the contact lies half a cell ahead of this cell's centre
  return seam.settled[r] - (0.5 * slow) / lead(state, own, loser);
}

function presses(state: State, cell: number, on: number): boolean {
  return pressingSince(state, cell, state.origin[on], 0) < Infinity;
}

/** How much more aggressive the one origin's variety is. */
function lead(state: State, winner: number, loser: number): number {
  const { aggression, pieces } = state.layout;
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
      if (variety[i] === BARE) continue;
      const old = due[i];
      workOutLap(state, i);
      if (
        due[i] < Infinity &&
        (old === Infinity || dayOf(due[i]) !== dayOf(old) || dayOf(due[i]) <= state.day)
      ) {
        file(lapping, i, due[i], state.day);
      }
    }
    lapping.stale.count = 0;
  }
  const { taken, today } = lapping;
  taken.count = 0;
  for (let k = 0; k < today.count; k++) {
    const i = today.cell[k];
    if (due[i] > now || variety[i] === BARE) continue;
    if (presses(state, parentOf(state, i), i)) {
      push(taken, i);
      continue;
    }
    // what pressed has died or been covered since: perhaps another cell does, sooner or later
    workOutLap(state, i);
    if (due[i] < Infinity) file(lapping, i, due[i], state.day);
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
  for (let k = 0; k < taken.count; k++) {
    moveSeam(state, taken.cell[k], losers[k]);
    expose(state, taken.cell[k], losers[k]);
  }
}

function cover(state: State, cell: number, winner: number, colour: number): void {
  const { origin, variety, arrival, due, flags, polyps } = state;
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

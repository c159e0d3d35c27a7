/** The seam table after a step: contacts that went along with their tissue are kept, lost ones closed, new ones opened. */
import { closeRow, forNeighbours, openRow, partnerOf, queueFrom } from './contact';
import { AXIS_X, AXIS_Y } from './front';
import { exposeToLap } from './lap';
import { facing } from './moved-seam';
import { addNucleus, addRow, FATE } from './seam-table';
import { BARE, joinColonies, type State } from './state';

/** The tile before the step: which piece held a cell, and the cell's row. */
export interface Before {
  readonly origin: Uint16Array;
  readonly row: Int32Array;
}

export function before(state: State): Before {
  return { origin: state.origin.slice(), row: state.row.slice() };
}

/**
 * `from` names for each cell the cell its tissue came from, `group` by piece which pieces went together (0: those that
 * stayed as they were).
 */
export function reseam(state: State, was: Before, from: Int32Array, group: Uint16Array): void {
  const { origin, variety, row, seam, layout, ring } = state;
  const varietyOf = state.pieces.variety;
  const again: number[] = [];
  for (let i = 0; i < origin.length; i++) {
    const own = origin[i];
    if (own === 0) continue;
    const r = row[i];
    if (r !== 0 && keeps(state, i, r)) continue;
    if (r !== 0) closeRow(state, i);
    for (let axis = 0; axis < 8; axis += 2) {
      const other = origin[i + ring[axis]];
      if (other === 0 || other === own) continue;
      if (varietyOf[other] !== varietyOf[own]) {
        again.push(i);
        break;
      }
      if (variety[i] !== BARE && variety[i + ring[axis]] !== BARE) joinColonies(state, own, other);
    }
  }
  const nuclei = new Map<string, number>();
  const carried: number[] = [];
  for (const i of again) {
    for (let axis = 0; axis < 4 && row[i] === 0; axis++) {
      const j = i + AXIS_X[axis] + AXIS_Y[axis] * layout.columns;
      const other = origin[j];
      if (other === 0 || varietyOf[other] === varietyOf[origin[i]]) continue;
      const together = group[origin[i]] !== 0 && group[origin[i]] === group[other];
      const old = together ? rowBefore(state, was, from[i], was.origin[from[j]]) : 0;
      if (old !== 0) carried.push(carry(state, i, facing(state, i, other), old, nuclei));
    }
    if (row[i] === 0 && variety[i] !== BARE && partnerOf(state, i) >= 0) openRow(state, i);
  }
  // verdicts under way were queued under the old numbers
  for (const r of carried)
    forNeighbours(state, r, (n) => {
      if (seam.nucleus[r] >= 0) queueFrom(state, r, n);
      if (seam.nucleus[n] >= 0) queueFrom(state, n, r);
    });
  for (const r of carried) if (seam.fate[r] === FATE.lapped) exposeToLap(state, r);
}

/** Whether a row still stands; its partner may have gone while another cell of that piece lies beside it. */
function keeps(state: State, cell: number, r: number): boolean {
  const { seam, origin, variety } = state;
  if (seam.cell[r] !== cell || seam.own[r] !== origin[cell]) return false;
  const partner = seam.partner[r];
  if (variety[partner] !== 0 && origin[partner] === seam.other[r]) return true;
  const across = facing(state, cell, seam.other[r]);
  if (across < 0) return false;
  seam.partner[r] = across;
  return true;
}

/** The row that the tissue of `cell` had against `other`, or the nearest such one: turned, a seam has other stairs. */
function rowBefore(state: State, was: Before, cell: number, other: number): number {
  const { seam, layout } = state;
  const own = was.origin[cell];
  let best = 0;
  let least = Infinity;
  for (let dy = -2; dy <= 2; dy++)
    for (let dx = -2; dx <= 2; dx++) {
      const r = was.row[cell + dy * layout.columns + dx] ?? 0;
      if (r === 0 || dx * dx + dy * dy >= least) continue;
      const [a, b] = [seam.own[r], seam.other[r]];
      if (!((a === own && b === other) || (a === other && b === own))) continue;
      best = r;
      least = dx * dx + dy * dy;
    }
  return best;
}

/** A row like `old` between the pieces that now hold its tissue; its verdict goes along. */
function carry(state: State, cell: number, partner: number, old: number, made: Map<string, number>): number {
  const { seam, nuclei, origin } = state;
  const [own, other] = [origin[cell], origin[partner]];
  const r = addRow(seam, cell, partner, own, other, seam.touched[old]);
  state.row[cell] = r;
  seam.fate[r] = seam.fate[old];
  seam.settled[r] = seam.settled[old];
  const nucleus = seam.nucleus[old];
  if (nucleus < 0) {
    state.open.push(r);
    return r;
  }
  const key = `${nucleus} ${Math.min(own, other)} ${Math.max(own, other)}`;
  let copy = made.get(key);
  if (copy === undefined) {
    copy = addNucleus(
      nuclei,
      nuclei.day[nucleus],
      nuclei.fate[nucleus],
      own,
      other,
      nuclei.veiledUntil[nucleus],
      nuclei.over[nucleus],
    );
    made.set(key, copy);
  }
  seam.nucleus[r] = copy;
  return r;
}

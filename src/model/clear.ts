/** Tissue taken off, and what that does to the edges that stay: they heal before they grow or join. */
import { closeRow } from './contact';
import { distancesWithin } from './distance';
import { BARE, FLAG, type State } from './state';

/** How far behind an edge the rim's day is set anew, cells: no front reads deeper, and tissue keeps its age there. */
const REACH = 2.5;

/** Whether living tissue stands in the cell. */
export function isLiving({ variety }: State, cell: number): boolean {
  return variety[cell] !== 0 && variety[cell] !== BARE;
}

/** Empties the marked cells, bare skeleton too: it may be grown over again. */
export function clear(state: State, isOff: Uint8Array): void {
  for (let i = 0; i < isOff.length; i++) if (isOff[i] === 1 && state.variety[i] !== 0) clearCell(state, i);
}

export function clearCell(state: State, cell: number): void {
  const { variety, origin, arrival, due, flags } = state;
  closeRow(state, cell);
  variety[cell] = 0;
  origin[cell] = 0;
  arrival[cell] = Infinity;
  due[cell] = Infinity;
  flags[cell] &= ~(FLAG.lapped | FLAG.set);
}

/** Of the marked cells those beside a cell that `isBeside` accepts: where something was parted from it. */
export function edgeOf(state: State, isMarked: Uint8Array, isBeside: (cell: number) => boolean): Uint8Array {
  const edge = new Uint8Array(isMarked.length);
  for (let i = 0; i < isMarked.length; i++) {
    if (isMarked[i] === 0 || (state.flags[i] & FLAG.inside) === 0) continue;
    for (let k = 0; k < 8 && edge[i] === 0; k++) if (isBeside(i + state.ring[k])) edge[i] = 1;
  }
  return edge;
}

/**
 * Tissue behind a new edge: its rim stands there on `standsDay`, deeper in earlier by the depth over the rim rate, but
 * never before tissue came. `edge` marks the cells beyond the edge; `exact`, where it is known, gives the depth behind
 * it in cells, which the lattice only knows to half a cell. Returns by piece whether it was wounded.
 */
export function standBehind(
  state: State,
  edge: Uint8Array,
  isBehind: (cell: number) => boolean,
  standsDay: number,
  exact: Float32Array | null = null,
): Uint8Array {
  const { columns, cellMm, rimMmPerDay } = state.layout;
  const { arrival, variety, origin, flags } = state;
  const behind = distancesWithin(edge, REACH, columns);
  const wounded = new Uint8Array(state.pieces.count + 1);
  for (let i = 0; i < behind.length; i++) {
    if (behind[i] > REACH || !isBehind(i)) continue;
    let depth = Math.max(0, behind[i] - 0.5);
    if (exact !== null && Math.abs(exact[i] - depth) <= 1) depth = Math.max(0, exact[i]);
    const since = Math.fround(standsDay - (depth * cellMm) / rimMmPerDay[variety[i]]);
    if (since > arrival[i]) {
      arrival[i] = since;
      flags[i] |= FLAG.set;
    }
    wounded[origin[i]] = 1;
  }
  return wounded;
}

/**
 * Edges cut today, beside the marked cells that were cleared: they heal, and count as fresh once more. Returns by piece
 * whether it was wounded.
 */
export function healBeside(
  state: State,
  isOff: Uint8Array,
  now: number,
  exact: Float32Array | null = null,
): Uint8Array {
  const living = (i: number): boolean => isLiving(state, i);
  const healed = now + state.layout.rates.healingDays;
  const wounded = standBehind(state, edgeOf(state, isOff, living), living, healed, exact);
  freshen(state, wounded, now);
  return wounded;
}

/** From today's cut on the edges of the wounded pieces count as freshly cut. */
export function freshen({ pieces, layout }: State, wounded: Uint8Array, now: number): void {
  const { healingDays, freshCutDays } = layout.rates;
  for (let o = 1; o < wounded.length; o++)
    if (wounded[o] === 1)
      pieces.freshUntilDay[o] = Math.max(pieces.freshUntilDay[o], now + healingDays + freshCutDays);
}

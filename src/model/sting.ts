/**
 * Dead seams: tissue within the sting reach of the contact dies back to bare skeleton, on the weaker side only, or half
 * the reach on each where both are alike. Bare cells keep their origin, so the seam keeps its place and length.
 */
import { reconsider } from './lap';
import { markStaleAround } from './wake';
import { BARE, type State } from './state';

export function sting(state: State, r: number): void {
  const { variety } = state;
  eachStung(state, r, (cell) => {
    if (variety[cell] === 0 || variety[cell] === BARE) return;
    variety[cell] = BARE;
    markStaleAround(state, cell);
    reconsider(state, cell, 1);
  });
}

/** The cells that a dead contact reaches, living or not. */
export function eachStung(state: State, r: number, visit: (cell: number) => void): void {
  const { seam, layout, pieces } = state;
  const { aggression, rates } = layout;
  const own = seam.own[r];
  const other = seam.other[r];
  const difference = aggression[pieces.variety[own]] - aggression[pieces.variety[other]];
  if (difference === 0) {
    within(state, r, own, rates.stingMm / 2, visit);
    within(state, r, other, rates.stingMm / 2, visit);
  } else {
    within(state, r, difference < 0 ? own : other, rates.stingMm, visit);
  }
}

/** Visits the cells of `origin` within `reachMm` of the contact's mid-point. */
function within(
  state: State,
  r: number,
  origin: number,
  reachMm: number,
  visit: (cell: number) => void,
): void {
  const { seam, layout } = state;
  const { columns, rows, cellMm } = layout;
  const column = ((seam.cell[r] % columns) + (seam.partner[r] % columns)) / 2;
  const line = (Math.floor(seam.cell[r] / columns) + Math.floor(seam.partner[r] / columns)) / 2;
  const reach = reachMm / cellMm;
  const top = Math.max(1, Math.ceil(line - reach));
  const bottom = Math.min(rows - 2, Math.floor(line + reach));
  const left = Math.max(1, Math.ceil(column - reach));
  const right = Math.min(columns - 2, Math.floor(column + reach));
  for (let y = top; y <= bottom; y++) {
    for (let x = left; x <= right; x++) {
      const i = y * columns + x;
      if (state.origin[i] !== origin) continue;
      const dx = x - column;
      const dy = y - line;
      if (dx * dx + dy * dy <= reach * reach) visit(i);
    }
  }
}

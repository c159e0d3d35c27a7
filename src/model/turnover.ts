/**
 * Rule X: polyps behind the rim are now and then replaced by a neighbour's bud. Every polyp, at a rate per day, takes
 * the variety of a random one of its four lattice neighbours: the voter model, which has no surface tension, so a
 * straight border frays and never straightens (Cox & Griffeath 1986, Ann. Prob. 14: 347-370). The frayed zone of a
 * straight border has standard deviation p sqrt(0.5 r t). That corals do so is a guess.
 */
import { forMarked } from './cell-list';
import { openWay } from './inherit';
import { polypOf } from './front';
import { pairIndex } from './layout';
import { draw } from './noise';
import { FATE } from './seam-table';
import { BARE, type State } from './state';
import { markStaleAround } from './wake';

/** Days between two rounds of replacement. */
export const TURNOVER_DAYS = 7;

export function turnOver(state: State): void {
  const { polyps, colony, colonyVarieties, keys, layout } = state;
  const { variety, origin, columns, site } = polyps;
  const steps = [1, -1, columns, -columns];
  const replaced: number[] = [];
  const takes: number[] = [];
  forMarked(variety, 0xff, (p) => {
    const own = variety[p];
    if (
      variety[p + 1] === own &&
      variety[p - 1] === own &&
      variety[p + columns] === own &&
      variety[p - columns] === own
    )
      return;
    const root = colony[origin[p]];
    const mask = colonyVarieties[root];
    // a colony of one variety has nothing to exchange
    if ((mask & (mask - 1)) === 0) return;
    const m = p + steps[Math.floor(4 * draw(keys.turnoverFrom, site[p], state.day))];
    const bud = variety[m];
    if (bud === 0 || bud === own || colony[origin[m]] !== root) return;
    const chance = TURNOVER_DAYS * layout.pairs.turnoverPerDay[pairIndex(own, bud)];
    if (draw(keys.turnover, site[p], state.day) >= chance) return;
    if (!mayBeReplaced(state, p, m)) return;
    replaced.push(p);
    takes.push(bud);
  });
  for (let k = 0; k < replaced.length; k++) recolour(state, replaced[k], takes[k]);
}

/** The polyp holds no wall, and no wall stands between it and the bud. */
function mayBeReplaced(state: State, p: number, m: number): boolean {
  const { row, seam } = state;
  let open = true;
  forCells(state, p, (i) => {
    if (row[i] !== 0 && seam.fate[row[i]] !== FATE.fused) open = false;
  });
  const from = cellAt(state, p);
  const to = cellAt(state, m);
  return open && openWay(state, from.cell, to.column, to.line);
}

function recolour(state: State, p: number, bud: number): void {
  const { polyps, variety, colony, origin } = state;
  const old = polyps.variety[p];
  const root = colony[polyps.origin[p]];
  forCells(state, p, (i) => {
    if (variety[i] !== old || colony[origin[i]] !== root) return;
    variety[i] = bud;
    // the new colour may grow at another rate
    markStaleAround(state, i);
  });
  polyps.variety[p] = bud;
}

/** The cell that holds a polyp's site, kept on the grid. */
function cellAt(state: State, p: number): { column: number; line: number; cell: number } {
  const { columns, rows, cellMm } = state.layout;
  const column = Math.min(
    columns - 2,
    Math.max(1, Math.round(state.polyps.xMm[p] / cellMm + (columns - 1) / 2)),
  );
  const line = Math.min(rows - 2, Math.max(1, Math.round(state.polyps.yMm[p] / cellMm + (rows - 1) / 2)));
  return { column, line, cell: line * columns + column };
}

/** Visits the living cells of a polyp. */
function forCells(state: State, p: number, visit: (cell: number) => void): void {
  const { variety } = state;
  const { columns, rows, cellMm } = state.layout;
  const at = cellAt(state, p);
  const reach = Math.ceil((1.5 * state.polyps.spacingMm) / cellMm);
  for (let y = Math.max(1, at.line - reach); y <= Math.min(rows - 2, at.line + reach); y++) {
    for (let x = Math.max(1, at.column - reach); x <= Math.min(columns - 2, at.column + reach); x++) {
      const i = y * columns + x;
      if (variety[i] !== 0 && variety[i] !== BARE && polypOf(state, i) === p) visit(i);
    }
  }
}

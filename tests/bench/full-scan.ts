/**
 * The same rules grown the plain way: every empty cell of the tile is worked out anew in every sub-step.
 * It shares set-up and arithmetic with the engine and keeps no lists, so that it is both the engine's peer in the
 * bench and its check: the two must agree in every bit (tests/property/engine.test.ts).
 */
import { push } from '../../src/model/cell-list';
import { workOutDue } from '../../src/model/front';
import { afterGrowth, doSteps } from '../../src/model/grow';
import type { Layout } from '../../src/model/layout';
import { fill, paceOf } from '../../src/model/rim';
import { setPieces } from '../../src/model/set';
import { FLAG, type State } from '../../src/model/state';

export function* growByFullScan(layout: Layout, seed: string): Generator<State, void> {
  const state = setPieces(layout, seed);
  doSteps(state, 0);
  const { cellDays, subSteps } = paceOf(state);
  const { variety, flags, due, growing } = state;
  const { stale, taken } = growing;
  yield state;
  while (state.day < layout.days) {
    doSteps(state, state.day + 1);
    for (let q = 1; q <= subSteps; q++) {
      const end = q === subSteps ? state.day + 1 : state.day + q / subSteps;
      taken.count = 0;
      for (let i = 0; i < variety.length; i++) {
        if (variety[i] !== 0 || (flags[i] & FLAG.inside) === 0 || !besideTissue(state, i)) continue;
        workOutDue(state, i, cellDays);
        if (due[i] <= end) push(taken, i);
      }
      fill(state, taken.cell, taken.count, cellDays);
      // what the lists of the engine would hold is not used here
      stale.count = 0;
    }
    afterGrowth(state, state.day + 1);
    for (let i = 0; i < flags.length; i++) flags[i] &= ~FLAG.stale;
    stale.count = 0;
    state.day++;
    yield state;
  }
}

function besideTissue(state: State, cell: number): boolean {
  const { columns } = state.layout;
  for (let dy = -columns; dy <= columns; dy += columns) {
    for (let dx = -1; dx <= 1; dx++) if (state.variety[cell + dy + dx] !== 0) return true;
  }
  return false;
}

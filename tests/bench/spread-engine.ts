/** The job of the front rows by our engine: the same discs, a rim of 3 mm/month, cells of 0.25 mm. */
import { grow } from '../../src/model/grow';
import { BARE, type State } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import type { Plan } from '../../src/plan/plan';
import { disc, planOf, variety } from './bench-plan';
import { COVER } from './spread';

const CELL_MM = 0.25;

function twoDiscs(side: number): Plan {
  const sizeMm = side * CELL_MM;
  const acrossMm = sizeMm / 10;
  return planOf({
    sizeMm,
    varieties: [variety('a', 0.2), variety('b', 0.2)],
    pairs: [{ a: 'a', b: 'b', acceptance: 0.5 }],
    pieces: [
      { ...disc('p1', 'a', -sizeMm / 4, 0, acrossMm), edge: 'rim' },
      { ...disc('p2', 'b', sizeMm / 4, 0, acrossMm), edge: 'rim' },
    ],
    months: 36,
  });
}

function isCovered(state: State, side: number): boolean {
  let cells = 0;
  for (const v of state.variety) if (v !== 0 && v !== BARE) cells++;
  return cells >= COVER * side * side;
}

/** The day on which the cover is reached. Found beforehand: the engine does not count its cells. */
export function dayOfCover(side: number, seed: number): number {
  let next = 0;
  for (const state of grow(compile(twoDiscs(side), CELL_MM), String(seed))) {
    // counting costs more than a day of growth: every fourth day will do
    if (state.day < next) continue;
    if (isCovered(state, side)) return state.day;
    next = state.day + 4;
  }
  throw new Error('the cover was not reached');
}

export function spreadByEngine(side: number, seed: number, untilDay: number): void {
  for (const state of grow(compile(twoDiscs(side), CELL_MM), String(seed))) {
    if (state.day === untilDay) return;
  }
  throw new Error('the run ended too soon');
}

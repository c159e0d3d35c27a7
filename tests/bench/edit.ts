/**
 * What a changed step costs: a year with a step at month 10 is grown, then the step is changed, and the worker's kept
 * tiles serve. Beside it what the last two months take within a whole run, and the whole run.
 */
import { grow, growOn } from '../../src/model/grow';
import { compile } from '../../src/plan/compile';
import type { Plan } from '../../src/plan/plan';
import { dayOfMonth } from '../../src/units/quantity';
import { Past } from '../../workers/past';
import { fourPieces } from './bench-plan';
import { median, msOf, rowOf, type Section } from './row';

const SEEDS = 16;
const CELL_MM = 0.25;
const STEP_DAY = dayOfMonth(10);

function trimmed(widthMm: number): Plan {
  return { ...fourPieces(100, 12), steps: [{ id: 's1', day: STEP_DAY, kind: 'trim', widthMm }] };
}

/** Time of a whole run, and of what comes after the eve of the step. */
function wholeRun(seed: string): { ms: number; lastMs: number } {
  const start = performance.now();
  let eve = start;
  for (const state of grow(compile(trimmed(3), CELL_MM), seed))
    if (state.day === STEP_DAY - 1) eve = performance.now();
  const end = performance.now();
  return { ms: end - start, lastMs: end - eve };
}

function editMs(seed: string): number {
  const past = new Past();
  const before = { plan: trimmed(2), seed, cellMm: CELL_MM };
  for (const state of grow(compile(before.plan, CELL_MM), seed)) past.keep(before, state);
  return msOf(() => {
    const after = { ...before, plan: trimmed(3) };
    const layout = compile(after.plan, CELL_MM);
    const kept = past.find(after, layout, dayOfMonth(12));
    if (kept?.day !== STEP_DAY - 1) throw new Error('the eve of the step is kept');
    for (const state of growOn(kept)) if (state.day > 400) throw new Error('a year has 365 days');
  });
}

export function benchEdit(): Section {
  wholeRun('0');
  editMs('0');
  const whole = [];
  const edit = [];
  for (let seed = 1; seed <= SEEDS; seed++) {
    whole.push(wholeRun(String(seed)));
    edit.push(editMs(String(seed)));
  }
  const ms = median(edit);
  const lastMs = median(whole.map((run) => run.lastMs));
  return {
    title: `A step changed at month 10 of 12, 100 mm tile (median of ${SEEDS} seeds)`,
    rows: [
      rowOf('edit-month-10', ms, 'last two months', lastMs),
      rowOf('edit-month-10', ms, 'whole year', median(whole.map((run) => run.ms))),
    ],
    bars: [
      { words: 'edit over the last two months', found: ms / lastMs, bar: 1.5, bound: 'most', unit: 'times' },
    ],
    notes: ['set-up of the layout and the copy of the kept tile are counted in; readings and frames are not'],
  };
}

/** What a cut of the plan takes out, as a piece that can be set on a tile of its own. */
import { frameOf } from '../src/model/frame';
import { doSteps, grow, growOn } from '../src/model/grow';
import type { State } from '../src/model/state';
import { compile } from '../src/plan/compile';
import { graftOf } from '../src/plan/graft';
import type { GraftPiece } from '../src/plan/plan';
import { isolateKerfMm, stepsInOrder } from '../src/plan/steps';
import type { Past, RunName } from './past';

/** Of the isolating step of this id; null where nothing is cut out. Grows up to the step, from what is kept. */
export function cutOut(past: Past, run: RunName, stepId: string): GraftPiece | null {
  const order = stepsInOrder(run.plan);
  const at = order.findIndex(({ id }) => id === stepId);
  const step = order[at];
  if (step?.kind !== 'isolate') return null;
  const before = new Set(order.slice(0, at));
  const plan = { ...run.plan, months: 36, steps: run.plan.steps.filter((one) => before.has(one)) };
  const layout = compile(plan, run.cellMm);
  const eve = Math.max(0, step.day - 1);
  const kept = past.find({ ...run, plan }, layout, eve);
  let tile: State | undefined;
  for (const state of kept ? growOn(kept) : grow(layout, run.seed)) {
    tile = state;
    if (state.day === eve) break;
  }
  if (!tile) return null;
  if (step.day > 0) doSteps(tile, step.day);
  const cut = { around: step.around, kerfMm: isolateKerfMm(step) };
  return graftOf(frameOf(tile, 0), cut, 'p1', ['', ...plan.varieties.map(({ id }) => id)]);
}

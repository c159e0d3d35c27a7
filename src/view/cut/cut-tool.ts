/** What a line drawn on the tile becomes: a cut, a trimmed or scraped stretch, or a patch to be cut out. */
import { addStep, changeLines, nextStepId } from '../../plan/edit-steps';
import { tileOutline } from '../../plan/outline';
import { MAX_STEPS, type Plan, type Step, type StepOf, type Xy } from '../../plan/plan';
import { facesOfRecut } from '../../plan/steps';
import { dayOfMonth } from '../../units/quantity';
import { isInside, lengthOf } from '../../units/polygon';
import { simplify } from '../../units/simplify';
import type { Desk } from '../desk.svelte';
import type { Hold } from '../tile/hold.svelte';
import { cornersOf, outlineFault } from '../tile/stamp';
import { cutOutOf, outlineAround, patchAt, tidy } from './patch';

const TOLERANCE_MM = 0.2;
/** A saw line that ends so near the tile's edge, or another line, is meant to reach it. */
const REACH_MM = 3;
const LEAST_LENGTH_MM = 1;
const FULL = `A plan holds at most ${MAX_STEPS} steps: remove some first.`;

/** Steps that are drawn or added act on the day whose tile is shown; day 0 is the tile as it is set. */
export function dayShown(desk: Desk): number {
  return Math.max(1, dayOfMonth(desk.month));
}

/** The recut that a further line belongs to: the chosen one, on the tile of its own day. */
export function recutDrawnOn(desk: Desk): StepOf<'recut'> | null {
  const step = desk.plan.steps.find(({ id }) => id === desk.step);
  return step?.kind === 'recut' && step.day === dayShown(desk) ? step : null;
}

/** Keeps the line that is being drawn as a step. Says at its end why it cannot be. */
export function keepLine(desk: Desk, hold: Hold): void {
  const { way } = hold.cut;
  hold.cutNote = '';
  const line = simplify(hold.sketch, TOLERANCE_MM).map(([x, y]): Xy => [tidy(x), tidy(y)]);
  const end = line.at(-1);
  if (end === undefined || way === 'round' || way === 'patch') return;
  if (lengthOf(line) < LEAST_LENGTH_MM) {
    hold.sketch = [];
    return;
  }
  const recut = way === 'saw' ? recutDrawnOn(desk) : null;
  if (recut) {
    const lines = [...recut.lines, reaching(line, desk.plan, recut.lines)];
    const before = facesOfRecut(desk.plan.tile, recut).length;
    const [refusal] = desk.do(changeLines(desk.plan, recut.id, lines));
    hold.sketch = [];
    if (refusal) hold.refuse(`${refusal.cure}.`, end);
    else tellParts(desk, hold, recut.id, before);
    return;
  }
  const dated = { id: nextStepId(desk.plan), day: dayShown(desk) };
  const { kerfMm, trimMm, scrapeMm } = hold.cut;
  const step: Step =
    way === 'saw'
      ? { ...dated, kind: 'recut', lines: [reaching(line, desk.plan, [])], kerfMm, then: [] }
      : way === 'trim'
        ? { ...dated, kind: 'trim', widthMm: trimMm, along: line }
        : { ...dated, kind: 'scrape', widthMm: scrapeMm, along: line };
  if (!put(desk, hold, step, end)) return;
  hold.sketch = [];
  if (way === 'saw') tellParts(desk, hold, step.id, 1);
}

/** A saw line that divides nothing takes tissue all the same: better said. */
function tellParts(desk: Desk, hold: Hold, id: string, before: number): void {
  const step = desk.plan.steps.find((one) => one.id === id);
  if (step?.kind !== 'recut') return;
  if (facesOfRecut(desk.plan.tile, step).length > before) return;
  hold.cutNote = 'This line parts nothing: draw it from edge to edge, or on to another line.';
}

function put(desk: Desk, hold: Hold, step: Step, at: Xy): boolean {
  if (desk.plan.steps.length >= MAX_STEPS) {
    hold.refuse(FULL, at);
    return false;
  }
  const [refusal] = desk.do(addStep(desk.plan, step));
  if (refusal) hold.refuse(`${refusal.cure}.`, at);
  else desk.step = step.id;
  return !refusal;
}

/** Proposes to cut out what has been drawn round. */
export function proposeRound(desk: Desk, hold: Hold): void {
  const around = cornersOf(hold.sketch).map(([x, y]): Xy => [tidy(x), tidy(y)]);
  const fault = outlineFault(around);
  if (fault) {
    const words = fault === 'crosses' ? 'crosses itself' : 'is too small';
    hold.refuse(`The outline ${words}: take back its last corners, or clear it.`, around[around.length - 1]);
    return;
  }
  hold.sketch = [];
  propose(desk, hold, around, null);
}

/** Proposes to cut out the patch of one colour at a place, with the margin that is set. */
export function proposePatch(desk: Desk, hold: Hold, at: Xy): void {
  const { frame } = desk;
  const patch = frame && patchAt(frame, at);
  if (!frame || !patch) {
    hold.proposal = null;
    hold.refuse('There is no tissue here: press on the patch of colour that is to be cut out.', at);
    return;
  }
  const { kerfMm, marginMm } = hold.cut;
  propose(desk, hold, outlineAround(frame, patch, marginMm + kerfMm / 2), at);
}

function propose(desk: Desk, hold: Hold, around: readonly Xy[], at: Xy | null): void {
  if (!desk.frame) return;
  const cutOut = cutOutOf(desk.frame, around, hold.cut.kerfMm, at && patchAt(desk.frame, at));
  hold.refused = null;
  hold.proposal = { around, cutOut, at };
  hold.said = `Cutting of ${Math.round(cutOut.areaMm2)} mm². Enter cuts it out.`;
}

/** The proposal again, after the blade or the margin has changed. */
export function proposeAgain(desk: Desk, hold: Hold): void {
  const { proposal } = hold;
  if (proposal === null) return;
  if (proposal.at) proposePatch(desk, hold, proposal.at);
  else propose(desk, hold, proposal.around, null);
}

/** Makes a step of what is proposed. */
export function cutOut(desk: Desk, hold: Hold): void {
  const { proposal } = hold;
  if (proposal === null) return;
  const { around } = proposal;
  const { kerfMm } = hold.cut;
  const step: Step = { id: nextStepId(desk.plan), day: dayShown(desk), kind: 'isolate', around, kerfMm };
  if (put(desk, hold, step, around[0])) hold.proposal = null;
}

/** Ends that stop short of the tile's edge or of another line go on as far as to it. */
function reaching(line: readonly Xy[], plan: Plan, lines: StepOf<'recut'>['lines']): Xy[] {
  const edge = tileOutline(plan.tile);
  const out = [...line];
  const lengthened = (from: Xy, end: Xy): Xy => {
    if (!isInside(edge, end)) return end;
    const length = Math.hypot(end[0] - from[0], end[1] - from[1]);
    if (length === 0) return end;
    const far = REACH_MM / length;
    const beyond: Xy = [end[0] + (end[0] - from[0]) * far, end[1] + (end[1] - from[1]) * far];
    const isMeant = !isInside(edge, beyond) || lines.some((other) => crosses(end, beyond, other));
    return isMeant ? [tidy(beyond[0]), tidy(beyond[1])] : end;
  };
  out[out.length - 1] = lengthened(line[line.length - 2], line[line.length - 1]);
  out[0] = lengthened(line[1], line[0]);
  return out;
}

/** Whether a stretch crosses a path. */
function crosses(from: Xy, to: Xy, path: readonly Xy[]): boolean {
  const side = (a: Xy, b: Xy, c: Xy): number =>
    Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
  return path
    .slice(1)
    .some(
      (next, k) =>
        side(from, to, path[k]) !== side(from, to, next) &&
        side(path[k], next, from) !== side(path[k], next, to),
    );
}

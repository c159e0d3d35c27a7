/** Every change that a person can make to the steps of a plan, in the form of plan/edit.ts. */
import type { FaceOfLines } from '../units/faces';
import type { Edit } from './edit';
import { nextId } from './ids';
import { LAST_DAY, MAX_STEPS, type Plan, type Step, type StepOf, type Xy } from './plan';
import { halfTurns, rounded } from './rounding';
import { stepName } from './step-faults';
import { faceName, facesOfRecut, type Standing } from './steps';

export function nextStepId(plan: Plan): string {
  return nextId('s', plan.steps);
}

export function addStep(plan: Plan, step: Step): Edit {
  const words = `Add ${stepName(step)}`;
  if (plan.steps.length >= MAX_STEPS) return { plan, words };
  return { plan: { ...plan, steps: [...plan.steps, step] }, words };
}

/** The step with its new values, whatever its kind; a key set to undefined is left out again. */
export function changeStep(plan: Plan, id: string, patch: Readonly<Record<string, unknown>>): Edit {
  return withStep(plan, id, 'Change', (step) => {
    const entries = Object.entries({ ...step, ...patch }).filter(([, value]) => value !== undefined);
    return Object.fromEntries(entries) as unknown as Step;
  });
}

export function removeStep(plan: Plan, id: string): Edit {
  const old = plan.steps.find((step) => step.id === id);
  if (!old) return { plan, words: 'Remove a step' };
  return {
    plan: { ...plan, steps: plan.steps.filter((step) => step !== old) },
    words: `Remove ${stepName(old)}`,
  };
}

export function switchStep(plan: Plan, id: string, on: boolean): Edit {
  return withStep(plan, id, on ? 'Switch on' : 'Switch off', ({ on: _on, ...step }) =>
    on ? step : { ...step, on },
  );
}

/** Days before the plan and after three years are brought back to them. */
export function moveStep(plan: Plan, id: string, day: number): Edit {
  const to = Math.min(LAST_DAY, Math.max(0, Math.round(day)));
  const { plan: moved, words } = withStep(plan, id, 'Move', (step) => ({ ...step, day: to }));
  return { plan: moved, words: `${words} to day ${to}` };
}

/** Steps of one day act in the order of the list: the step changes places with the one before or after it that day. */
export function reorderStep(plan: Plan, id: string, by: -1 | 1): Edit {
  const at = plan.steps.findIndex((step) => step.id === id);
  if (at < 0) return { plan, words: 'Reorder a step' };
  const step = plan.steps[at];
  const words = `Do ${stepName(step)} ${by < 0 ? 'earlier' : 'later'} that day`;
  let other = at + by;
  while (other in plan.steps && plan.steps[other].day !== step.day) other += by;
  if (!(other in plan.steps)) return { plan, words };
  const steps = [...plan.steps];
  [steps[at], steps[other]] = [steps[other], step];
  return { plan: { ...plan, steps }, words };
}

/**
 * Other cut lines for a recut. Its parts are numbered by place, so names go along with the parts that stay as they
 * were; where a part that was set anew is cut otherwise, all lie as cut again. A later step that names a part which is
 * no more keeps a name that no part has, and the plan is refused until it is told another.
 */
export function changeLines(plan: Plan, id: string, lines: StepOf<'recut'>['lines']): Edit {
  const old = plan.steps.find((step) => step.id === id);
  if (old?.kind !== 'recut') return { plan, words: 'Change the lines of a step' };
  const cut: StepOf<'recut'> = { ...old, lines };
  const isNow = renamed(facesOfRecut(plan.tile, old), facesOfRecut(plan.tile, cut), old);
  const then = old.then.map((placed) => ({ ...placed, piece: isNow.get(placed.piece) ?? '' }));
  const isLost = then.some(({ piece }) => piece === '');
  const steps = plan.steps.map((step): Step => {
    if (step === old) return { ...cut, then: isLost ? [] : then };
    if (step.kind !== 'trim' && step.kind !== 'move' && step.kind !== 'lift') return step;
    if (step.piece === undefined || !isNow.has(step.piece)) return step;
    const piece = isNow.get(step.piece) ?? '';
    return piece === step.piece ? step : { ...step, piece: piece === '' ? `${step.piece}-gone` : piece };
  });
  const words = `Change the lines of ${stepName(old)}`;
  return { plan: { ...plan, steps }, words: isLost ? `${words}; its parts lie as cut again` : words };
}

/** New names of a recut's old parts: '' for one that is no more. */
function renamed(
  before: readonly FaceOfLines[],
  after: readonly FaceOfLines[],
  step: Step,
): ReadonlyMap<string, string> {
  const keyOf = ({ centroid: [x, y], areaMm2 }: FaceOfLines): string =>
    [x, y, areaMm2].map((value) => Math.round(value * 100) + 0).join(' ');
  const place = new Map(after.map((face, k) => [keyOf(face), k]));
  return new Map(
    before.map((face, k) => {
      const now = place.get(keyOf(face));
      return [faceName(step, k), now === undefined ? '' : faceName(step, now)];
    }),
  );
}

/** Where a step sets a piece: a part of a recut, the piece that is moved, or the one that is added. */
export function placePart(plan: Plan, id: string, piece: string, to: Standing, verb = 'Move'): Edit {
  const old = plan.steps.find((step) => step.id === id);
  const words = `${verb} ${piece} in ${old ? stepName(old) : 'a step'}`;
  if (!old) return { plan, words };
  const standing = tidy(to);
  const { plan: placed } = withStep(plan, id, verb, (step): Step => {
    if (step.kind === 'move') return { ...step, ...standing };
    if (step.kind === 'add') return { ...step, piece: { ...step.piece, ...standing } };
    return step.kind === 'recut' ? { ...step, then: placedThen(plan, step, [[piece, standing]]) } : step;
  });
  return { plan: placed, words };
}

/** Two parts of a recut take each other's place and keep their turns. */
export function swapParts(plan: Plan, id: string, one: string, other: string): Edit {
  const old = plan.steps.find((step) => step.id === id);
  if (old?.kind !== 'recut' || one === other) return { plan, words: 'Swap two parts' };
  const [here, there] = [partStanding(plan, old, one), partStanding(plan, old, other)];
  const words = `Swap ${one} and ${other}`;
  if (!here || !there) return { plan, words };
  const then = placedThen(plan, old, [
    [one, { ...here, at: there.at }],
    [other, { ...there, at: here.at }],
  ]);
  return { plan: changeStep(plan, id, { then }).plan, words };
}

/** Where a recut sets one of its parts; null for a name that is not of this cut. */
function partStanding(plan: Plan, step: StepOf<'recut'>, piece: string): Standing | null {
  const placed = step.then.find((one) => one.piece === piece);
  if (placed) return { at: placed.at, turnDeg: placed.turnDeg };
  const face = facesOfRecut(plan.tile, step).find((_, k) => faceName(step, k) === piece);
  return face ? { at: face.centroid, turnDeg: 0 } : null;
}

/** Placements with some parts set elsewhere; what lies as it was cut is not listed. */
function placedThen(
  plan: Plan,
  step: StepOf<'recut'>,
  moves: readonly (readonly [string, Standing])[],
): StepOf<'recut'>['then'] {
  const then = new Map(step.then.map((placed) => [placed.piece, placed]));
  for (const [piece, to] of moves) then.set(piece, { piece, ...tidy(to) });
  const asCut = partAsCut(plan, step);
  return [...then.values()].filter(({ piece, at, turnDeg }) => {
    const face = asCut.get(piece);
    const isThere = face && Math.hypot(at[0] - face[0], at[1] - face[1]) < 0.002;
    return !(isThere && turnDeg === 0);
  });
}

function partAsCut(plan: Plan, step: StepOf<'recut'>): ReadonlyMap<string, Xy> {
  return new Map(facesOfRecut(plan.tile, step).map(({ centroid }, k) => [faceName(step, k), centroid]));
}

/** As finely as a plan keeps places and turns. */
function tidy({ at, turnDeg }: Standing): Standing {
  return { at: [rounded(at[0]), rounded(at[1])], turnDeg: halfTurns(turnDeg) };
}

function withStep(plan: Plan, id: string, verb: string, change: (step: Step) => Step): Edit {
  const old = plan.steps.find((step) => step.id === id);
  if (!old) return { plan, words: `${verb} a step` };
  const changed = change(old);
  const words = `${verb} ${stepName(old)}`;
  if (JSON.stringify(changed) === JSON.stringify(old)) return { plan, words };
  return { plan: { ...plan, steps: plan.steps.map((step) => (step === old ? changed : step)) }, words };
}

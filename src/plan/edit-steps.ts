/** Every change that a person can make to the steps of a plan, in the form of plan/edit.ts. */
import type { Edit } from './edit';
import { MAX_STEPS, type Plan, type Step } from './plan';
import { stepName } from './step-faults';

/** 's' and one more than the highest number in use, so that a new step is never taken for a removed one. */
export function nextStepId(plan: Plan): string {
  let number = 0;
  for (const { id } of plan.steps) {
    const match = /^s(\d{1,9})$/u.exec(id);
    if (match) number = Math.max(number, Number(match[1]));
  }
  return `s${number + 1}`;
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
  return withStep(plan, id, 'Move', (step) => ({
    ...step,
    day: Math.min(1095, Math.max(0, Math.round(day))),
  }));
}

function withStep(plan: Plan, id: string, verb: string, change: (step: Step) => Step): Edit {
  const old = plan.steps.find((step) => step.id === id);
  if (!old) return { plan, words: `${verb} a step` };
  const changed = change(old);
  const words = `${verb} ${stepName(old)}`;
  if (JSON.stringify(changed) === JSON.stringify(old)) return { plan, words };
  return { plan: { ...plan, steps: plan.steps.map((step) => (step === old ? changed : step)) }, words };
}

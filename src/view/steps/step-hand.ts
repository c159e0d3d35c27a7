/** What fields do with the step they belong to: try while a value changes, keep or drop it, or do it in one go. */
import { changeStep } from '../../plan/edit-steps';
import type { Refusal } from '../../plan/plan';
import type { Desk } from '../desk.svelte';

type Patch = Readonly<Record<string, unknown>>;

export interface StepHand {
  readonly set: (patch: Patch) => readonly Refusal[];
  readonly attempt: (patch: Patch) => void;
  readonly keep: () => readonly Refusal[];
  readonly drop: () => void;
}

export function handOn(desk: Desk, id: () => string): StepHand {
  return {
    set: (patch) => desk.do(changeStep(desk.plan, id(), patch)),
    attempt: (patch) => desk.try(changeStep(desk.plan, id(), patch)),
    keep: () => desk.commit(),
    drop: () => desk.drop(),
  };
}

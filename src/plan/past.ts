/** What two plans have in common up to a day: a tile grown so far serves both. */
import { digest, planDigest } from './file';
import type { Plan } from './plan';
import { isOn, stepsInOrder } from './steps';

const bases = new WeakMap<Plan, string>();

/** All but steps and length: asked for each kept day of a run, so it is worked out once for each plan. */
function baseDigest(plan: Plan): string {
  const known = bases.get(plan) ?? planDigest({ ...plan, months: 36, steps: [] });
  bases.set(plan, known);
  return known;
}

/** The plan as it was known at the end of `day`: without later steps, whatever its length. */
export function pastDigest(plan: Plan, day: number): string {
  const done = plan.steps.filter((step) => isOn(step) && step.day <= day);
  return `${baseDigest(plan)} ${digest(JSON.stringify(done))}`;
}

/** First day on which two plans differ; +Infinity where they differ in their length or their looks only. */
export function firstDifference(one: Plan, other: Plan): number {
  if (baseDigest(one) !== baseDigest(other)) return 0;
  const [a, b] = [stepsInOrder(one), stepsInOrder(other)];
  for (let k = 0; k < Math.max(a.length, b.length); k++) {
    if (JSON.stringify(a[k]) === JSON.stringify(b[k])) continue;
    return Math.min(a[k]?.day ?? Infinity, b[k]?.day ?? Infinity);
  }
  return Infinity;
}

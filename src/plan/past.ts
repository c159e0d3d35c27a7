/** What two plans have in common up to a day: a tile grown so far serves both. */
import { planDigest } from './file';
import type { Plan } from './plan';
import { stepsInOrder } from './steps';

/** The plan as it was known at the end of `day`: without later steps, whatever its length. */
export function pastDigest(plan: Plan, day: number): string {
  const done = new Set(stepsInOrder(plan).filter((step) => step.day <= day));
  return planDigest({ ...plan, months: 36, steps: plan.steps.filter((step) => done.has(step)) });
}

/** First day on which two plans differ; +Infinity where they differ in their length or their looks only. */
export function firstDifference(one: Plan, other: Plan): number {
  if (one !== other && pastDigest({ ...one, steps: [] }, 0) !== pastDigest({ ...other, steps: [] }, 0))
    return 0;
  const [a, b] = [stepsInOrder(one), stepsInOrder(other)];
  for (let k = 0; k < Math.max(a.length, b.length); k++) {
    if (a[k] === b[k] || (a[k] && b[k] && JSON.stringify(a[k]) === JSON.stringify(b[k]))) continue;
    return Math.min(a[k]?.day ?? Infinity, b[k]?.day ?? Infinity);
  }
  return Infinity;
}

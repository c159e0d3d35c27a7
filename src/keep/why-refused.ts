import type { Refusal } from '../plan/plan';

/** Why stored work cannot be read, in one line. */
export function whyRefused(refusals: readonly Refusal[]): string {
  const [first] = refusals;
  return first ? `${first.where}: ${first.found}` : 'it could not be read';
}

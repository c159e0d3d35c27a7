/** What was done last, for a screen reader: its name, and how the piece stands that it changed. */
import type { Plan } from '../../plan/plan';
import { standing } from './describe';

export function happened(told: string, before: Plan, after: Plan): string {
  const old = new Set(before.pieces);
  const changed = after.pieces.filter((piece) => !old.has(piece));
  return changed.length === 1 ? `${told}, ${standing(changed[0])}.` : `${told}.`;
}

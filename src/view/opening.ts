/** What a first visit sees without doing anything: one seam that fuses and one that becomes a ridge. */
import type { Plan } from '../plan/plan';
import type { Desk } from './desk.svelte';
import type { Player } from './player.svelte';

const FROM_MONTH = 2;
const TO_MONTH = 8;

export interface Opening {
  /** The plan that it was made for: a change ends it. */
  readonly plan: Plan;
  /** The month at which it rests. */
  readonly month: number;
  /** A month to show beside that one; null where the months are played instead. */
  readonly besideMonth: number | null;
}

/** Plays the months; who asked for less motion sees the first and the last side by side. */
export function showOpening(desk: Desk, player: Player, isStill: boolean): Opening {
  desk.showMonth(isStill ? TO_MONTH : FROM_MONTH);
  if (!isStill) player.play(TO_MONTH);
  return { plan: desk.plan, month: TO_MONTH, besideMonth: isStill ? FROM_MONTH : null };
}

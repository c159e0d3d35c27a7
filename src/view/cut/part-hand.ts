/** What a pointer does with the parts of the chosen step. */
import type { Xy } from '../../plan/plan';
import type { Desk } from '../desk.svelte';
import { handleAt } from '../tile/handles';
import type { Hold } from '../tile/hold.svelte';
import { dropPart, partAt, partsOf, turnPart, type Part } from './parts';
import { turnHandle } from './turn-handle';

export type PartGrip =
  | { readonly kind: 'part' | 'turn part'; readonly part: Part }
  | { readonly kind: 'pan'; readonly taps: null };

const TURN_STEP_DEG = 15;

/** What a press takes hold of; a finger moves only the part that a tap has chosen. Null beside all parts. */
export function gripPart(desk: Desk, hold: Hold, px: Xy, finger: boolean): PartGrip | null {
  const chosen = hold.parts.find(({ piece }) => piece === desk.part);
  if (chosen && handleAt([turnHandle(chosen, hold.camera, hold.size)], px, finger))
    return { kind: 'turn part', part: chosen };
  const part = partAt(hold.parts, hold.mm(px));
  desk.part = part?.piece ?? null;
  if (part === null) return null;
  desk.select([]);
  hold.said = `Part ${part.piece}.`;
  return finger && chosen?.piece !== part.piece ? { kind: 'pan', taps: null } : { kind: 'part', part };
}

/** Draft of the part moved by a drag. */
export function slidePart(desk: Desk, part: Part, from: Xy, to: Xy): void {
  if (desk.step === null) return;
  const at: Xy = [part.at[0] + to[0] - from[0], part.at[1] + to[1] - from[1]];
  // the parts as they lie without the draft: tries must not pile up
  desk.try(dropPart(desk.plan, desk.step, partsOf(desk.plan, desk.step), part, at));
}

/** Draft of the part turned by a drag of its handle. */
export function swingPart(desk: Desk, part: Part, from: Xy, to: Xy, inSteps: boolean): void {
  if (desk.step === null) return;
  const turn = part.turnDeg + turnedDeg(part.at, from, to);
  const deg = inSteps ? Math.round(turn / TURN_STEP_DEG) * TURN_STEP_DEG : turn;
  desk.try(turnPart(desk.plan, desk.step, part, deg));
}

/** Degrees by which a hand has gone round a place. */
function turnedDeg(about: Xy, from: Xy, to: Xy): number {
  const angle = (place: Xy): number => Math.atan2(place[1] - about[1], place[0] - about[0]);
  return ((angle(to) - angle(from)) * 180) / Math.PI;
}

/** What the steps of a plan come to: their order, the pieces they bring and make, and where each piece stands. */
import { DEFAULTS } from '../model/defaults';
import { facesOf, type FaceOfLines } from '../units/faces';
import { tileOutline } from './outline';
import type { Piece, Plan, Step, StepOf, Tile, Xy } from './plan';

/** Kerf of an isolating cut, also where it says nothing of one. */
export function isolateKerfMm({ kerfMm }: StepOf<'isolate'>): number {
  return kerfMm ?? DEFAULTS.kerfMm.value;
}

export function isOn(step: Step): boolean {
  return step.on !== false;
}

/** By day, and on one day in the order of the list: as they act. */
export function byDay(steps: readonly Step[]): Step[] {
  return [...steps].sort((a, b) => a.day - b.day);
}

/** Those that are on, as they act. */
export function stepsInOrder(plan: Plan): Step[] {
  return byDay(plan.steps.filter(isOn));
}

/** The pieces of day 0 and those that steps add. */
export function piecesEver(plan: Plan): Piece[] {
  return [...plan.pieces, ...plan.steps.flatMap((step) => (step.kind === 'add' ? [step.piece] : []))];
}

const known = new WeakMap<
  readonly (readonly Xy[])[],
  { readonly tile: Tile; readonly faces: FaceOfLines[] }
>();

/** The faces of a recut, from top to bottom, then left to right. Steps that did not change share their faces. */
export function facesOfRecut(tile: Tile, { lines }: StepOf<'recut'>): readonly FaceOfLines[] {
  const before = known.get(lines);
  if (before?.tile.shape === tile.shape && before.tile.sizeMm === tile.sizeMm) return before.faces;
  const faces = facesOf(tileOutline(tile), lines);
  known.set(lines, { tile, faces });
  return faces;
}

export function faceName(step: Step, index: number): string {
  return `${step.id}.${index + 1}`;
}

/** Every name a step may call a piece by, also of steps that are switched off. */
export function pieceNames(plan: Plan): string[] {
  return [...piecesEver(plan).map(({ id }) => id), ...plan.steps.flatMap((step) => facesNamed(plan, step))];
}

function facesNamed(plan: Plan, step: Step): string[] {
  if (step.kind !== 'recut') return [];
  return facesOfRecut(plan.tile, step).map((_, k) => faceName(step, k));
}

/**
 * Numbers of the names, from 1, in the order in which pieces come: what a later step brings changes no earlier number,
 * so that a tile grown so far serves every plan that differs later.
 */
export function pieceNumbers(plan: Plan): ReadonlyMap<string, number> {
  const later = stepsInOrder(plan).flatMap((step) =>
    step.kind === 'add' ? [step.piece.id] : facesNamed(plan, step),
  );
  return new Map([...plan.pieces.map(({ id }) => id), ...later].map((name, k) => [name, k + 1]));
}

/** Where a piece's own origin lies and how far it is turned. */
export interface Standing {
  readonly at: Xy;
  readonly turnDeg: number;
}

/**
 * Where every piece stands, by name, before each step in turn: `visit` is called with the standings as they are when
 * the step acts, and each new standing after it.
 */
export function followPieces(
  plan: Plan,
  visit: (step: Step, standing: ReadonlyMap<string, Standing>) => void,
): ReadonlyMap<string, Standing> {
  const standing = new Map<string, Standing>();
  for (const { id, at, turnDeg } of plan.pieces) standing.set(id, { at, turnDeg });
  for (const step of stepsInOrder(plan)) {
    if (step.kind === 'recut')
      facesOfRecut(plan.tile, step).forEach(({ centroid }, k) =>
        standing.set(faceName(step, k), { at: centroid, turnDeg: 0 }),
      );
    visit(step, standing);
    if (step.kind === 'add') standing.set(step.piece.id, step.piece);
    if (step.kind === 'move') standing.set(step.piece, step);
    if (step.kind === 'recut') for (const placed of step.then) standing.set(placed.piece, placed);
  }
  return standing;
}

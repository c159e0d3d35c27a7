/** A step of each kind as it is first put into a plan: useful as it stands, and easy to change. */
import { DEFAULTS } from '../../model/defaults';
import { nextStepId } from '../../plan/edit-steps';
import { nextPieceId } from '../../plan/edit';
import { gridLines } from '../../plan/patterns';
import type { PlainPiece, Plan, Step, StepKind, Xy } from '../../plan/plan';
import { rounded } from '../../plan/rounding';
import { piecesEver } from '../../plan/steps';

const KERF_MM = DEFAULTS.kerfMm.value;

/** Null where there is nothing to do it to. */
export function draftStep(plan: Plan, kind: StepKind, day: number): Step | null {
  const dated = { id: nextStepId(plan), day };
  const first = piecesEver(plan).at(0);
  const half = plan.tile.sizeMm / 2;
  switch (kind) {
    case 'trim':
      return { ...dated, kind, widthMm: 3 };
    case 'recut':
      return {
        ...dated,
        kind,
        lines: gridLines(plan.tile, gridSpacingMm(plan), 0),
        kerfMm: KERF_MM,
        then: [],
      };
    case 'isolate':
      return { ...dated, kind, around: ringOf([0, 0], 10, true), kerfMm: KERF_MM };
    case 'scrape':
      return { ...dated, kind, along: [[0, -half], [0, half]], widthMm: 2 }; // prettier-ignore
    case 'move':
      return first ? { ...dated, kind, piece: first.id, at: first.at, turnDeg: 90 } : null;
    case 'lift':
      return first ? { ...dated, kind, piece: first.id } : null;
    case 'add':
      return { ...dated, kind, piece: discFromStock(plan) };
  }
}

export function discFromStock(plan: Plan): PlainPiece {
  return {
    id: nextPieceId({ ...plan, pieces: piecesEver(plan) }),
    variety: plan.varieties[0].id,
    at: [0, 0],
    turnDeg: 0,
    disc: { diameterMm: 10 },
  };
}

/** About eight parts across. */
export function gridSpacingMm({ tile }: Plan): number {
  return Math.max(4, Math.round(tile.sizeMm / 8));
}

const SIDES = 32;

/** A round or square outline about a place, its least width across. */
export function ringOf([x, y]: Xy, acrossMm: number, isRound: boolean): Xy[] {
  const half = acrossMm / 2;
  if (!isRound)
    return [[x - half, y - half], [x + half, y - half], [x + half, y + half], [x - half, y + half]]; // prettier-ignore
  return Array.from({ length: SIDES }, (_, k): Xy => {
    const turn = (2 * Math.PI * k) / SIDES;
    return [rounded(x + half * Math.cos(turn)), rounded(y + half * Math.sin(turn))];
  });
}

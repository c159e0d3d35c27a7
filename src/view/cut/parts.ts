/** What the chosen step sets somewhere, as it lies on the tile: the parts of a recut, a moved piece, an added one. */
import { placePart, swapParts } from '../../plan/edit-steps';
import type { Edit } from '../../plan/edit';
import { ownOutline } from '../../plan/outline';
import type { Plan, Step, Xy } from '../../plan/plan';
import { faceName, facesOfRecut, followPieces, piecesEver } from '../../plan/steps';
import { area, boxOf, isInside, turnedAndShifted, type Polygon } from '../../units/polygon';

export interface Part {
  readonly piece: string;
  readonly at: Xy;
  readonly turnDeg: number;
  /** On the tile; of a part with holes the outer ring comes first. */
  readonly rings: readonly Polygon[];
}

/** Sizes of parts that may change places differ by no more than this, mm. */
const ALIKE_MM = 0.1;

export function partsOf(plan: Plan, id: string | null): Part[] {
  const step = plan.steps.find((one) => one.id === id);
  if (!step) return [];
  if (step.kind === 'recut') {
    const placed = new Map(step.then.map((one) => [one.piece, one]));
    return facesOfRecut(plan.tile, step).map(({ rings, centroid }, k) => {
      const piece = faceName(step, k);
      const { at, turnDeg } = placed.get(piece) ?? { at: centroid, turnDeg: 0 };
      return { piece, at, turnDeg, rings: rings.map((ring) => laid(about(ring, centroid), at, turnDeg)) };
    });
  }
  if (step.kind !== 'move' && step.kind !== 'add') return [];
  const { at, turnDeg } = step.kind === 'add' ? step.piece : step;
  const piece = step.kind === 'add' ? step.piece.id : step.piece;
  return ownRings(plan, step, piece).map((ring) => ({
    piece,
    at,
    turnDeg,
    rings: [laid(ring, at, turnDeg)],
  }));
}

/** The outline of the piece that a trim or a lift is of, where it stands when the step acts; of others nothing. */
export function pieceTaken(plan: Plan, id: string | null): Polygon[] {
  const step = plan.steps.find((one) => one.id === id);
  const name = step?.kind === 'trim' || step?.kind === 'lift' ? step.piece : undefined;
  if (!step || name === undefined) return [];
  // a step that is switched off acts at no time, and is drawn as if it were on
  const asOn = { ...plan, steps: plan.steps.map((one) => (one === step ? { ...one, on: true } : one)) };
  let rings: Polygon[] = [];
  followPieces(asOn, (one, standings) => {
    const standing = one.id === id ? standings.get(name) : undefined;
    if (standing) rings = ownRings(plan, step, name).map((ring) => laid(ring, standing.at, standing.turnDeg));
  });
  return rings;
}

/** A piece's outline about its own origin: as it was set, or as it was cut. */
function ownRings(plan: Plan, step: Step, name: string): Polygon[] {
  if (step.kind === 'add') return [ownOutline(step.piece)];
  const set = piecesEver(plan).find(({ id }) => id === name);
  if (set) return [ownOutline(set)];
  const cut = plan.steps.find((one) => one.kind === 'recut' && name.startsWith(`${one.id}.`));
  if (cut?.kind !== 'recut') return [];
  return facesOfRecut(plan.tile, cut)
    .filter((_, k) => faceName(cut, k) === name)
    .map(({ rings, centroid }) => about(rings[0], centroid));
}

function about(ring: Polygon, [x, y]: Xy): Polygon {
  return ring.map(([cx, cy]): Xy => [cx - x, cy - y]);
}

function laid(own: Polygon, at: Xy, turnDeg: number): Polygon {
  return turnedAndShifted(own, turnDeg, at);
}

/** The part at a place, the last of those that lie there. */
export function partAt(parts: readonly Part[], at: Xy): Part | null {
  const on = ({ rings }: Part): boolean => rings.filter((ring) => isInside(ring, at)).length % 2 === 1;
  return parts.findLast(on) ?? null;
}

/** Parts that may change places with one: of its form and size. */
export function likeParts(parts: readonly Part[], part: Part): Part[] {
  return parts.filter((one) => one.piece !== part.piece && isAlike(one, part));
}

/** The part moved to a place; onto the place of one that is like it, the two are swapped. */
export function dropPart(plan: Plan, id: string, parts: readonly Part[], part: Part, at: Xy): Edit {
  const other = likeParts(parts, part).find((one) => isNear(one.at, at, sizeOf(one) / 4));
  if (other) return swapParts(plan, id, part.piece, other.piece);
  return placePart(plan, id, part.piece, { at, turnDeg: part.turnDeg });
}

function isNear(a: Xy, b: Xy, mm: number): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) < mm;
}

function ownBox({ rings, at, turnDeg }: Part): Xy {
  const { minX, maxX, minY, maxY } = boxOf(turnedAndShifted(about(rings[0], at), -turnDeg, [0, 0]));
  return [maxX - minX, maxY - minY];
}

/** Its lesser width. */
function sizeOf(part: Part): number {
  return Math.min(...ownBox(part));
}

function isAlike(one: Part, other: Part): boolean {
  const [a, b] = [ownBox(one), ownBox(other)];
  const isAsLarge = Math.abs(area(one.rings[0]) - area(other.rings[0])) < ALIKE_MM * (a[0] + a[1]);
  return isAsLarge && Math.abs(a[0] - b[0]) < ALIKE_MM && Math.abs(a[1] - b[1]) < ALIKE_MM;
}

export function turnPart(plan: Plan, id: string, part: Part, turnDeg: number): Edit {
  return placePart(plan, id, part.piece, { at: part.at, turnDeg }, 'Turn');
}

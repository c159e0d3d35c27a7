/**
 * A graft piece out of what a hand drew over a photo: the faces of its lines are patches, their borders seams.
 * Scale only: a photo taken askew gives a piece that is askew.
 */
import { facesOf, somewhereInside, type FaceOfLines } from '../units/faces';
import { boxOf, isInside, lengthOf, squaredToSegment, type Point, type Polygon } from '../units/polygon';
import { chained } from './graft-seams';
import { changeNote, type Edit } from './edit';
import { MAX_VARIETIES, type GraftPiece, type Plan, type Tile, type Variety, type Xy } from './plan';
import { rounded } from './rounding';

export const SEAM_KINDS = ['fused', 'ridge', 'lapped', 'dead'] as const;
export type SeamKind = (typeof SEAM_KINDS)[number];

/** A face that is no tissue. */
const NO_TISSUE = '';

/** From two points of a photo a known distance apart; null where they are one. */
export function mmPerPxOf([from, to]: readonly [Point, Point], distanceMm: number): number | null {
  const px = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return px > 0 && distanceMm > 0 ? distanceMm / px : null;
}

export function faceAt(faces: readonly FaceOfLines[], point: Point): number {
  return faces.findIndex(({ rings }) => rings.filter((ring) => isInside(ring, point)).length % 2 === 1);
}

/** What two faces have in common, without a break. */
export interface Border {
  readonly faces: readonly [number, number];
  readonly along: readonly Point[];
  readonly lengthMm: number;
  /** The middle of its middle side. */
  readonly at: Point;
}

/** All borders, those of the first faces first. */
export function bordersOf(faces: readonly FaceOfLines[]): Border[] {
  const owner = new Map<string, number>();
  const key = ([ax, ay]: Point, [bx, by]: Point): string => `${ax} ${ay} ${bx} ${by}`;
  const sides = faces.flatMap(({ rings }, face) =>
    rings.flatMap((ring) => ring.map((from, k) => ({ face, from, to: ring[(k + 1) % ring.length] }))),
  );
  for (const { face, from, to } of sides) owner.set(key(from, to), face);
  const common = new Map<string, { faces: [number, number]; sides: [Point, Point][] }>();
  for (const { face, from, to } of sides) {
    // each side is met from both faces: told from the first
    const other = owner.get(key(to, from));
    if (other === undefined || other <= face) continue;
    const name = `${face} ${other}`;
    const known = common.get(name) ?? { faces: [face, other], sides: [] };
    known.sides.push([from, to]);
    common.set(name, known);
  }
  return [...common.values()].flatMap(({ faces: both, sides: own }) =>
    chained(own).map((along) => {
      const k = Math.floor((along.length - 1) / 2);
      const [[x, y], [nx, ny]] = [along[k], along[k + 1]];
      return { faces: both, along, lengthMm: lengthOf(along), at: [(x + nx) / 2, (y + ny) / 2] as const };
    }),
  );
}

export function awayFrom(along: readonly Point[], point: Point): number {
  let least = Infinity;
  for (let k = 0; k + 1 < along.length; k++)
    least = Math.min(least, squaredToSegment(point, along[k], along[k + 1]));
  return Math.sqrt(least);
}

export interface Drawn {
  readonly faces: readonly FaceOfLines[];
  /** By face: the id of a variety, or NO_TISSUE. */
  readonly varieties: readonly string[];
  readonly borders: readonly Border[];
  /** By border. */
  readonly kinds: readonly SeamKind[];
  /** By border: of a lapped one the variety that lies over the other, null where that is not known. */
  readonly overs: readonly (string | null)[];
}

/** About the middle of its box, at the tile's centre. Null where no face is tissue. */
export function drawnGraft(
  { faces, varieties, borders, kinds, overs }: Drawn,
  id: string,
): GraftPiece | null {
  const patches = faces.flatMap((face, k) =>
    varieties[k] === NO_TISSUE
      ? []
      : withoutHoles(face).map((outline) => ({ variety: varieties[k], outline })),
  );
  if (patches.length === 0) return null;
  const box = boxOf(patches.flatMap(({ outline }) => outline));
  const middle: Point = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const placed = ([x, y]: Point): Xy => [rounded(x - middle[0]), rounded(y - middle[1])];
  const seams = borders.flatMap(({ along }, k) => {
    const is = kinds[k];
    if (is === 'fused' || !isSeam(borders[k], varieties)) return [];
    const over = is === 'lapped' ? overs[k] : null;
    return [{ along: along.map(placed), is, ...(over !== null && { over }) }];
  });
  return {
    id,
    at: [0, 0],
    turnDeg: 0,
    patches: patches.map(({ variety, outline }) => ({ variety, outline: outline.map(placed) })),
    ...(seams.length > 0 && { seams }),
  };
}

/** Whether two varieties meet there. */
export function isSeam({ faces: [a, b] }: Border, varieties: readonly string[]): boolean {
  return varieties[a] !== varieties[b] && varieties[a] !== NO_TISSUE && varieties[b] !== NO_TISSUE;
}

/** A patch has one outline: what has holes is parted by an upright line through each. */
function withoutHoles({ rings }: FaceOfLines): Polygon[] {
  const [outer, ...holes] = rings;
  if (holes.length === 0) return [outer];
  const { minX, maxX } = boxOf(holes[0]);
  const { minY, maxY } = boxOf(outer);
  const x = (minX + maxX) / 2;
  const cut: Point[] = [[x, minY - 1], [x, maxY + 1]]; // prettier-ignore
  const parts = facesOf(outer, [...holes.map((hole) => [...hole, hole[0]]), cut]);
  return parts
    .filter((part) => faceAt([{ ...part, rings }], somewhereInside(part.rings)) === 0)
    .flatMap(withoutHoles);
}

export interface DrawnSet {
  readonly piece: GraftPiece;
  /** Varieties that the plan may not have yet. */
  readonly varieties: readonly Variety[];
  readonly tile: Tile;
  /** In place of the pieces and steps that are there. */
  readonly instead: boolean;
}

/** One edit: the piece with the varieties that it brings. */
export function setDrawn(plan: Plan, { piece, varieties, tile, instead }: DrawnSet): Edit {
  const used = new Set(piece.patches.map(({ variety }) => variety));
  const fresh = varieties.filter(
    ({ id }) => used.has(id) && !plan.varieties.some((variety) => variety.id === id),
  );
  // a note tells of the pieces that go
  const kept = instead ? changeNote(plan, '').plan : plan;
  return {
    plan: {
      ...kept,
      tile,
      varieties: [...plan.varieties, ...fresh].slice(0, MAX_VARIETIES),
      pieces: instead ? [piece] : [...plan.pieces, piece],
      steps: instead ? [] : plan.steps,
    },
    words: `Set piece ${piece.id} from a photo`,
  };
}

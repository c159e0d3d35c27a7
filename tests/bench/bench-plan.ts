/** Plans that the bench grows. */
import type { Pair, Piece, Plan, Variety } from '../../src/plan/plan';

const RIM_MM_PER_MONTH = 3;

export function variety(id: string, aggression: number): Variety {
  return { id, name: id, colour: '#336644', rimMmPerMonth: RIM_MM_PER_MONTH, aggression };
}

export function disc(id: string, varietyId: string, x: number, y: number, diameterMm: number): Piece {
  return { id, variety: varietyId, at: [x, y], turnDeg: 0, disc: { diameterMm } };
}

interface BenchPlan {
  readonly sizeMm: number;
  readonly varieties: Variety[];
  readonly pairs: Pair[];
  readonly pieces: Piece[];
  readonly months: number;
}

export function planOf({ sizeMm, ...rest }: BenchPlan): Plan {
  return { seambench: 1, name: 'bench', tile: { shape: 'square', sizeMm }, steps: [], ...rest };
}

/** Four pieces of three varieties in the middle of a tile: fronts, seams of every kind, lapping. */
export function fourPieces(sizeMm: number, months: number): Plan {
  return planOf({
    sizeMm,
    varieties: [variety('a', 0.2), variety('b', 0.2), variety('c', 0.8)],
    pairs: [
      { a: 'a', b: 'b', acceptance: 0.7 },
      { a: 'a', b: 'c', acceptance: 0.3 },
      { a: 'b', b: 'c', acceptance: 0.3 },
    ],
    pieces: [
      disc('p1', 'a', -18, -18, 10),
      disc('p2', 'b', 18, -18, 10),
      disc('p3', 'c', -18, 18, 10),
      disc('p4', 'a', 18, 18, 10),
    ],
    months,
  });
}

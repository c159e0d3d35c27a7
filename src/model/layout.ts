import type { Cut, KnownSeam } from './cuts';

/**
 * All that the engine is told. No names: varieties are 1..8, pieces 1..n in the plan's order.
 * Grids are row-major, `columns` x `rows`, with one border cell on every side that is never on the tile.
 * The centre of cell (c, r) lies at ((c - (columns-1)/2) * cellMm, (r - (rows-1)/2) * cellMm) from the tile's centre.
 */
export interface Layout extends Rules {
  /** 1 on the tile, 0 beside it. */
  readonly inside: Uint8Array;
  /** Piece number of each cell on day 0, 0 for none. */
  readonly piece: Uint16Array;
  /** Day at which the rim stands at a piece's cell: healing + signed distance to the outline / rim rate; may be negative. */
  readonly startDay: Float32Array;
  readonly pieces: PieceTable;
}

/** What of it a run needs once the pieces are set: all but the grids, which can be forgotten then. */
export interface Rules {
  readonly columns: number;
  readonly rows: number;
  readonly cellMm: number;
  readonly varieties: number;
  /** mm per day, by variety; index 0 unused. */
  readonly rimMmPerDay: Float64Array;
  readonly aggression: Float64Array;
  /** Pair tables, index pairIndex(a, b), symmetric. */
  readonly pairs: PairTables;
  readonly rates: Rates;
  /** In the order in which they act. */
  readonly cuts: readonly Cut[];
  /** Seams known between patches of the grafts of day 0. */
  readonly seams: readonly KnownSeam[];
  readonly days: number;
}

/** The pieces of day 0 by number; index 0 unused. */
export interface PieceTable {
  readonly count: number;
  readonly variety: Uint8Array;
  /** Day on which the cut edges have healed; 0 for a grown rim. */
  readonly healedDay: Float64Array;
  /** Day until which the edges count as freshly cut; -Infinity for a grown rim. */
  readonly freshUntilDay: Float64Array;
  /** Number of its name: patches of one graft share it. */
  readonly name: Uint16Array;
  /** Pieces of one number came fused, as one graft; 0 for none. */
  readonly graft: Uint16Array;
}

/** What two varieties do to each other. Each array has 81 numbers, see pairIndex. */
export interface PairTables {
  readonly acceptance: Float64Array;
  readonly consistency: Float64Array;
  readonly revertPerDay: Float64Array;
  /** Lateral step of a birth in polyps: the z of model/inherit.ts. */
  readonly scatter: Float64Array;
  readonly stray: Float64Array;
  readonly strayReachMm: Float64Array;
  readonly weave: Float64Array;
  readonly weaveReachMm: Float64Array;
  readonly lean: Float64Array;
  readonly turnoverPerDay: Float64Array;
}

/** Numbers of the rules that hold for the whole tile. */
export interface Rates {
  readonly roughness: number;
  readonly polypMm: number;
  /** Displacement of polyp sites from their square lattice, as a share of polypMm; 0 makes the lattice exact. */
  readonly polypJitter: number;
  readonly verdictDelayDays: number;
  readonly zipMmPerDay: number;
  /** Nuclei of a verdict per mm of seam and day. */
  readonly nucleiPerMmDay: number;
  readonly rimFactor: number;
  readonly deadShare: number;
  /** Of ridges, those that look fused from above at first. */
  readonly veiledShare: number;
  readonly lapGain: number;
  readonly lapMmPerDay: number;
  readonly stingMm: number;
  readonly ridgeMmPerDay: number;
  readonly ridgeCapMm: number;
  /** Of edges cut by a step. */
  readonly healingDays: number;
  /** Days after healing in which a cut edge counts as freshly cut. */
  readonly freshCutDays: number;
}

export const PAIR_STRIDE = 9;

export function pairIndex(a: number, b: number): number {
  return a * PAIR_STRIDE + b;
}

/** Millimetres of seam by outcome; the five sum to lengthMm. */
export interface SeamMm {
  readonly lengthMm: number;
  readonly fusedMm: number;
  readonly ridgeMm: number;
  readonly lappedMm: number;
  readonly deadMm: number;
  readonly undecidedMm: number;
}

export type PairReading = SeamMm & { readonly a: string; readonly b: string };

/** What is read off a tile at a month. Null where a quantity does not exist, never 0 in its place. */
export interface Reading {
  readonly seed: string;
  readonly month: number;
  readonly coverMm2: number;
  /** By variety id; share of the tissue. */
  readonly varieties: Readonly<Record<string, { readonly areaMm2: number; readonly share: number }>>;
  /** How evenly the varieties share the tissue, 0 to 1; null for one variety. */
  readonly balance: number | null;
  /** Stretches between pieces of different varieties. */
  readonly seam: SeamMm;
  /** Pairs that touch, in the plan's order of varieties. */
  readonly pairs: readonly PairReading[];
  readonly swirl: number | null;
  readonly veinWidthMm: number | null;
  /** Mean over ridge contacts by length, and the greatest. */
  readonly ridgeHeightMm: number | null;
  readonly ridgeMaxMm: number | null;
  readonly firstTouchDay: number | null;
  readonly settledDay: number | null;
  /** Steps done so far, in the order in which they were done. */
  readonly steps: readonly StepReading[];
  readonly hash: string;
}

/** What a step took off the tile. */
export interface StepReading {
  readonly id: string;
  readonly day: number;
  /** Fragments that came off whole, and those that hold two colours of at least 1 mm2 each. */
  readonly cuttings: number;
  readonly twoColoured: number;
  /** By variety id: what came off as cuttings, and what was lost to the saw, scraped off or crushed. */
  readonly cutMm2: Readonly<Record<string, number>>;
  readonly lostMm2: Readonly<Record<string, number>>;
  /** Placements for which no tissue was there. */
  readonly skipped: number;
}

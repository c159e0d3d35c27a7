/** What a step took off the tile: nothing is lost without being counted. */

export interface Work {
  /** The step's id in the plan. */
  readonly step: string;
  /** As the plan says. */
  readonly day: number;
  /** Fragments that came off whole, and those among them that hold two colours of at least a square millimetre each. */
  cuttings: number;
  twoColoured: number;
  /** Living cells that came off as cuttings, by variety; index 0 unused. */
  readonly cutCells: Uint32Array;
  /** Living cells lost: to the saw, scraped off, off the tile's edge, on top of other tissue. */
  readonly lostCells: Uint32Array;
  /** Placements of which nothing was there to be placed. */
  skipped: number;
}

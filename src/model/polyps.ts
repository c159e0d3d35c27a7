/** Sites of polyps on a jittered square lattice anchored at the tile's centre, and what each polyp is. */
export interface Polyps {
  /** Lattice boxes, row-major; polyp number = row * columns + column. */
  readonly columns: number;
  readonly rows: number;
  readonly spacingMm: number;
  /** Place from the tile's centre. */
  readonly xMm: Float64Array;
  readonly yMm: Float64Array;
}

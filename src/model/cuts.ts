/**
 * What is done to a tile at a date, as the engine is told it: lengths in cells, places as [column, line] of the grid,
 * days. Names are numbers (Layout.pieces.name); plan/cuts.ts makes all this from the plan's steps.
 */
export type GridPoint = readonly [column: number, line: number];
export type GridPath = readonly GridPoint[];

/** Where a piece goes: turned about `from`, which comes to lie on `to`. */
export interface Rigid {
  readonly cos: number;
  readonly sin: number;
  readonly from: GridPoint;
  readonly to: GridPoint;
}

/** A face of the cut lines together with the tile's edge: inside its rings by the even-odd rule. */
export interface Face {
  readonly name: number;
  readonly rings: readonly GridPath[];
}

/** Tissue that comes to the tile, cell by cell. */
export interface Fresh {
  readonly name: number;
  readonly variety: number;
  readonly cells: Int32Array;
  /** Days from the step's day until the rim stands at each cell: healing less the depth over the rim rate. */
  readonly startDays: Float32Array;
  readonly healingDays: number;
  /** Days after healing in which the edge counts as freshly cut; -Infinity for a grown rim. */
  readonly freshDays: number;
  /** Patches of one number came fused. */
  readonly graft: number;
}

/** Seams known between the patches of a graft: contacts within reach of the path are of this fate. */
export interface KnownSeam {
  readonly along: GridPath;
  readonly fate: number;
  /** Of a lapped one the variety that is known to lie over the other, else 0. */
  readonly over: number;
}

interface Dated {
  /** The step's id in the plan. */
  readonly step: string;
  /** Acts at the start of this day; day 0 is the tile as set. */
  readonly day: number;
}

export type Cut = Dated &
  (
    | {
        readonly kind: 'trim';
        readonly width: number;
        /** Null for all round. */
        readonly along: GridPath | null;
        /** 0 for every piece. */
        readonly name: number;
      }
    | {
        readonly kind: 'recut';
        readonly lines: readonly GridPath[];
        readonly halfKerf: number;
        readonly faces: readonly Face[];
        readonly placed: readonly { readonly name: number; readonly rigid: Rigid }[];
        /** Faces of one colony meet again as strangers do. */
        readonly coin: boolean;
      }
    | { readonly kind: 'move'; readonly name: number; readonly rigid: Rigid }
    | { readonly kind: 'lift'; readonly name: number }
    | { readonly kind: 'add'; readonly fresh: readonly Fresh[]; readonly seams: readonly KnownSeam[] }
    | { readonly kind: 'isolate'; readonly around: GridPath; readonly halfKerf: number }
    | { readonly kind: 'scrape'; readonly along: GridPath; readonly halfWidth: number }
  );

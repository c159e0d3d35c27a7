import type { Layout } from './layout';
import type { Polyps } from './polyps';

/** Variety of a cell that died back: bare skeleton, never regrown. */
export const BARE = 255;

/** What a stretch of seam is. The numbers are those of Frame.seam and of the seam table. */
export const FATE = { none: 0, undecided: 1, fused: 2, ridge: 3, lapped: 4, dead: 5 } as const;

/** Bits of State.flags. */
export const FLAG = { inside: 1, queued: 2, lapped: 4 } as const;

/**
 * One row per seam cell: a cell with a 4-neighbour of a piece of another variety.
 * Rows are numbered from 1; State.row names a cell's row. A row whose cell is no longer on a seam has cell -1.
 */
export interface SeamTable {
  /** Rows in use, row 0 included. */
  count: number;
  cell: Int32Array;
  /** The cell across: least arrival, then least index, at first contact. */
  partner: Int32Array;
  /** Origin on this side and across, as they were at first contact. */
  own: Uint16Array;
  other: Uint16Array;
  /** Day of contact: the later arrival of the two cells. */
  touched: Float32Array;
  /** Day of the verdict; +Infinity while undecided. */
  settled: Float32Array;
  fate: Uint8Array;
  /** Index in the nucleus table, -1 while undecided. */
  nucleus: Int32Array;
}

/** Points at which a verdict fell; the seam around took it by zip. */
export interface NucleusTable {
  count: number;
  day: Float32Array;
  fate: Uint8Array;
  /** Origins on the two sides, smaller first. */
  originA: Uint16Array;
  originB: Uint16Array;
  /** Variety that covers where lapped, that weakens where dead (0: both alike); else 0. */
  winner: Uint8Array;
}

/**
 * The tile on one day. Only model/ writes it.
 * Dense arrays, bytes a cell: arrival 4, due 4, polyp 4, row 4, origin 2, variety 1, via 1, flags 1 = 21.
 */
export interface State {
  readonly layout: Layout;
  /** Days grown so far: 0 is the tile as set. */
  day: number;
  /** Day the rim reached the cell (or lapping tissue, later); +Infinity where none has. */
  readonly arrival: Float32Array;
  /** Day at which tissue will reach the cell if nothing changes; +Infinity for none. */
  readonly due: Float32Array;
  /** Nearest polyp site, -1 until asked for. */
  readonly polyp: Int32Array;
  /** Row in the seam table, 0 for none. */
  readonly row: Int32Array;
  /** Piece whose rim reached the cell, 0 for none; kept when the cell dies. */
  readonly origin: Uint16Array;
  /** 0 empty, 1..8, 255 bare. */
  readonly variety: Uint8Array;
  /** Which triangle of neighbours gave `due`. */
  readonly via: Uint8Array;
  readonly flags: Uint8Array;
  /** Root of each origin's colony: joined when a contact fuses, the smaller number wins. */
  readonly colony: Uint16Array;
  readonly polyps: Polyps;
  readonly seam: SeamTable;
  readonly nuclei: NucleusTable;
}

/**
 * The tile on one day: flat arrays, each with type, unit and bytes. Only model/ writes them.
 */
import { dayOfMonth } from '../units/quantity';
import { createCalendar, type Calendar } from './calendar';
import { doubled } from './cell-list';
import { createCovered, type CoveredLog } from './covered';
import type { Layout, Rules } from './layout';
import { keysOf, type Keys } from './noise';
import { addPiece, createPieces, type NewPiece, type Pieces } from './pieces';
import { createPolyps, type Polyps } from './polyps';
import { createSeam, createNuclei, type NucleusTable, type SeamTable } from './seam-table';
import type { Work } from './works';
import { createZip, type Zip } from './zip';

/** Variety of a cell that died back: bare skeleton, never regrown. */
export const BARE = 255;

/** Bits of State.flags. */
export const FLAG = {
  /** On the tile. */
  inside: 1,
  /** Its due day must be worked out again. */
  stale: 2,
  /** Taken by lapping, at `arrival`. */
  lapped: 4,
  /** Held by a piece on day 0. */
  set: 8,
  /** Has had tissue beside it. */
  edge: 16,
  /** About to be filled in this sub-step. */
  taken: 32,
} as const;

/** Dense arrays, bytes a cell: arrival 4, due 4, polyp 4, row 4, origin 2, variety 1, via 1, flags 1 = 21. */
export interface State {
  readonly layout: Rules;
  keys: Keys;
  /** Offsets in cells of the eight neighbours: E, SE, S, SW, W, NW, N, NE. */
  readonly ring: Int32Array;
  /** Days grown so far: 0 is the tile as set. */
  day: number;
  /** Day the rim reached the cell (or lapping tissue, later); +Infinity where none has. */
  readonly arrival: Float32Array;
  /** Day at which tissue will reach an empty cell, or lap a full one, if nothing changes; +Infinity for none. */
  readonly due: Float32Array;
  /** 1 + number of the nearest polyp, 0 until asked for. */
  readonly polyp: Int32Array;
  /** Row in the seam table, 0 for none. */
  readonly row: Int32Array;
  /** Piece whose rim reached the cell, 0 for none; kept when the cell dies. */
  readonly origin: Uint16Array;
  /** 0 empty, 1..8, 255 bare. */
  readonly variety: Uint8Array;
  /** Which neighbours gave `due`: see front.ts. */
  readonly via: Uint8Array;
  readonly flags: Uint8Array;
  readonly pieces: Pieces;
  /** Root of each piece's colony: joined when a contact fuses, the smaller number wins. */
  colony: Uint16Array;
  /** By root: bit v is set where the colony holds variety v. */
  colonyVarieties: Uint16Array;
  readonly polyps: Polyps;
  readonly seam: SeamTable;
  readonly nuclei: NucleusTable;
  /** What lies beneath lapped cells. */
  covered: CoveredLog;
  /** Nuclei, and fused ones among them, so far by pair of varieties: the urn of fate.ts. */
  readonly urnDrawn: Int32Array;
  readonly urnFused: Int32Array;
  /** Empty cells by the day they are due, and full cells by the day they are lapped. */
  readonly growing: Calendar;
  readonly lapping: Calendar;
  readonly zip: Zip;
  /** Rows that may still be undecided. */
  readonly open: number[];
  /** winner * 65536 + loser of origins that lap, and the first nucleus that said so. */
  readonly lapPairs: Map<number, number>;
  /** smaller * 65536 + larger of parted pieces that have met again, and the verdict that rejoins them. */
  readonly kinNuclei: Map<number, number>;
  /** What the steps so far took off, in the order they were done. */
  readonly works: Work[];
  /** Set when two colonies joined: due days beside them change. */
  joined: boolean;
}

/** So long can a run be made longer from any of its days. */
const LONGEST_DAYS = dayOfMonth(36);

/** What of a layout a run needs once the pieces are set. */
export function rulesOf({
  inside: _inside,
  piece: _piece,
  startDay: _startDay,
  pieces: _pieces,
  ...rules
}: Layout): Rules {
  return rules;
}

export function createState(whole: Layout, seed: string): State {
  const { inside, pieces } = whole;
  const layout = rulesOf(whole);
  const c = layout.columns;
  const cells = c * layout.rows;
  const keys = keysOf(seed);
  const colony = new Uint16Array(pieces.count + 1);
  const colonyVarieties = new Uint16Array(pieces.count + 1);
  for (let o = 1; o <= pieces.count; o++) {
    colony[o] = o;
    colonyVarieties[o] = 1 << pieces.variety[o];
  }
  const flags = new Uint8Array(cells);
  for (let i = 0; i < cells; i++) if (inside[i] === 1) flags[i] = FLAG.inside;
  return {
    layout,
    keys,
    ring: Int32Array.of(1, c + 1, c, c - 1, -1, -c - 1, -c, -c + 1),
    day: 0,
    arrival: new Float32Array(cells).fill(Infinity),
    due: new Float32Array(cells).fill(Infinity),
    polyp: new Int32Array(cells),
    row: new Int32Array(cells),
    origin: new Uint16Array(cells),
    variety: new Uint8Array(cells),
    via: new Uint8Array(cells),
    flags,
    pieces: createPieces(pieces),
    colony,
    colonyVarieties,
    polyps: createPolyps(layout, keys),
    seam: createSeam(),
    nuclei: createNuclei(),
    covered: createCovered(),
    urnDrawn: new Int32Array(81),
    urnFused: new Int32Array(81),
    growing: createCalendar(LONGEST_DAYS),
    lapping: createCalendar(LONGEST_DAYS),
    zip: createZip(),
    open: [],
    lapPairs: new Map(),
    kinNuclei: new Map(),
    works: [],
    joined: false,
  };
}

/** Joins the colonies of two origins; says whether they were two. */
export function joinColonies(state: State, a: number, b: number): boolean {
  const { colony, colonyVarieties } = state;
  const rootA = colony[a];
  const rootB = colony[b];
  if (rootA === rootB) return false;
  const keep = Math.min(rootA, rootB);
  const drop = Math.max(rootA, rootB);
  for (let o = 1; o <= state.pieces.count; o++) if (colony[o] === drop) colony[o] = keep;
  colonyVarieties[keep] |= colonyVarieties[drop];
  state.joined = true;
  return true;
}

/** A piece made by a step, in a colony of its own, which holds nothing yet. Its number. */
export function newPiece(state: State, piece: NewPiece): number {
  const number = addPiece(state.pieces, piece);
  if (number >= state.colony.length) {
    state.colony = doubled(state.colony);
    state.colonyVarieties = doubled(state.colonyVarieties);
  }
  state.colony[number] = number;
  state.colonyVarieties[number] = 0;
  return number;
}

/** Pieces put elsewhere, by nearest cell: what lands beside the tile or on other tissue is lost, and nothing is won. */
import { marked, ownPlaces } from './cell-list';
import { clearCell, edgeOf, isLiving, standBehind } from './clear';
import type { Rigid } from './cuts';
import { FLAG, type State } from './state';
import type { Work } from './works';

export interface Moved {
  /** Group of renumber.ts. */
  readonly group: number;
  readonly rigid: Rigid;
}

/** A cell of a piece on its way. */
interface Held {
  readonly cell: number;
  readonly arrival: number;
  readonly origin: number;
  readonly variety: number;
  readonly flags: number;
}

/**
 * Moves all groups at once, so that two may change places; where two would land on one cell the first in the list has
 * it. `groupOf` tells a cell's group. Returns for every cell the cell its tissue came from: itself where it stayed.
 */
export function relocate(
  state: State,
  moves: readonly Moved[],
  groupOf: (cell: number) => number,
  work: Work,
): Int32Array {
  const { variety, flags, arrival, origin } = state;
  const from = ownPlaces(variety.length);
  const held = new Map<number, Map<number, Held>>();
  for (const { group } of moves) held.set(group, new Map());
  for (let i = 0; i < variety.length; i++) {
    if (variety[i] === 0) continue;
    held.get(groupOf(i))?.set(i, {
      cell: i,
      arrival: arrival[i],
      origin: origin[i],
      variety: variety[i],
      flags: flags[i] & (FLAG.lapped | FLAG.set),
    });
  }
  for (const cells of held.values()) for (const cell of cells.keys()) clearCell(state, cell);
  const placed = new Uint8Array(variety.length);
  for (const { group, rigid } of moves) {
    const cells = held.get(group);
    if (cells === undefined || cells.size === 0) {
      work.skipped++;
      continue;
    }
    const landed = landing(state, cells, rigid);
    const lost = new Int32Array(9);
    for (const { variety: v } of cells.values()) if (v <= 8) lost[v]++;
    for (const [to, what] of landed) {
      variety[to] = what.variety;
      origin[to] = what.origin;
      arrival[to] = what.arrival;
      flags[to] |= what.flags;
      from[to] = what.cell;
      placed[to] = 1;
      if (what.variety <= 8) lost[what.variety]--;
    }
    // resampling may win a cell of one colour and lose one of another
    lost.forEach((count, v) => (work.lostCells[v] += Math.max(0, count)));
  }
  startFromToday(state, placed);
  return from;
}

/** Where the held cells come to lie, in order of cell index; never more cells than are held, the youngest stay out. */
function landing(state: State, cells: ReadonlyMap<number, Held>, rigid: Rigid): [number, Held][] {
  const { layout, flags, variety } = state;
  const { columns, rows } = layout;
  const { cos, sin, from, to } = rigid;
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const cell of cells.keys()) {
    const dx = (cell % columns) - from[0];
    const dy = Math.floor(cell / columns) - from[1];
    const x = to[0] + dx * cos - dy * sin;
    const y = to[1] + dx * sin + dy * cos;
    [left, right] = [Math.min(left, x), Math.max(right, x)];
    [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
  }
  const landed: [number, Held][] = [];
  for (let y = Math.max(1, Math.floor(top) - 1); y <= Math.min(rows - 2, Math.ceil(bottom) + 1); y++)
    for (let x = Math.max(1, Math.floor(left) - 1); x <= Math.min(columns - 2, Math.ceil(right) + 1); x++) {
      const i = y * columns + x;
      if ((flags[i] & FLAG.inside) === 0 || variety[i] !== 0) continue;
      const [dx, dy] = [x - to[0], y - to[1]];
      const what = cells.get(
        nearest(from[1] - dx * sin + dy * cos) * columns + nearest(from[0] + dx * cos + dy * sin),
      );
      if (what !== undefined) landed.push([i, what]);
    }
  const over = landed.length - cells.size;
  if (over <= 0) return landed;
  const youngest = landed
    .map(([, what], k) => ({ k, arrival: what.arrival }))
    .sort((a, b) => b.arrival - a.arrival || b.k - a.k)
    .slice(0, over);
  const out = new Set(youngest.map(({ k }) => k));
  return landed.filter((_, k) => !out.has(k));
}

/** The same way for all cells where a place lies halfway, or a quarter turn would win some and lose others. */
function nearest(place: number): number {
  return Math.floor(place + 0.5 + 1e-7);
}

/** A rim that stood still against the tile's edge or a neighbour grows on from today, not from when it was stopped. */
function startFromToday(state: State, placed: Uint8Array): void {
  const isGround = (i: number): boolean => state.variety[i] === 0;
  const ground = marked(placed.length, isGround);
  const edge = edgeOf(state, ground, (i) => placed[i] === 1 && isLiving(state, i));
  standBehind(state, edge, (i) => placed[i] === 1 && isLiving(state, i), state.day);
}

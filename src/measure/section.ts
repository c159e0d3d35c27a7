/**
 * The section of a tile under a line: the skeleton's layers, mm above the tile, and each joint that the line crosses.
 *
 * Definition: the line is cut at every cell edge that it crosses; over each cut the section is what the frame says of
 * that cell, its height and its layers (model/frame.ts and model/covered.ts tell the layer model). Nothing is smoothed.
 * A joint lies where the line passes between two cells of a seam whose pieces are of unlike variety, at that cell edge.
 * Where either of them is bare it is dead, whatever the verdict there was. Tissue may die before the two rims have closed
 * in everywhere: where under the line no such cells meet inside a bare stretch, its joint lies midway between the cells of
 * the two sides beside the line.
 * Crossings of one pair and one kind less than JOINED_MM apart are one seam that winds from polyp to polyp: they make one joint
 * in their middle, or, where the line ends on the side it came from, the first and the last.
 * Bias: a height holds for a whole cell, so it is off by up to the slope times half a cell; a joint is off by up to half
 * a cell, one midway on a bare stretch by up to two. Where three varieties meet, a cell tells of one contact only.
 */
import type { Frame } from '../model/frame';
import { FATE, VEILED } from '../model/seam-table';
import { BARE } from '../model/state';

type Xy = readonly [number, number];

/** One above the other from the tile up, without gaps. */
export interface Layer {
  readonly fromMm: number;
  readonly toMm: number;
  /** 1..8; of bare skeleton the frame does not tell it: null. */
  readonly variety: number | null;
  readonly is: 'living' | 'covered' | 'bare';
}

/** What lies over one cell that the line crosses. */
export interface Slice {
  /** Along the line. */
  readonly fromMm: number;
  readonly toMm: number;
  /** Above the tile; 0 on empty ground. */
  readonly surfaceMm: number;
  /** From the lowest up; none on empty ground. */
  readonly layers: readonly Layer[];
}

/** `veiled` is a ridge that still looks fused from above. */
export type JointKind = 'fused' | 'ridge' | 'lapped' | 'dead' | 'veiled' | 'undecided';

export interface Joint {
  readonly kind: JointKind;
  /** Along the line. */
  readonly atMm: number;
  /** Bare: the bare stretch. Lapped: the covered stretch, the lip at one of its ends. Else both are the place. */
  readonly fromMm: number;
  readonly toMm: number;
  /** Varieties of the pieces before and behind, seen along the line. */
  readonly before: number;
  readonly after: number;
  /** Lapped: the variety that covers, null where that is not known; else null. */
  readonly covers: number | null;
}

export interface Section {
  readonly lengthMm: number;
  readonly slices: readonly Slice[];
  readonly joints: readonly Joint[];
}

/** Crossings closer than this are one joint. */
const JOINED_MM = 1;

/** By what a frame says of a cell of a seam. */
export const KIND_OF: Readonly<Record<number, JointKind>> = {
  [FATE.undecided]: 'undecided',
  [FATE.fused]: 'fused',
  [FATE.ridge]: 'ridge',
  [FATE.lapped]: 'lapped',
  [FATE.dead]: 'dead',
  [VEILED]: 'veiled',
};

/** `from` and `to` in mm from the tile's centre; what lies beside the grid is empty ground. */
export function section(frame: Frame, from: Xy, to: Xy): Section {
  const run = cellsUnder(frame, from, to);
  return {
    lengthMm: Math.hypot(to[0] - from[0], to[1] - from[1]),
    slices: run.map((cut) => sliceOf(frame, cut)),
    joints: jointsOf(frame, run),
  };
}

interface Cut {
  /** -1 beside the grid. */
  readonly cell: number;
  readonly fromMm: number;
  readonly toMm: number;
}

/** The cells under a line in order, each one 4-neighbour of the last (Amanatides & Woo 1987, Eurographics 87: 3-10). */
function cellsUnder({ columns, rows, cellMm }: Frame, from: Xy, to: Xy): Cut[] {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const u = from[0] / cellMm + columns / 2;
  const v = from[1] / cellMm + rows / 2;
  const [du, dv] = [(to[0] - from[0]) / cellMm, (to[1] - from[1]) / cellMm];
  const [stepX, stepY] = [Math.sign(du), Math.sign(dv)];
  let [column, row] = [Math.floor(u), Math.floor(v)];
  // shares of the line at which it next crosses an upright and a level cell edge
  const edge = (at: number, cell: number, by: number): number =>
    by === 0 ? Infinity : ((by > 0 ? cell + 1 : cell) - at) / by;
  let [nextX, nextY] = [edge(u, column, du), edge(v, row, dv)];
  const cuts: Cut[] = [];
  let t = 0;
  while (t < 1 || cuts.length === 0) {
    const end = Math.min(1, nextX, nextY);
    const isOn = column >= 0 && column < columns && row >= 0 && row < rows;
    if (end > t || lengthMm === 0)
      cuts.push({ cell: isOn ? row * columns + column : -1, fromMm: t * lengthMm, toMm: end * lengthMm });
    t = end;
    if (nextX <= nextY) {
      column += stepX;
      nextX = edge(u, column, du);
    } else {
      row += stepY;
      nextY = edge(v, row, dv);
    }
    if (lengthMm === 0) break;
  }
  return cuts;
}

function sliceOf(frame: Frame, { cell, fromMm, toMm }: Cut): Slice {
  const label = cell < 0 ? 0 : frame.label[cell];
  if (label === 0) return { fromMm, toMm, surfaceMm: 0, layers: [] };
  const layers: Layer[] = [];
  let below = 0;
  for (let k = firstBeneath(frame, cell); frame.beneath.cell[k] === cell; k++) {
    const top = frame.beneath.top[k] / 100;
    layers.push({ fromMm: below, toMm: top, variety: frame.beneath.variety[k], is: 'covered' });
    below = top;
  }
  const surfaceMm = frame.height[cell] / 100;
  const isBare = label === BARE;
  layers.push({
    fromMm: below,
    toMm: surfaceMm,
    variety: isBare ? null : label,
    is: isBare ? 'bare' : 'living',
  });
  return { fromMm, toMm, surfaceMm, layers };
}

/** Place of the cell's lowest layer in Frame.beneath, or of what would follow it. */
function firstBeneath({ beneath }: Frame, cell: number): number {
  let [low, high] = [0, beneath.cell.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (beneath.cell[middle] < cell) low = middle + 1;
    else high = middle;
  }
  return low;
}

interface Crossing {
  /** Place in the run of the cell behind it. */
  readonly k: number;
  readonly kind: JointKind;
  readonly before: number;
  readonly after: number;
  readonly atMm: number;
}

function jointsOf(frame: Frame, run: readonly Cut[]): Joint[] {
  const bare = bareRuns(frame, run);
  const crossings: Crossing[] = [];
  for (let k = 1; k < run.length; k++) {
    const crossing = crossingAt(frame, run, k);
    if (crossing !== null) crossings.push(crossing);
  }
  for (const stretch of bare) {
    if (crossings.some(({ k }) => isOn(stretch, k))) continue;
    const crossing = crossingOnBare(frame, run, stretch);
    if (crossing !== null) crossings.push(crossing);
  }
  const groups: Crossing[][] = [];
  for (const crossing of crossings.sort((a, b) => a.k - b.k)) {
    const near = groups.findLast((group) => isOneSeam(group[group.length - 1], crossing));
    if (near) near.push(crossing);
    else groups.push([crossing]);
  }
  return groups
    .flatMap((group) => {
      const [first, last] = [group[0], group[group.length - 1]];
      if (group.length % 2 === 0) return [first, last].map((one) => jointOf(frame, run, bare, [one]));
      return [jointOf(frame, run, bare, group)];
    })
    .sort((a, b) => a.atMm - b.atMm);
}

/** First and last cell of a stretch of the run. */
type Run = readonly [first: number, last: number];

/** Whether the edge before the k-th cell is one of the stretch's. */
function isOn([first, last]: Run, k: number): boolean {
  return k >= first && k <= last + 1;
}

/** The bare stretches under a line, over the slits in them that nothing had grown over when tissue died. */
function bareRuns({ label }: Frame, run: readonly Cut[]): Run[] {
  const found: [number, number][] = [];
  run.forEach(({ cell, fromMm }, k) => {
    if (cell < 0 || label[cell] !== BARE) return;
    const last = found.at(-1);
    const isSlit = (between: readonly Cut[]): boolean => between.every((cut) => label[cut.cell] === 0);
    if (last && fromMm - run[last[1]].toMm < JOINED_MM && isSlit(run.slice(last[1] + 1, k))) last[1] = k;
    else found.push([k, k]);
  });
  return found;
}

/** Between the two varieties whose seam cells lie in the stretch and around it; null where it is not of a seam. */
function crossingOnBare(frame: Frame, run: readonly Cut[], [first, last]: Run): Crossing | null {
  const places = new Map<number, number[]>();
  for (const { cell, fromMm, toMm } of run.slice(first, last + 1)) {
    for (let row = -1; row <= 1; row++) {
      for (let column = -1; column <= 1; column++) {
        const side = frame.seam[cell + row * frame.columns + column] >> 4;
        if (side !== 0) places.set(side, [...(places.get(side) ?? []), (fromMm + toMm) / 2]);
      }
    }
  }
  const sides = [...places]
    .sort(([, a], [, b]) => b.length - a.length)
    .slice(0, 2)
    .map(([variety, mm]) => ({ variety, mm: mm.reduce((sum, one) => sum + one, 0) / mm.length }))
    .sort((a, b) => a.mm - b.mm);
  if (sides.length < 2) return null;
  const atMm = (sides[0].mm + sides[1].mm) / 2;
  const k = run.findIndex(({ toMm }) => toMm > atMm);
  return { k, kind: 'dead', before: sides[0].variety, after: sides[1].variety, atMm };
}

function crossingAt({ seam, label }: Frame, run: readonly Cut[], k: number): Crossing | null {
  const [a, b] = [run[k - 1].cell, run[k].cell];
  if (a < 0 || b < 0) return null;
  const [before, after] = [seam[a] >> 4, seam[b] >> 4];
  if (before === 0 || after === 0 || before === after) return null;
  const [fateA, fateB] = [seam[a] & 7, seam[b] & 7];
  const isBare = label[a] === BARE || label[b] === BARE;
  const kind = isBare ? 'dead' : KIND_OF[fateA === FATE.undecided ? fateB : fateA];
  return { k, kind, before, after, atMm: run[k].fromMm };
}

function isOneSeam(one: Crossing, other: Crossing): boolean {
  const samePair =
    (one.before === other.before && one.after === other.after) ||
    (one.before === other.after && one.after === other.before);
  return samePair && one.kind === other.kind && other.atMm - one.atMm < JOINED_MM;
}

function jointOf(frame: Frame, run: readonly Cut[], bare: readonly Run[], group: readonly Crossing[]): Joint {
  const [first, last] = [group[0], group[group.length - 1]];
  const { kind, before } = first;
  const { after } = last;
  const atMm = (first.atMm + last.atMm) / 2;
  const joint = { kind, atMm, fromMm: atMm, toMm: atMm, before, after, covers: null };
  if (kind === 'dead') {
    const on = bare.find((stretch) => group.some(({ k }) => isOn(stretch, k)));
    return on
      ? { ...joint, fromMm: Math.min(atMm, run[on[0]].fromMm), toMm: Math.max(atMm, run[on[1]].toMm) }
      : joint;
  }
  if (kind !== 'lapped') return joint;
  const isOverAt = (k: number): boolean => (frame.seam[run[k].cell] & 8) !== 0;
  // of a graft's lapped seam it may not be known
  const covers = isOverAt(first.k - 1) ? before : isOverAt(last.k) ? after : null;
  if (covers === null) return joint;
  const lies = covers === before ? after : before;
  const isOver = (cell: number): boolean => {
    for (let k = firstBeneath(frame, cell); frame.beneath.cell[k] === cell; k++)
      if (frame.beneath.variety[k] === lies) return true;
    return false;
  };
  return { ...joint, covers, ...stretch(run, first.k, last.k, isOver, atMm) };
}

/** How far from a joint cells of a kind follow on each other, on both sides. */
function stretch(
  run: readonly Cut[],
  first: number,
  last: number,
  is: (cell: number) => boolean,
  atMm: number,
): { fromMm: number; toMm: number } {
  let [start, end] = [first, last - 1];
  while (start > 0 && run[start - 1].cell >= 0 && is(run[start - 1].cell)) start--;
  while (end < run.length - 1 && run[end + 1].cell >= 0 && is(run[end + 1].cell)) end++;
  return {
    fromMm: Math.min(atMm, run[start].fromMm),
    toMm: Math.max(atMm, run[end].toMm),
  };
}

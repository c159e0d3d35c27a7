/**
 * A graft piece out of a grown tile: the colours as patches that fit each other, and the seams that are no longer open.
 * What it cannot keep: who fused with whom where both sides have one colour, bare skeleton, and specks smaller than a
 * polyp, which go into what surrounds them.
 */
import { forRunsInside, lowerAlong } from '../model/distance';
import { BARE } from '../model/state';
import { twiceArea } from '../units/polygon';
import { ringsOf, type LatticeRing, type PartGrid } from './lattice-outline';
import type { GraftPiece, Xy } from './plan';
import { seamLines, type GraftFrame } from './graft-seams';

const MOST_PATCHES = 500;
const MOST_CORNERS = 2000;
/** One polyp, mm2. */
const SPECK_MM2 = 1;

/** Part of the tile that is cut out: what lies inside the outline and farther from it than half the kerf. */
export interface GraftCut {
  /** Tile mm. */
  readonly around: readonly Xy[];
  readonly kerfMm: number;
}

/**
 * The tissue that a cut takes out, as a piece that lies where it lay. `varietyIds` by number, index 0 unused. Null where
 * there is not so much as a polyp.
 */
export function graftOf(
  frame: GraftFrame,
  cut: GraftCut,
  id: string,
  varietyIds: readonly string[],
): GraftPiece | null {
  const { columns, cellMm } = frame;
  const label = tissueIn(frame, cut);
  let patches: Patch[] = [];
  for (let least = SPECK_MM2 / (cellMm * cellMm); ; least *= 2) {
    absorbSpecks(label, columns, least);
    patches = patchesOf(label, columns);
    if (patches.length <= MOST_PATCHES) break;
  }
  if (patches.length === 0) return null;
  const middle = middleOf(patches);
  const toMm = ([x, y]: readonly [number, number]): Xy => [
    (x - middle[0]) * cellMm,
    (y - middle[1]) * cellMm,
  ];
  const seams = seamLines({ ...frame, label }).map(({ along, is, over }) => ({
    along: along.map(toMm),
    is,
    ...(over > 0 && { over: varietyIds[over] }),
  }));
  return {
    id,
    at: [(middle[0] - columns / 2) * cellMm, (middle[1] - frame.rows / 2) * cellMm],
    turnDeg: 0,
    patches: patches.map(({ variety, ring }) => ({ variety: varietyIds[variety], outline: ring.map(toMm) })),
    ...(seams.length > 0 && { seams }),
  };
}

interface Patch {
  readonly variety: number;
  readonly ring: LatticeRing;
}

/** Labels of the living cells that are cut out, 0 elsewhere. */
function tissueIn({ columns, rows, cellMm, label }: GraftFrame, { around, kerfMm }: GraftCut): Uint8Array {
  const path = around.map(([x, y]) => [x / cellMm + (columns - 1) / 2, y / cellMm + (rows - 1) / 2] as const);
  const half = kerfMm / 2 / cellMm;
  const toLine = new Float32Array(label.length).fill(Infinity);
  lowerAlong(toLine, [...path, path[0]], half, columns, rows);
  const inside = new Uint8Array(label.length);
  forRunsInside([path], columns, rows, (row, first, last) => {
    for (let i = row * columns + first; i <= row * columns + last; i++)
      if (toLine[i] >= half && label[i] !== BARE) inside[i] = label[i];
  });
  return inside;
}

/** Cells of one label that hang together by their sides, patch by patch. */
function together(label: Uint8Array, columns: number, within: readonly number[]): number[][] {
  const isOpen = new Uint8Array(label.length);
  for (const cell of within) if (label[cell] !== 0) isOpen[cell] = 1;
  const found: number[][] = [];
  for (const first of within) {
    if (isOpen[first] === 0) continue;
    const cells = [first];
    isOpen[first] = 0;
    for (let k = 0; k < cells.length; k++)
      for (const step of [1, -1, columns, -columns]) {
        const next = cells[k] + step;
        if (isOpen[next] === 0 || label[next] !== label[first]) continue;
        isOpen[next] = 0;
        cells.push(next);
      }
    found.push(cells);
  }
  return found;
}

/**
 * Patches of fewer cells take the colour that they border most; those among no tissue go. Smallest first, and none beside
 * one that has just changed: so each joins a patch that stays, and there are fewer after every round.
 */
function absorbSpecks(label: Uint8Array, columns: number, least: number): void {
  const around = [1, -1, columns, -columns];
  for (;;) {
    const specks = together(label, columns, [...label.keys()]).filter((cells) => cells.length < least);
    if (specks.length === 0) return;
    specks.sort((a, b) => a.length - b.length || a[0] - b[0]);
    const changed = new Set<number>();
    for (const cells of specks) {
      const own = label[cells[0]];
      const beside = cells.flatMap((cell) =>
        around.map((step) => cell + step).filter((next) => label[next] !== own),
      );
      if (beside.some((next) => changed.has(next))) continue;
      const sides = new Uint32Array(9);
      for (const next of beside) sides[label[next]]++;
      sides[0] = 0;
      const most = Math.max(...sides);
      const taken = most === 0 ? 0 : sides.indexOf(most);
      for (const cell of cells) {
        label[cell] = taken;
        changed.add(cell);
      }
    }
  }
}

/** Patches without holes and of few enough corners: others are halved until they are. */
function patchesOf(label: Uint8Array, columns: number): Patch[] {
  const grid = { columns, part: new Int32Array(label.length) };
  const whole: number[][] = [];
  const waiting = together(label, columns, [...label.keys()]);
  let number = 0;
  const claim = (cells: readonly number[]): void => {
    number++;
    for (const cell of cells) grid.part[cell] = number;
  };
  waiting.forEach(claim);
  for (let cells = waiting.pop(); cells !== undefined; cells = waiting.pop()) {
    const at = columnToHalve(grid, cells);
    if (at === null) {
      whole.push(cells);
      continue;
    }
    const sides = [cells.filter((cell) => cell % columns < at), cells.filter((cell) => cell % columns >= at)];
    for (const side of sides)
      for (const half of together(label, columns, side)) {
        claim(half);
        waiting.push(half);
      }
  }
  // only now: a corner is drawn in or not by all the parts that meet there
  return whole
    .sort((a, b) => firstOf(a) - firstOf(b))
    .map((cells) => ({ variety: label[cells[0]], ring: ringsOf(grid, cells)[0] }));
}

function firstOf(cells: readonly number[]): number {
  return cells.reduce((least, cell) => Math.min(least, cell));
}

/** The column through the middle of a hole, or of a part with too many corners; null where neither is. */
function columnToHalve(grid: PartGrid, cells: readonly number[]): number | null {
  const rings = ringsOf(grid, cells);
  // points may be added at corners where parts to come touch themselves
  const wide = rings.find((ring) =>
    rings.length > 1 ? twiceArea(ring) < 0 : ring.length > MOST_CORNERS / 2,
  );
  if (wide === undefined) return null;
  let [left, right] = [Infinity, -Infinity];
  for (const [x] of wide) [left, right] = [Math.min(left, x), Math.max(right, x)];
  return Math.floor((Math.ceil(left) + Math.floor(right)) / 2);
}

/** The middle of all corners, on the lattice. */
function middleOf(patches: readonly Patch[]): readonly [number, number] {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { ring } of patches)
    for (const [x, y] of ring) {
      [left, right] = [Math.min(left, x), Math.max(right, x)];
      [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
    }
  return [Math.round((left + right) / 2), Math.round((top + bottom) / 2)];
}

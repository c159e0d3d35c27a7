/**
 * A patch of one colour on the tile of the month shown: found by a place in it, and what a cut around it would take.
 * Cells count by their centres, so lengths are off by half a cell at most.
 */
import { cellsInside, distances, lowerAlong } from '../../model/distance';
import type { Frame } from '../../model/frame';
import { ringsOf } from '../../plan/lattice-outline';
import type { Xy } from '../../plan/plan';
import { area } from '../../units/polygon';
import { simplifyOutline } from '../../units/simplify';

/** Labels of varieties; 0 is bare and 255 died back. */
const MOST_VARIETIES = 8;
const MOST_CORNERS = 200;
/** Margins are measured no further than this, mm. */
const FAR_MM = 20;

/** What a cut around a patch takes. */
export interface CutOut {
  /** The patch: the largest of one colour that lies whole within the cut; null where there is none. */
  readonly patch: {
    /** From 1, as labels of frames are. */
    readonly variety: number;
    readonly areaMm2: number;
    /** Least distance from the patch to the blade's edge. */
    readonly marginMm: number;
  } | null;
  /** Tissue of the cutting, the kerf taken off. */
  readonly areaMm2: number;
}

function toGrid(frame: Frame, [x, y]: Xy): Xy {
  const middle = (frame.columns - 1) / 2;
  return [x / frame.cellMm + middle, y / frame.cellMm + middle];
}

/** Cells of the 4-connected patch of one colour at a place; null where there is no tissue. */
export function patchAt(frame: Frame, at: Xy): Uint8Array | null {
  const [column, row] = toGrid(frame, at).map(Math.round);
  if (column < 0 || row < 0 || column >= frame.columns || row >= frame.rows) return null;
  const start = row * frame.columns + column;
  return isTissue(frame.label[start]) ? flood(frame, start, () => true) : null;
}

export function isTissue(label: number): boolean {
  return label > 0 && label <= MOST_VARIETIES;
}

function flood({ label, columns }: Frame, start: number, goesTo: (cell: number) => boolean): Uint8Array {
  const cells = new Uint8Array(label.length);
  const open = [start];
  cells[start] = 1;
  for (let cell = open.pop(); cell !== undefined; cell = open.pop())
    for (const next of [cell - 1, cell + 1, cell - columns, cell + columns])
      if (label[next] === label[start] && cells[next] === 0 && goesTo(next)) {
        cells[next] = 1;
        open.push(next);
      }
  return cells;
}

/** The outline that runs a distance outside a patch, without the holes within it. */
export function outlineAround(frame: Frame, patch: Uint8Array, mm: number): Xy[] {
  const { columns, rows, cellMm } = frame;
  // room on every side, for the outline may run beyond the tile
  const room = Math.ceil(mm / cellMm) + 2;
  const wide = columns + 2 * room;
  const high = rows + 2 * room;
  const source = new Uint8Array(wide * high);
  patch.forEach((is, cell) => {
    if (is === 1) source[(Math.floor(cell / columns) + room) * wide + (cell % columns) + room] = 1;
  });
  const part = Int32Array.from(distances(source, wide, high), (d) => ((d - 0.5) * cellMm <= mm ? 1 : 0));
  const cells: number[] = [];
  part.forEach((is, cell) => {
    if (is === 1) cells.push(cell);
  });
  const rings = ringsOf({ columns: wide, part }, cells);
  const [outer] = [...rings].sort((one, other) => area(other) - area(one));
  const ring = outer.map(([x, y]): Xy => [(x - wide / 2) * cellMm, (y - high / 2) * cellMm]);
  return simplifyOutline(ring, MOST_CORNERS, cellMm / 2).map(([x, y]): Xy => [tidy(x), tidy(y)]);
}

/** As finely as a hand draws, mm. */
export function tidy(mm: number): number {
  return Math.round(mm * 100) / 100 + 0;
}

/** What a cut along an outline takes; `patch` where it is known which patch is meant. */
export function cutOutOf(
  frame: Frame,
  around: readonly Xy[],
  kerfMm: number,
  patch: Uint8Array | null,
): CutOut {
  const { columns, rows, cellMm, label } = frame;
  const ring = around.map((at) => toGrid(frame, at));
  const inside = cellsInside([ring], columns, rows);
  const toLine = new Float32Array(label.length).fill(FAR_MM / cellMm);
  lowerAlong(toLine, [...ring, ring[0]], FAR_MM / cellMm, columns, rows);
  const half = kerfMm / 2 / cellMm;
  let cells = 0;
  inside.forEach((is, cell) => {
    if (is === 1 && toLine[cell] > half && isTissue(label[cell])) cells++;
  });
  const meant = patch ?? largestWithin(frame, inside);
  const marginMm = meant === null ? 0 : Math.max(0, (leastOf(meant, toLine, inside) - half) * cellMm);
  return {
    areaMm2: cells * cellMm * cellMm,
    patch:
      meant === null
        ? null
        : {
            variety: label[meant.indexOf(1)],
            areaMm2: meant.reduce((sum, is) => sum + is, 0) * cellMm * cellMm,
            marginMm,
          },
  };
}

/** Least distance of a patch's cells to the line; 0 where the patch reaches over it. */
function leastOf(patch: Uint8Array, toLine: Float32Array, inside: Uint8Array): number {
  let least = Infinity;
  patch.forEach((is, cell) => {
    if (is === 1) least = inside[cell] === 1 ? Math.min(least, toLine[cell]) : 0;
  });
  return least;
}

/** The largest patch of one colour with no cell beside it of the same colour outside. */
function largestWithin(frame: Frame, inside: Uint8Array): Uint8Array | null {
  const { label, columns } = frame;
  const seen = new Uint8Array(label.length);
  let best: Uint8Array | null = null;
  let most = 0;
  for (let start = 0; start < label.length; start++) {
    if (inside[start] === 0 || seen[start] === 1 || !isTissue(label[start])) continue;
    const patch = flood(frame, start, (cell) => inside[cell] === 1);
    let count = 0;
    let isWhole = true;
    for (let cell = start; cell < patch.length; cell++) {
      if (patch[cell] === 0) continue;
      seen[cell] = 1;
      count++;
      for (const next of [cell - 1, cell + 1, cell - columns, cell + columns])
        if (inside[next] === 0 && label[next] === label[cell]) isWhole = false;
    }
    if (isWhole && count > most) [best, most] = [patch, count];
  }
  return best;
}

/**
 * Where the seams of a grown tile are to be called, and what each is there.
 * A seam is what lies between two varieties; its mark stands on its commonest kind, clear of other kinds and of other
 * seams and near the middle. A seam too short, or of no one kind anywhere, gets none.
 */
import { KIND_OF } from '../measure/section';
import type { Frame } from '../model/frame';
import { BARE } from '../model/state';
import type { Xy } from '../plan/plan';
import type { SeamKind } from './seam-kinds';
import { isEarlySeam } from './seam-signs';

export interface SeamMark {
  /** mm from the tile's middle. */
  readonly at: Xy;
  readonly is: SeamKind;
  /** No eye can tell it from above yet. */
  readonly isEarly: boolean;
  /** Variety numbers, 1 to 8, the smaller first. */
  readonly pair: readonly [number, number];
  /** Across the seam, for the section. */
  readonly from: Xy;
  readonly to: Xy;
}

const AROUND_MM = 2.5;
/** So much of the seam has to be of the marked kind. */
const LEAST_MM = 5;
/** So far a mark stands at least from what is another kind or another seam; farther than the second counts no more. */
const LEAST_CLEAR_MM = 2;
const CLEAR_MM = 6;
/** A mm nearer to the middle of its kind is worth so many of clearance. */
const MIDDLE_WEIGHT = 0.2;
const SECTION_MM = 14;

interface Place {
  readonly x: number;
  readonly y: number;
}

interface Cell extends Place {
  readonly is: SeamKind;
}

export function seamMarks(frame: Frame): SeamMark[] {
  const marks: SeamMark[] = [];
  const pairs = cellsByPair(frame);
  for (const [key, cells] of pairs) {
    const others = [...pairs].flatMap(([other, theirs]) => (other === key ? [] : theirs));
    const place = placeOf(frame, cells, others);
    if (place) marks.push(markAt(frame, place, cells, [key >> 4, key & 15]));
  }
  // from top to bottom, then left to right
  return marks.sort((one, other) => one.at[1] - other.at[1] || one.at[0] - other.at[0]);
}

/** The mark on the same seam in another month's frame, near the same place; null where no such seam is left. */
export function markNear(frame: Frame, { at, pair }: SeamMark): SeamMark | null {
  const cells = cellsByPair(frame).get(pair[0] * 16 + pair[1]) ?? [];
  const near = [...cells].sort((one, other) => away(one, at) - away(other, at)).slice(0, 9);
  return near.length > 0 ? markAt(frame, { ...near[0], is: commonest(near) }, cells, pair) : null;
}

/** So far a seam travels in a month at most: a lapped one goes 1 mm, and rough rims shift it. */
const TRAVEL_MM = 3;

/**
 * For each mark on the last of the frames, a month apart and from month 0, the month in which the two sides came to
 * touch there; a mark is followed back as its seam has travelled.
 */
export function touchMonths(frames: readonly Frame[], marks: readonly SeamMark[]): number[] {
  const places = marks.map(({ at }) => at);
  const found = marks.map(() => frames.length - 1);
  for (let month = frames.length - 2; month >= 0; month--) {
    const pairs = cellsByPair(frames[month]);
    marks.forEach(({ pair }, k) => {
      if (found[k] !== month + 1) return;
      const near = (pairs.get(pair[0] * 16 + pair[1]) ?? []).filter(
        (cell) => away(cell, places[k]) < TRAVEL_MM ** 2,
      );
      if (near.length === 0) return;
      places[k] = meanOf(near);
      found[k] = month;
    });
  }
  return found;
}

/** Cells of each seam, by the two varieties on its sides: smaller * 16 + larger. */
function cellsByPair(frame: Frame): Map<number, Cell[]> {
  const { columns, rows, cellMm, seam } = frame;
  const pairs = new Map<number, Cell[]>();
  for (let row = 1; row < rows - 1; row++) {
    for (let column = 1; column < columns - 1; column++) {
      const i = row * columns + column;
      const kind = seam[i] & 7;
      const own = seam[i] >> 4;
      if (kind === 0) continue;
      const other = [1, -1, columns, -columns, columns + 1, columns - 1, 1 - columns, -1 - columns]
        .map((step) => seam[i + step])
        .find((bits) => (bits & 7) !== 0 && bits >> 4 !== own);
      if (other === undefined) continue;
      const key = Math.min(own, other >> 4) * 16 + Math.max(own, other >> 4);
      const [x, y] = [(column - (columns - 1) / 2) * cellMm, (row - (rows - 1) / 2) * cellMm];
      const cells = pairs.get(key);
      const cell = { x, y, is: KIND_OF[kind] };
      if (cells) cells.push(cell);
      else pairs.set(key, [cell]);
    }
  }
  return pairs;
}

function commonest(cells: readonly Cell[]): SeamKind {
  const counts = new Map<SeamKind, number>();
  for (const { is } of cells) counts.set(is, (counts.get(is) ?? 0) + 1);
  return [...counts].reduce((most, one) => (one[1] > most[1] ? one : most))[0];
}

/** The cell that a mark stands at; null where none is fit for one. */
function placeOf(frame: Frame, cells: readonly Cell[], others: readonly Cell[]): Cell | null {
  const is = commonest(cells);
  const ofKind = cells.filter((cell) => cell.is === is);
  // a seam has a row of cells on each of its sides
  if ((ofKind.length * frame.cellMm) / 2 < LEAST_MM) return null;
  const middle = meanOf(ofKind);
  const unlike = [...cells.filter((cell) => cell.is !== is), ...others];
  const clearMm = (one: Cell): number =>
    Math.sqrt(unlike.reduce((least, cell) => Math.min(least, away(cell, [one.x, one.y])), CLEAR_MM ** 2));
  const worth = (one: Cell): number => clearMm(one) - MIDDLE_WEIGHT * Math.sqrt(away(one, middle));
  const place = ofKind.reduce((best, one) => (worth(one) > worth(best) ? one : best));
  return clearMm(place) < LEAST_CLEAR_MM ? null : place;
}

function markAt(frame: Frame, { x, y, is }: Cell, cells: readonly Cell[], pair: SeamMark['pair']): SeamMark {
  const around = cells.filter((cell) => away(cell, [x, y]) < AROUND_MM ** 2);
  const bare = is === 'dead' ? bareAround(frame, meanOf(around)) : [];
  const at = meanOf(bare.length > 0 ? bare : around);
  const [ux, uy] = across(around, at);
  const reach = SECTION_MM / 2;
  const mark = {
    at,
    is,
    pair,
    from: [at[0] - ux * reach, at[1] - uy * reach],
    to: [at[0] + ux * reach, at[1] + uy * reach],
  } as const;
  return { ...mark, isEarly: isEarlySeam(frame, mark) };
}

/** The middle of a dead seam is that of its bare strip, not the border of one of the two. */
function bareAround({ label, columns, rows, cellMm }: Frame, [mx, my]: Xy): Place[] {
  const found: Place[] = [];
  const [column, row] = [mx / cellMm + (columns - 1) / 2, my / cellMm + (rows - 1) / 2];
  const reach = AROUND_MM / cellMm;
  for (let r = Math.ceil(row - reach); r <= row + reach; r++)
    for (let c = Math.ceil(column - reach); c <= column + reach; c++)
      if (label[r * columns + c] === BARE && Math.hypot(c - column, r - row) < reach)
        found.push({ x: (c - (columns - 1) / 2) * cellMm, y: (r - (rows - 1) / 2) * cellMm });
  return found;
}

function away({ x, y }: Place, [mx, my]: Xy): number {
  return (x - mx) ** 2 + (y - my) ** 2;
}

function meanOf(cells: readonly Place[]): Xy {
  return [
    cells.reduce((sum, { x }) => sum + x, 0) / cells.length,
    cells.reduce((sum, { y }) => sum + y, 0) / cells.length,
  ];
}

/** Unit vector across the cells, square to the direction in which they spread most; to the right, as a section is drawn. */
function across(cells: readonly Cell[], [mx, my]: Xy): Xy {
  let [xx, xy, yy] = [0, 0, 0];
  for (const { x, y } of cells) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  const along = Math.atan2(2 * xy, xx - yy) / 2;
  return along > 0 ? [Math.sin(along), -Math.cos(along)] : [-Math.sin(along), Math.cos(along)];
}

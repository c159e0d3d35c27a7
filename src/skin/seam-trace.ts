/**
 * The seams of a frame as smooth lines. Both sides of a seam have seam cells, so a seam is a band two cells wide:
 * it is thinned to its middle, the cells of the middle are chained, drawn to the middle of the band and smoothed.
 * Where a side is bare the line is dead, whatever the verdict there was: a dead stretch takes tissue past its own end too,
 * and a strip without tissue is nothing that an eye would call fused or a wall. Readings book those mm to the verdict.
 */
import type { Frame } from '../model/frame';
import { FATE, VEILED } from '../model/seam-table';
import { BARE } from '../model/state';
import type { Xy } from '../plan/plan';
import { ring, thin } from './thin';

export const SEAM_OUTCOMES = ['undecided', 'fused', 'ridge', 'lapped', 'dead'] as const;
export type SeamOutcome = (typeof SEAM_OUTCOMES)[number];

export interface SeamLine {
  readonly outcome: SeamOutcome;
  readonly points: readonly Xy[];
  readonly lengthMm: number;
  /** Lapped: 1 if the covered side lies to the right of the line as it runs (y down), -1 to its left. */
  readonly covered: 1 | -1;
}

const SMOOTH_MM = 0.7;
/** Runs of one outcome shorter than this take that of their neighbour. */
const LEAST_RUN_MM = 1;
const SPUR_MM = 1;

export function traceSeams(frame: Frame): SeamLine[] {
  const mask = bandOf(frame);
  let middle: number[] = [];
  for (let i = 0; i < mask.length; i++) if (mask[i] !== 0) middle.push(i);
  if (middle.length === 0) return [];
  middle = thin(mask, middle, frame.columns);
  const spurCells = SPUR_MM / frame.cellMm;
  for (let round = 0; round < 3; round++) {
    const spurs = chain(mask, middle, frame.columns).filter((line) => isSpur(line, spurCells));
    if (spurs.length === 0) break;
    // The junction cell stays: it belongs to the other lines too.
    for (const { cells, ends } of spurs) {
      const tied = ends[0] > 2 ? 0 : cells.length - 1;
      cells.forEach((i, k) => k !== tied && (mask[i] = 0));
    }
    middle = thin(
      mask,
      middle.filter((i) => mask[i] !== 0),
      frame.columns,
    );
  }
  return chain(mask, middle, frame.columns).flatMap(({ cells }) => linesOf(frame, cells));
}

/** Seam cells and the cells around them: a seam that winds between polyps would else be full of holes. */
function bandOf(frame: Frame): Uint8Array {
  const { seam, columns, rows } = frame;
  const mask = new Uint8Array(seam.length);
  for (let i = 0; i < seam.length; i++) {
    if ((seam[i] & 7) === 0) continue;
    const column = i % columns;
    const row = (i - column) / columns;
    for (let r = Math.max(1, row - 1); r <= Math.min(rows - 2, row + 1); r++) {
      for (let c = Math.max(1, column - 1); c <= Math.min(columns - 2, column + 1); c++)
        mask[r * columns + c] = 1;
    }
  }
  return mask;
}

interface Chain {
  readonly cells: readonly number[];
  /** How many lines meet at each end: 1 a loose end, 2 a loop, more a junction. */
  readonly ends: readonly [number, number];
}

/** A short line that hangs on a junction by one end. */
function isSpur({ cells, ends }: Chain, spurCells: number): boolean {
  return cells.length <= spurCells && Math.min(...ends) === 1 && Math.max(...ends) > 2;
}

/** Cells in order along each line: from end or junction to end or junction; loops last. */
function chain(mask: Uint8Array, middle: readonly number[], columns: number): Chain[] {
  const around = ring(columns);
  const linked = (i: number): number[] => around.map((step) => i + step).filter((j) => mask[j] !== 0);
  const degree = new Map(middle.map((i) => [i, linked(i).length]));
  const used = new Set<number>();
  const chains: Chain[] = [];
  const walk = (from: number, next: number): number[] => {
    const line = [from, next];
    used.add(from);
    while (degree.get(next) === 2) {
      used.add(next);
      const before = line[line.length - 2];
      const on = linked(next).find((j) => j !== before && (degree.get(j) !== 2 || !used.has(j)));
      if (on === undefined) break;
      line.push(on);
      next = on;
    }
    return line;
  };
  for (const i of middle) {
    const ways = degree.get(i) ?? 0;
    if (ways === 2) continue;
    used.add(i);
    for (const j of linked(i)) {
      if (degree.get(j) === 2 ? used.has(j) : j < i) continue;
      const line = walk(i, j);
      chains.push({ cells: line, ends: [ways, degree.get(line[line.length - 1]) ?? 0] });
    }
  }
  for (const i of middle) {
    if (used.has(i) || degree.get(i) !== 2) continue;
    const line = walk(i, linked(i)[0]);
    chains.push({ cells: [...line, i], ends: [2, 2] });
  }
  return chains;
}

function linesOf(frame: Frame, cells: readonly number[]): SeamLine[] {
  const closed = cells.length > 3 && cells[0] === cells[cells.length - 1];
  const points = smooth(
    cells.map((i) => centre(frame, i)),
    closed,
    SMOOTH_MM / frame.cellMm,
  );
  const states = settle(
    cells.map((i) => stateAround(frame, i)),
    LEAST_RUN_MM / frame.cellMm,
  );
  const lines: SeamLine[] = [];
  for (let start = 0; start < points.length - 1;) {
    let end = start + 1;
    while (end < points.length - 1 && states[end] === states[start]) end++;
    const run = points.slice(start, end + 1);
    lines.push({
      outcome: SEAM_OUTCOMES[states[start] - 1],
      points: run,
      lengthMm: lengthOf(run),
      covered: states[start] === 4 ? coveredSide(frame, run) : 1,
    });
    start = end;
  }
  return lines;
}

function place(frame: Frame, column: number, row: number): Xy {
  return [(column - (frame.columns - 1) / 2) * frame.cellMm, (row - (frame.rows - 1) / 2) * frame.cellMm];
}

/** Middle of the seam cells close by, so that the line lies between the two sides. */
function centre(frame: Frame, i: number): Xy {
  let [count, sumX, sumY] = [0, 0, 0];
  forNear(frame, i, 2, (j, column, row) => {
    if ((frame.seam[j] & 7) === 0) return;
    count++;
    sumX += column;
    sumY += row;
  });
  return count === 0
    ? place(frame, i % frame.columns, Math.floor(i / frame.columns))
    : place(frame, sumX / count, sumY / count);
}

function stateAround(frame: Frame, i: number): number {
  const votes = [0, 0, 0, 0, 0, 0, 0, 0];
  let [cells, bare] = [0, 0];
  forNear(frame, i, 2, (j) => {
    const fate = frame.seam[j] & 7;
    if (fate === 0) return;
    votes[fate]++;
    cells++;
    if (frame.label[j] === BARE) bare++;
  });
  // one of the two sides, or both
  if (cells > 0 && 2 * bare >= cells) return FATE.dead;
  // what only looks fused from above is a ridge all the same
  votes[FATE.ridge] += votes[VEILED];
  votes[VEILED] = 0;
  return Math.max(1, votes.indexOf(Math.max(...votes)));
}

function forNear(
  frame: Frame,
  i: number,
  reach: number,
  visit: (j: number, column: number, row: number) => void,
): void {
  const column = i % frame.columns;
  const row = (i - column) / frame.columns;
  for (let r = Math.max(0, row - reach); r <= Math.min(frame.rows - 1, row + reach); r++) {
    for (let c = Math.max(0, column - reach); c <= Math.min(frame.columns - 1, column + reach); c++) {
      visit(r * frame.columns + c, c, r);
    }
  }
}

/** Short runs take the state before them, or after them at the start. */
function settle(states: number[], least: number): number[] {
  const out = [...states];
  for (let start = 0; start < out.length;) {
    let end = start;
    while (end < out.length && out[end] === out[start]) end++;
    if (end - start < least && end - start < out.length) {
      const taken = start > 0 ? out[start - 1] : out[end];
      out.fill(taken, start, end);
    }
    start = end;
  }
  return out;
}

/** Passes of 1 2 1 / 4 along the line; its ends stay where they are. */
function smooth(points: Xy[], closed: boolean, sdCells: number): Xy[] {
  const passes = Math.round(2 * sdCells * sdCells);
  let now = points;
  const last = points.length - 1;
  for (let pass = 0; pass < passes; pass++) {
    now = now.map(([x, y], k): Xy => {
      if (!closed && (k === 0 || k === last)) return [x, y];
      const before = now[k === 0 ? last - 1 : k - 1];
      const after = now[k === last ? 1 : k + 1];
      return [(before[0] + 2 * x + after[0]) / 4, (before[1] + 2 * y + after[1]) / 4];
    });
  }
  return now;
}

function lengthOf(points: readonly Xy[]): number {
  let sum = 0;
  for (let k = 1; k < points.length; k++) {
    sum += Math.hypot(points[k][0] - points[k - 1][0], points[k][1] - points[k - 1][1]);
  }
  return sum;
}

/** Which side most of the covered cells lie on, seen along the line. */
function coveredSide(frame: Frame, run: readonly Xy[]): 1 | -1 {
  let vote = 0;
  for (let k = 0; k < run.length - 1; k++) {
    const [x, y] = run[k];
    const [dx, dy] = [run[k + 1][0] - x, run[k + 1][1] - y];
    const column = Math.round(x / frame.cellMm + (frame.columns - 1) / 2);
    const row = Math.round(y / frame.cellMm + (frame.rows - 1) / 2);
    forNear(frame, row * frame.columns + column, 2, (j, c, r) => {
      if ((frame.seam[j] & 7) !== 4) return;
      const [px, py] = place(frame, c, r);
      const right = Math.sign(dx * (py - y) - dy * (px - x));
      vote += (frame.seam[j] & 8) === 0 ? right : -right;
    });
  }
  return vote >= 0 ? 1 : -1;
}

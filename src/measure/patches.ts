/**
 * Patches of one colour: what tells veins from speckle in the swirl.
 * Definition: a patch is a 4-connected set of tissue cells of one variety and one colony. Found by joining the runs of
 * each row to the overlapping runs of the row above (union-find), so that memory goes with runs and not with cells.
 */
import { doubleColumns } from '../model/cell-list';
import { BARE, type State } from '../model/state';

/** Runs of like cells found so far, in reading order; each names its patch's first run as root. */
interface Runs {
  count: number;
  start: Int32Array;
  end: Int32Array;
  root: Int32Array;
  cells: Int32Array;
}

function addRun(runs: Runs, start: number, end: number): void {
  if (runs.count === runs.start.length) doubleColumns(runs);
  const run = runs.count++;
  runs.start[run] = start;
  runs.end[run] = end;
  runs.root[run] = run;
  runs.cells[run] = end - start;
}

function rootOf(root: Int32Array, run: number): number {
  let at = run;
  while (root[at] !== at) {
    root[at] = root[root[at]];
    at = root[at];
  }
  return at;
}

function join(runs: Runs, a: number, b: number): void {
  const rootA = rootOf(runs.root, a);
  const rootB = rootOf(runs.root, b);
  if (rootA === rootB) return;
  const keep = Math.min(rootA, rootB);
  const gone = Math.max(rootA, rootB);
  runs.root[gone] = keep;
  runs.cells[keep] += runs.cells[gone];
}

/** Cells of each colony that lie in patches smaller than `belowMm2`, by colony. */
export function cellsInSmallPatches(state: State, belowMm2: number): Uint32Array {
  const { variety, origin, colony, layout } = state;
  const { columns, rows, cellMm } = layout;
  const small = new Uint32Array(state.pieces.count + 1);
  const runs: Runs = {
    count: 0,
    start: new Int32Array(1024),
    end: new Int32Array(1024),
    root: new Int32Array(1024),
    cells: new Int32Array(1024),
  };
  const alike = (a: number, b: number): boolean =>
    variety[a] === variety[b] && colony[origin[a]] === colony[origin[b]];

  let above = 0;
  for (let r = 1; r < rows - 1; r++) {
    const first = runs.count;
    const rowEnd = (r + 1) * columns;
    for (let i = r * columns; i < rowEnd;) {
      const start = i++;
      if (variety[start] === 0 || variety[start] === BARE) continue;
      while (i < rowEnd && alike(start, i)) i++;
      addRun(runs, start, i);
    }
    for (let run = first, up = above; run < runs.count && up < first;) {
      const upEnd = runs.end[up] + columns;
      const meets = runs.start[up] + columns < runs.end[run] && runs.start[run] < upEnd;
      if (meets && alike(runs.start[run], runs.start[up])) join(runs, run, up);
      if (upEnd < runs.end[run]) up++;
      else run++;
    }
    above = first;
  }

  const least = belowMm2 / (cellMm * cellMm);
  for (let run = 0; run < runs.count; run++) {
    if (runs.cells[rootOf(runs.root, run)] < least)
      small[colony[origin[runs.start[run]]]] += runs.end[run] - runs.start[run];
  }
  return small;
}

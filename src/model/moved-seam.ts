/** What lapping does to the seam table: the seam moves along with the edge of the covering tissue. */
import { closeRow, forNeighbours, openRow, partnerOf, queueFrom } from './contact';
import { AXIS_X, AXIS_Y } from './front';
import { FATE } from './seam-table';
import { BARE, joinColonies, type State } from './state';

/** New rows around a covered cell: lapped against what is left of the loser, open against anyone else. */
export function moveSeam(state: State, cell: number, loser: number): void {
  const { origin, variety, row, seam } = state;
  const { columns } = state.layout;
  for (let axis = -1; axis < 4; axis++) {
    const j = axis < 0 ? cell : cell + AXIS_X[axis] + AXIS_Y[axis] * columns;
    if (variety[j] === BARE) leaveBare(state, j);
    if (variety[j] === 0 || variety[j] === BARE) continue;
    joinAlike(state, cell, j);
    const partner = partnerOf(state, j);
    if (partner < 0) {
      // no longer on any seam
      if (seam.fate[row[j]] !== FATE.dead) closeRow(state, j);
      continue;
    }
    const r = row[j];
    if (r !== 0 && origin[j] === seam.own[r]) {
      const across = facing(state, j, seam.other[r]);
      if (across >= 0) {
        seam.partner[r] = across;
        continue;
      }
    }
    closeRow(state, j);
    openRow(state, j);
    const opened = row[j];
    const faces =
      origin[j] === loser ? seam.other[opened] : seam.other[opened] === loser ? seam.own[opened] : -1;
    if (faces === origin[cell] && opened !== 0) inheritVerdict(state, opened);
  }
}

/** A sting past the end of a dead stretch bares cells of other verdicts: they keep them while the other side is there. */
function leaveBare(state: State, cell: number): void {
  const { row, seam } = state;
  const r = row[cell];
  if (r === 0 || seam.fate[r] === FATE.dead) return;
  const across = facing(state, cell, seam.other[r]);
  if (across >= 0) seam.partner[r] = across;
  else closeRow(state, cell);
}

/** Two pieces of one variety that lapping brought together are one colony. */
function joinAlike(state: State, a: number, b: number): void {
  const { origin, pieces } = state;
  const varietyOf = pieces.variety;
  if (origin[a] !== origin[b] && varietyOf[origin[a]] === varietyOf[origin[b]]) {
    joinColonies(state, origin[a], origin[b]);
  }
}

/** The cell of origin `other` across: least arrival, then least index; -1 for none. */
export function facing(state: State, cell: number, other: number): number {
  const { origin, arrival, layout } = state;
  let across = -1;
  for (let axis = 0; axis < 4; axis++) {
    const j = cell + AXIS_X[axis] + AXIS_Y[axis] * layout.columns;
    if (origin[j] !== other) continue;
    if (across < 0 || arrival[j] < arrival[across] || (arrival[j] === arrival[across] && j < across))
      across = j;
  }
  return across;
}

/** A row that lapping has moved keeps the verdict of the first nucleus by which the two lap. */
function inheritVerdict(state: State, r: number): void {
  const { seam, nuclei, lapPairs } = state;
  const a = seam.own[r];
  const b = seam.other[r];
  const nucleus = lapPairs.get(a * 65536 + b) ?? lapPairs.get(b * 65536 + a);
  if (nucleus === undefined) return;
  seam.fate[r] = FATE.lapped;
  seam.nucleus[r] = nucleus;
  // the verdict is as old as it was: a seam that moves does not settle anew
  seam.touched[r] = nuclei.day[nucleus];
  seam.settled[r] = nuclei.day[nucleus];
  // but it runs on only from the day on which it came here
  forNeighbours(state, r, (n) => {
    queueFrom(state, r, n, state.day + 1);
  });
}

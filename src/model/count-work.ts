/** Counts what a step takes off, before it is gone. */
import { isLiving } from './clear';
import type { State } from './state';
import type { Work } from './works';

export function beginWork(state: State, step: string, day: number): Work {
  const work: Work = {
    step,
    day,
    cuttings: 0,
    twoColoured: 0,
    cutCells: new Uint32Array(9),
    lostCells: new Uint32Array(9),
    skipped: 0,
  };
  state.works.push(work);
  return work;
}

/** Counts the living cells that are marked as lost. */
export function countLost(state: State, isLost: Uint8Array, work: Work): void {
  for (let i = 0; i < isLost.length; i++)
    if (isLost[i] === 1 && isLiving(state, i)) work.lostCells[state.variety[i]]++;
}

/** Counts the living cells that are marked as cuttings, fragment by fragment: cells that share a side hold together. */
export function countCuttings(state: State, isCut: Uint8Array, work: Work): void {
  const { variety } = state;
  const { columns, cellMm } = state.layout;
  const enough = 1 / (cellMm * cellMm);
  const seen = new Uint8Array(isCut.length);
  const comesOff = (i: number): boolean => isCut[i] === 1 && isLiving(state, i);
  for (let first = 0; first < isCut.length; first++) {
    if (seen[first] === 1 || !comesOff(first)) continue;
    const cells = new Uint32Array(9);
    const waiting = [first];
    seen[first] = 1;
    for (let i = waiting.pop(); i !== undefined; i = waiting.pop()) {
      cells[variety[i]]++;
      for (const j of [i - 1, i + 1, i - columns, i + columns]) {
        if (seen[j] === 1 || !comesOff(j)) continue;
        seen[j] = 1;
        waiting.push(j);
      }
    }
    work.cuttings++;
    if (cells.filter((count) => count >= enough).length > 1) work.twoColoured++;
    cells.forEach((count, v) => (work.cutCells[v] += count));
  }
}

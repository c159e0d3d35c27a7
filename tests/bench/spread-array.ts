/** The job as a plain scan: one byte a cell, every cell is asked every day, nothing is kept between days. */
import { COVER, lot, setVariety, STEP_X, STEP_Y, sumOf, type Spread } from './spread';

export function spreadByArray(side: number, seed: number): Spread {
  // a border of one cell that is never filled saves asking whether a neighbour lies on the lattice
  const columns = side + 2;
  let variety = new Uint8Array(columns * columns);
  let cells = 0;
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) {
      const set = setVariety(side, x, y);
      variety[(y + 1) * columns + x + 1] = set;
      if (set !== 0) cells++;
    }
  }
  const offset = [...STEP_X.map((dx, k) => dx + STEP_Y[k] * columns), 0];
  let next = variety.slice();
  let days = 0;
  while (cells < COVER * side * side) {
    days++;
    for (let y = 0; y < side; y++) {
      const from = (y + 1) * columns + 1;
      for (let x = 0; x < side; x++) {
        const i = from + x;
        if (variety[i] !== 0) continue;
        const found = variety[i + offset[lot(seed, days, y * side + x)]];
        if (found === 0) continue;
        next[i] = found;
        cells++;
      }
    }
    [variety, next] = [next, variety];
    next.set(variety);
  }
  const end = variety;
  return { days, cells, sum: sumOf(side, (x, y) => end[(y + 1) * columns + x + 1]) };
}

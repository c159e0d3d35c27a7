/** A tile cut into squares that are dealt out again in another order onto the same places. */
import { DEFAULTS } from '../model/defaults';
import { draw } from '../model/noise';
import type { StepOf, Tile, Xy } from '../plan/plan';
import { faceName, facesOfRecut } from '../plan/steps';

/** The step: lines all across a square tile every `squareMm`, and the faces in an order drawn by `key`. */
export function dealtSquares(tile: Tile, squareMm: number, day: number, key: number): StepOf<'recut'> {
  const half = tile.sizeMm / 2;
  const lines: Xy[][] = [];
  for (let at = squareMm - half; at < half - 1e-9; at += squareMm)
    lines.push([[at, -half], [at, half]], [[-half, at], [half, at]]); // prettier-ignore
  const step = { id: 'deal', day, kind: 'recut', lines, kerfMm: DEFAULTS.kerfMm.value, then: [] } as const;
  const places = facesOfRecut(tile, step).map(({ centroid }) => centroid);
  const order = [...places.keys()].sort((a, b) => draw(key, a, 0) - draw(key, b, 0));
  const then = places.map((at, k) => ({ piece: faceName(step, order[k]), at, turnDeg: 0 }));
  return { ...step, then };
}

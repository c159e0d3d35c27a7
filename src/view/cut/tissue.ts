/** The outline of all tissue on a tile, holes included. */
import type { Frame } from '../../model/frame';
import { ringsOf } from '../../plan/lattice-outline';
import type { Xy } from '../../plan/plan';
import { simplifyOutline } from '../../units/simplify';
import { isTissue } from './patch';

const MOST_CORNERS = 400;
/** Rings smaller than this are specks, corners. */
const LEAST_CORNERS = 8;

const known = new WeakMap<Frame, Xy[][]>();

export function tissueRings(frame: Frame): Xy[][] {
  const before = known.get(frame);
  if (before) return before;
  const { columns, rows, cellMm, label } = frame;
  const part = Int32Array.from(label, (one) => (isTissue(one) ? 1 : 0));
  const cells: number[] = [];
  part.forEach((is, cell) => {
    if (is === 1) cells.push(cell);
  });
  const rings = ringsOf({ columns, part }, cells)
    .filter((ring) => ring.length >= LEAST_CORNERS)
    .map((ring) =>
      simplifyOutline(
        ring.map(([x, y]): Xy => [(x - columns / 2) * cellMm, (y - rows / 2) * cellMm]),
        MOST_CORNERS,
        cellMm,
      ),
    );
  known.set(frame, rings);
  return rings;
}

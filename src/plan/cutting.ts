/** A plan of its own for what was cut out of a grown tile. */
import { ownOutline } from './outline';
import { LARGEST_TILE_MM, type GraftPiece, type Plan } from './plan';

/** Room for growth around a cutting, mm on every side. */
const ROOM_MM = 25;

/** The cutting in the middle of a fresh disc, with the varieties and pairs of the plan it came from. */
export function planOfCutting(from: Plan, cutting: GraftPiece): Plan {
  const reachMm = Math.max(...ownOutline(cutting).map(([x, y]) => Math.hypot(x, y)));
  const sizeMm = Math.min(LARGEST_TILE_MM, Math.ceil(2 * (reachMm + ROOM_MM)));
  return {
    ...from,
    name: `Cutting of ${from.name}`.slice(0, 200),
    tile: { shape: 'disc', sizeMm },
    pieces: [{ ...cutting, at: [0, 0] }],
    steps: [],
  };
}

/** What a reading leaves to its plan: the share of the tile under tissue. */
import type { Reading } from '../../measure/reading';
import type { Plan, Tile } from '../../plan/plan';

function tileAreaMm2(tile: Tile): number {
  const square = tile.sizeMm * tile.sizeMm;
  return tile.shape === 'disc' ? (Math.PI / 4) * square : square;
}

/** Share of the tile under tissue. */
export function coverShare(reading: Reading, plan: Plan): number {
  return reading.coverMm2 / tileAreaMm2(plan.tile);
}

/**
 * Colour balance, 0 to 1: how evenly the varieties that were set share the tissue.
 * Definition: 1 - K / (2 (K - 1)) * sum over the K varieties of |share - 1/K|; 1 when all hold alike, 0 when one holds
 * all. A variety that was set and died out still counts among the K. Null for one variety or no tissue.
 * Source: total variation distance from the even split, scaled to 0..1 (our choice). No bias of its own.
 */
import type { PieceTable } from '../model/layout';
import { coverMm2 } from './cover';

/** Share of the tissue that each variety holds, by number; all 0 where there is no tissue. */
export function sharesOf(areas: Float64Array): Float64Array {
  const cover = coverMm2(areas);
  return areas.map((area) => (cover > 0 ? area / cover : 0));
}

export function balanceOf(areas: Float64Array, pieces: Pick<PieceTable, 'count' | 'variety'>): number | null {
  const set = new Set(pieces.variety.subarray(1, pieces.count + 1));
  const k = set.size;
  if (k < 2 || coverMm2(areas) === 0) return null;
  const shares = sharesOf(areas);
  let distance = 0;
  for (const variety of set) distance += Math.abs(shares[variety] - 1 / k);
  return 1 - (k / (2 * (k - 1))) * distance;
}

/**
 * Cover: area of living tissue, mm2, of a variety and of all. Definition: cells of tissue times the cell's area;
 * bare skeleton does not count. Exact in cells: tissue + bare + empty = the tile.
 * Known bias: a straight rim in one cell's width is rounded to whole cells, in the mean to nothing.
 */
import { CENSUS_STRIDE, type Census } from './census';

/** mm2 of each variety, by number; index 0 unused. */
export function areasMm2(census: Census): Float64Array {
  const areas = new Float64Array(CENSUS_STRIDE);
  for (let colony = 0; colony < census.colonies; colony++)
    for (let k = 1; k < CENSUS_STRIDE; k++)
      areas[k] += census.cells[colony * CENSUS_STRIDE + k] * census.cellMm2;
  return areas;
}

export function coverMm2(areas: Float64Array): number {
  return areas.reduce((sum, area) => sum + area, 0);
}

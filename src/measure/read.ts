import { hashState } from '../model/hash';
import type { State } from '../model/state';
import { whole } from '../model/steps';
import { balanceOf, sharesOf } from './balance';
import { takeCensus } from './census';
import { areasMm2, coverMm2 } from './cover';
import type { PairReading, Reading, StepReading } from './reading';
import { ridgeHeights } from './ridge-height';
import { pairKey, seamByFate, seamLengths, touchingPairOfRow } from './seam';
import { firstTouchDay, settledDay } from './settled';
import { swirlOf } from './swirl';
import { veinWidthMm } from './vein-width';

function pairReadings(
  state: State,
  varietyIds: readonly string[],
  lengthOfRow: Float64Array,
  keyOfRow: Uint8Array,
): PairReading[] {
  const pairs: PairReading[] = [];
  for (let a = 1; a < varietyIds.length; a++)
    for (let b = a + 1; b < varietyIds.length; b++) {
      const seam = seamByFate(state, lengthOfRow, keyOfRow, pairKey(a, b));
      if (seam.lengthMm > 0) pairs.push({ a: varietyIds[a], b: varietyIds[b], ...seam });
    }
  return pairs;
}

function stepReadings(state: State, varietyIds: readonly string[]): StepReading[] {
  const cellMm2 = state.layout.cellMm * state.layout.cellMm;
  const areas = (cells: Uint32Array): Record<string, number> =>
    Object.fromEntries(varietyIds.slice(1).map((id, k) => [id, cells[k + 1] * cellMm2]));
  return state.works.map(({ step, day, cuttings, twoColoured, cutCells, lostCells, skipped }) => ({
    id: step,
    day,
    cuttings,
    twoColoured,
    cutMm2: areas(cutCells),
    lostMm2: areas(lostCells),
    skipped,
  }));
}

/**
 * The reading of a tile: the measures put together, nothing computed here. `varietyIds` by number, index 0 unused.
 * Yields between measures: on the largest tile they take a fifth of a second together, and a run must hear a cancel.
 */
export function* readBySteps(
  state: State,
  varietyIds: readonly string[],
  seed: string,
  month: number,
): Generator<undefined, Reading> {
  const census = takeCensus(state);
  const areas = areasMm2(census);
  const shares = sharesOf(areas);
  yield;
  const keyOfRow = touchingPairOfRow(state);
  const lengthOfRow = seamLengths(state, keyOfRow);
  const ridge = ridgeHeights(state, lengthOfRow);
  const pairs = pairReadings(state, varietyIds, lengthOfRow, keyOfRow);
  yield;
  const swirl = swirlOf(state, census);
  yield;
  const vein = veinWidthMm(state, census, keyOfRow);
  yield;
  const settled = settledDay(state, lengthOfRow);
  const hash = hashState(state);
  yield;
  const varieties = varietyIds
    .slice(1)
    .map((id, at) => [id, { areaMm2: areas[at + 1], share: shares[at + 1] }]);
  return {
    seed,
    month,
    coverMm2: coverMm2(areas),
    varieties: Object.fromEntries(varieties) as Reading['varieties'],
    balance: balanceOf(areas, state.pieces),
    seam: seamByFate(state, lengthOfRow, keyOfRow, 0),
    pairs,
    swirl,
    veinWidthMm: vein,
    ridgeHeightMm: ridge.meanMm,
    ridgeMaxMm: ridge.maxMm,
    firstTouchDay: firstTouchDay(state),
    settledDay: settled,
    steps: stepReadings(state, varietyIds),
    hash,
  };
}

/** The reading in one go. */
export function read(...asked: Parameters<typeof readBySteps>): Reading {
  return whole(readBySteps(...asked));
}

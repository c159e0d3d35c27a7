import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeCensus } from '../../src/measure/census';
import { areasMm2, coverMm2 } from '../../src/measure/cover';
import { cellsInSmallPatches } from '../../src/measure/patches';
import { pairKey, seamByFate, seamLengths, touchingPairOfRow } from '../../src/measure/seam';
import { swirlOf } from '../../src/measure/swirl';
import { BARE, type State } from '../../src/model/state';
import { paintedState } from '../fixtures/painted-state';

const SIDE = 12;
const VARIETIES = [1, 2, 3, 1];

/** A tile of 12 x 12 cells with any pieces, colours, joined colonies and fates at all. */
const tiles = fc
  .record({
    pieces: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: SIDE * SIDE, maxLength: SIDE * SIDE }),
    colours: fc.array(fc.constantFrom(0, 1, 2, 3, 1, 2, 3, BARE), {
      minLength: SIDE * SIDE,
      maxLength: SIDE * SIDE,
    }),
    fates: fc.array(fc.integer({ min: 1, max: 5 }), { minLength: SIDE * SIDE, maxLength: SIDE * SIDE }),
    touched: fc.array(fc.integer({ min: 0, max: 120 }), { minLength: SIDE * SIDE, maxLength: SIDE * SIDE }),
    joined: fc.array(fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 })), {
      maxLength: 3,
    }),
  })
  .map(({ pieces, colours, fates, touched, joined }) => {
    const at = (x: number, y: number) => (y + SIDE / 2 - 0.5) * SIDE + x + SIDE / 2 - 0.5;
    return paintedState({
      sizeMm: SIDE,
      cellMm: 1,
      varieties: VARIETIES,
      piece: (x, y) => pieces[at(x, y)] ?? 0,
      variety: (x, y, piece) => (piece === 0 ? 0 : (colours[at(x, y)] ?? 0)),
      joined,
      contact: (x, y) => ({ fate: fates[at(x, y)] ?? 1, touchedDay: touched[at(x, y)] ?? 0, settledDay: 90 }),
    });
  });

/** Cells in small patches by plain flood fill, the definition. */
function floodedSmall(state: State, belowCells: number): Uint32Array {
  const { variety, colony, origin, layout } = state;
  const small = new Uint32Array(state.pieces.count + 1);
  const seen = new Set<number>();
  for (let i = 0; i < variety.length; i++) {
    if (variety[i] === 0 || variety[i] === BARE || seen.has(i)) continue;
    const patch = [i];
    seen.add(i);
    for (const cell of patch)
      for (const next of [cell - 1, cell + 1, cell - layout.columns, cell + layout.columns]) {
        const alike = variety[next] === variety[i] && colony[origin[next] ?? 0] === colony[origin[i] ?? 0];
        if (!alike || seen.has(next)) continue;
        seen.add(next);
        patch.push(next);
      }
    if (patch.length < belowCells) small[colony[origin[i] ?? 0] ?? 0] += patch.length;
  }
  return small;
}

describe('measures on any tile', () => {
  it('areas by variety, bare and empty ground add up to the tile, exactly', () => {
    fc.assert(
      fc.property(tiles, (state) => {
        const census = takeCensus(state);
        const cells = coverMm2(areasMm2(census)) + census.bareCells + census.emptyCells;
        expect(cells).toBe(SIDE * SIDE);
      }),
    );
  });

  it('seam lengths add up over fates and over pairs, and are never negative', () => {
    fc.assert(
      fc.property(tiles, (state) => {
        const keyOfRow = touchingPairOfRow(state);
        const lengths = seamLengths(state, keyOfRow);
        const all = seamByFate(state, lengths, keyOfRow, 0);
        const parts = [all.fusedMm, all.ridgeMm, all.lappedMm, all.deadMm, all.undecidedMm];
        expect(Math.min(...parts)).toBeGreaterThanOrEqual(0);
        expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(all.lengthMm, 9);
        const keys = [pairKey(1, 2), pairKey(1, 3), pairKey(3, 2)];
        const pairs = keys.map((key) => seamByFate(state, lengths, keyOfRow, key).lengthMm);
        expect(pairs.reduce((sum, pair) => sum + pair, 0)).toBeCloseTo(all.lengthMm, 9);
        const untouched = keyOfRow.findIndex((key, row) => key === 0 && (lengths[row] ?? 0) > 0);
        expect(untouched).toBe(-1);
      }),
    );
  });

  it('patches found by runs are those of a flood fill', () => {
    fc.assert(
      fc.property(tiles, fc.integer({ min: 1, max: 30 }), (state, below) => {
        expect([...cellsInSmallPatches(state, below)]).toEqual([...floodedSmall(state, below)]);
      }),
    );
  });

  it('swirl stays within 0 and 1, or is null', () => {
    fc.assert(
      fc.property(tiles, (state) => {
        const swirl = swirlOf(state, takeCensus(state)) ?? 0;
        expect(swirl).toBeGreaterThanOrEqual(0);
        expect(swirl).toBeLessThanOrEqual(1);
      }),
    );
  });
});

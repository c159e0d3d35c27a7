/** The section of any grown tile along any line is what the frame says, neither more nor less. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { section } from '../../src/measure/section';
import { frameOf, type Frame } from '../../src/model/frame';
import { grow } from '../../src/model/grow';
import { BARE } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import type { Plan } from '../../src/plan/plan';
import { randomPlanWithSteps } from '../fixtures/random-steps';

const RUNS = 80;

type Place = readonly [number, number];

/** To 0.01 mm, also beside the tile. */
const mm = fc.integer({ min: -2500, max: 2500 }).map((hundredths) => hundredths / 100);
const place = fc.tuple(mm, mm);

/** Neighbours in the list are strong and weak, so that where they do not take one often laps the other. */
function withLapping(plan: Plan): Plan {
  const varieties = plan.varieties.map((variety, k) => ({ ...variety, aggression: k % 2 }));
  return { ...plan, varieties, months: 5 };
}

/** Where there is something covered or bare the line goes over it, and as far again beyond. */
function aimed(frame: Frame, from: Place, otherwise: Place, pick: number): Place {
  const bare = [...frame.label.keys()].filter((i) => frame.label[i] === BARE);
  const cells = pick % 3 === 0 ? bare : [...frame.beneath.cell];
  if (cells.length === 0) return otherwise;
  const cell = cells[pick % cells.length];
  const [column, row] = [cell % frame.columns, Math.floor(cell / frame.columns)];
  const x = (column - (frame.columns - 1) / 2) * frame.cellMm;
  const y = (row - (frame.rows - 1) / 2) * frame.cellMm;
  return [2 * x - from[0], 2 * y - from[1]];
}

function cellAt(frame: Frame, [x, y]: Place): number {
  const column = Math.floor(x / frame.cellMm + frame.columns / 2);
  const row = Math.floor(y / frame.cellMm + frame.rows / 2);
  const isOn = column >= 0 && column < frame.columns && row >= 0 && row < frame.rows;
  return isOn ? row * frame.columns + column : -1;
}

it('layers stack without gaps or overlaps up to the height of the cell under the line', () => {
  let [layered, bare, joints] = [0, 0, 0];
  fc.assert(
    fc.property(
      randomPlanWithSteps(3, 90),
      fc.integer(),
      place,
      place,
      fc.nat(),
      (random, seed, from, there, pick) => {
        const plan = withLapping(random);
        let frame: Frame | undefined;
        for (const state of grow(compile(plan, 0.5), String(seed)))
          if (state.day === state.layout.days) frame = frameOf(state, plan.months);
        if (frame === undefined) throw new Error('a run has a last day');
        const to = aimed(frame, from, there, pick);
        const { slices, joints: found, lengthMm } = section(frame, from, to);
        let end = 0;
        for (const { fromMm, toMm, surfaceMm, layers } of slices) {
          expect(fromMm).toBeCloseTo(end, 9);
          end = toMm;
          const share = lengthMm === 0 ? 0 : (fromMm + toMm) / 2 / lengthMm;
          const cell = cellAt(frame, [
            from[0] + share * (to[0] - from[0]),
            from[1] + share * (to[1] - from[1]),
          ]);
          // a cut so short that rounding decides whose it is has no middle
          if (toMm - fromMm > 1e-9) {
            expect(surfaceMm).toBe(cell < 0 ? 0 : frame.height[cell] / 100);
            const label = cell < 0 ? 0 : frame.label[cell];
            expect(layers.at(-1)?.variety ?? 0).toBe(label === BARE ? 0 : label);
          }
          let below = 0;
          for (const layer of layers) {
            expect(layer.fromMm).toBe(below);
            expect(layer.toMm).toBeGreaterThan(layer.fromMm);
            below = layer.toMm;
          }
          expect(below).toBe(surfaceMm);
          expect(layers.slice(0, -1).every(({ is }) => is === 'covered')).toBe(true);
          if (layers.length > 1) layered++;
          if (layers.at(-1)?.is === 'bare') bare++;
        }
        expect(end).toBeCloseTo(lengthMm, 9);
        for (const { atMm, fromMm, toMm, before, after, kind, covers } of found) {
          joints++;
          expect(atMm).toBeGreaterThanOrEqual(0);
          expect(atMm).toBeLessThanOrEqual(lengthMm + 1e-9);
          expect(fromMm).toBeLessThanOrEqual(atMm);
          expect(toMm).toBeGreaterThanOrEqual(atMm);
          expect(before).not.toBe(after);
          // of a frame that grew it is known who covers
          expect(covers === null).toBe(kind !== 'lapped');
          if (covers !== null) expect([before, after]).toContain(covers);
        }
      },
    ),
    { numRuns: RUNS },
  );
  // the property says nothing of what never comes up
  expect(layered).toBeGreaterThan(30);
  expect(bare).toBeGreaterThan(5);
  expect(joints).toBeGreaterThan(15);
}, 300_000);

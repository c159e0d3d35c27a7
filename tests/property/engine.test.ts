/** What must hold for every plan that a grower could make (model.md section 5). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grow } from '../../src/model/grow';
import { hashState } from '../../src/model/hash';
import { FATE } from '../../src/model/seam-table';
import { BARE, FLAG, type State } from '../../src/model/state';
import { TURNOVER_DAYS } from '../../src/model/turnover';
import { compile } from '../../src/plan/compile';
import type { Plan } from '../../src/plan/plan';
import { growByFullScan } from '../bench/full-scan';
import { assertSound } from '../fixtures/assert-sound';
import { randomPlan } from '../fixtures/random-plan';

const CELL_MM = 0.5;

function last(plan: Plan, seed: string, by = grow): State {
  let end: State | undefined;
  for (const state of by(compile(plan, CELL_MM), seed)) end = state;
  if (!end) throw new Error('a run yields its day 0');
  return end;
}

describe('engine, for random plans', () => {
  it('is sound on every day, and no cell loses its tissue, origin or variety but by a rule', () => {
    fc.assert(
      fc.property(randomPlan(8), fc.nat(1e6), (plan, seed) => {
        let before: { variety: Uint8Array; origin: Uint16Array; arrival: Float32Array } | undefined;
        for (const state of grow(compile(plan, CELL_MM), String(seed))) {
          if (state.day % 10 === 0) assertSound(state);
          const { variety, origin, arrival, flags, day, colony, colonyVarieties } = state;
          for (let i = 0; before && i < variety.length; i++) {
            const old = before.variety[i];
            if (old === 0) continue;
            if (variety[i] === 0) throw new Error(`day ${day}, cell ${i}: tissue vanished`);
            if (arrival[i] < before.arrival[i]) throw new Error(`day ${day}, cell ${i}: arrival fell`);
            const lapped = (flags[i] & FLAG.lapped) !== 0 && arrival[i] >= day - 1 && arrival[i] <= day;
            if (origin[i] !== before.origin[i] && !lapped)
              throw new Error(`day ${day}, cell ${i}: origin changed`);
            if (variety[i] === BARE && origin[i] === before.origin[i]) continue;
            if (variety[i] === old || (lapped && variety[i] !== BARE)) continue;
            const turned =
              day % TURNOVER_DAYS === 0 && (colonyVarieties[colony[origin[i]]] & (1 << old)) !== 0;
            if (!turned)
              throw new Error(`day ${day}, cell ${i}: variety changed from ${old} to ${variety[i]}`);
          }
          before = { variety: variety.slice(), origin: origin.slice(), arrival: arrival.slice() };
        }
      }),
      { numRuns: 80 },
    );
  });

  it('grows the same bits as a plain scan of the whole tile', () => {
    fc.assert(
      fc.property(randomPlan(10), fc.nat(1e6), (plan, seed) => {
        const scanned = hashState(last(plan, String(seed), growByFullScan));
        expect(hashState(last(plan, String(seed)))).toBe(scanned);
      }),
      { numRuns: 80 },
    );
  });

  it('gives one plan and seed one hash, and another seed another', () => {
    fc.assert(
      fc.property(randomPlan(6), fc.nat(1e6), (plan, seed) => {
        const rough = { ...plan, settings: { ...plan.settings, roughness: 0.1 } };
        const hash = hashState(last(rough, String(seed)));
        expect(hashState(last(rough, String(seed)))).toBe(hash);
        expect(hashState(last(rough, `${seed} again`))).not.toBe(hash);
      }),
      { numRuns: 20 },
    );
  });

  it('fuses nothing at acceptance 0 and rejects nothing at acceptance 1', () => {
    fc.assert(
      fc.property(randomPlan(8), fc.nat(1e6), fc.constantFrom(0, 1), (plan, seed, acceptance) => {
        const sure = {
          ...plan,
          pairs: plan.pairs.map((pair) => ({ ...pair, acceptance, revertPerMonth: 0 })),
          settings: { ...plan.settings, rimFactor: 1 },
        };
        const { seam, colonyVarieties, colony } = last(sure, String(seed));
        const fates = new Set(seam.fate.subarray(1, seam.count));
        if (acceptance === 1) {
          for (const fate of [FATE.ridge, FATE.lapped, FATE.dead]) expect(fates).not.toContain(fate);
        } else {
          expect(fates).not.toContain(FATE.fused);
          for (const root of colony.subarray(1)) expect(Math.log2(colonyVarieties[root]) % 1).toBe(0);
        }
      }),
      { numRuns: 80 },
    );
  });
});

describe('mirror', () => {
  it('gives the mirrored plan the same statistics: hashing forbids the same bits', () => {
    // two unlike discs and a square; mirrored in x. 48 seeds, means within 3 standard errors of their difference
    const plan = (sign: 1 | -1): Plan => ({
      seambench: 1,
      name: 'mirror',
      tile: { shape: 'square', sizeMm: 40 },
      varieties: [
        { id: 'a', name: 'a', colour: '#336644', rimMmPerMonth: 3, aggression: 0.2 },
        { id: 'b', name: 'b', colour: '#884466', rimMmPerMonth: 4, aggression: 0.6 },
      ],
      pairs: [{ a: 'a', b: 'b', acceptance: 0.6 }],
      pieces: [
        { id: 'p1', variety: 'a', at: [-9 * sign, -4], turnDeg: 0, disc: { diameterMm: 9 } },
        { id: 'p2', variety: 'b', at: [8 * sign, 5], turnDeg: 0, disc: { diameterMm: 7 } },
      ],
      steps: [],
      months: 8,
    });
    const shares = (sign: 1 | -1): number[] =>
      Array.from({ length: 48 }, (_, seed) => {
        const { variety } = last(plan(sign), String(seed));
        const a = variety.reduce((n, v) => n + (v === 1 ? 1 : 0), 0);
        return a / variety.reduce((n, v) => n + (v === 1 || v === 2 ? 1 : 0), 0);
      });
    const moments = (x: readonly number[]) => {
      const mean = x.reduce((s, y) => s + y, 0) / x.length;
      return { mean, variance: x.reduce((s, y) => s + (y - mean) ** 2, 0) / (x.length - 1) / x.length };
    };
    const [one, two] = [moments(shares(1)), moments(shares(-1))];
    expect(Math.abs(one.mean - two.mean)).toBeLessThan(3 * Math.sqrt(one.variance + two.variance));
  });
});

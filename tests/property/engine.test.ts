/** What must hold for every plan that a grower could make (model.md section 5). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grow } from '../../src/model/grow';
import { hashState } from '../../src/model/hash';
import { FATE } from '../../src/model/seam-table';
import { FLAG, type State } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import type { Plan } from '../../src/plan/plan';
import { growByFullScan } from '../bench/full-scan';
import { growByLapScan, growShuffled } from '../fixtures/other-ways';
import { randomPlan } from '../fixtures/random-plan';
import { randomPlanWithSteps } from '../fixtures/random-steps';

const CELL_MM = 0.5;

function last(plan: Plan, seed: string, by = grow): State {
  let end: State | undefined;
  for (const state of by(compile(plan, CELL_MM), seed)) end = state;
  if (!end) throw new Error('a run yields its day 0');
  return end;
}

function lappedCells({ flags }: State): number {
  return flags.reduce((sum, bits) => sum + ((bits & FLAG.lapped) !== 0 ? 1 : 0), 0);
}

describe('engine, for random plans', () => {
  it('grows the same bits as a plain scan of the whole tile', () => {
    fc.assert(
      fc.property(randomPlan(10), fc.nat(1e6), (plan, seed) => {
        const scanned = hashState(last(plan, String(seed), growByFullScan));
        expect(hashState(last(plan, String(seed)))).toBe(scanned);
      }),
      { numRuns: 80 },
    );
  });

  it('after steps too it grows and laps the same bits as plain scans', () => {
    fc.assert(
      fc.property(randomPlanWithSteps(8, 30), fc.nat(1e6), (plan, seed) => {
        const grown = hashState(last(plan, String(seed)));
        expect(hashState(last(plan, String(seed), growByFullScan))).toBe(grown);
        expect(hashState(last(plan, String(seed), growByLapScan))).toBe(grown);
      }),
      { numRuns: 60 },
    );
  });

  it('laps the same bits as a plain scan of all tissue', () => {
    let lapped = 0;
    fc.assert(
      fc.property(randomPlan(12, 28), fc.nat(1e6), (plan, seed) => {
        const walled = { ...plan, pairs: plan.pairs.map(({ a, b }) => ({ a, b, acceptance: 0 })) };
        const scanned = last(walled, String(seed), growByLapScan);
        expect(hashState(last(walled, String(seed)))).toBe(hashState(scanned));
        lapped += lappedCells(scanned);
      }),
      { numRuns: 60 },
    );
    expect(lapped).toBeGreaterThan(500);
  });

  it('does not depend on the order of its lists', () => {
    fc.assert(
      fc.property(randomPlan(8), fc.nat(1e6), (plan, seed) => {
        const shuffled = hashState(last(plan, String(seed), growShuffled));
        expect(hashState(last(plan, String(seed)))).toBe(shuffled);
      }),
      { numRuns: 60 },
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

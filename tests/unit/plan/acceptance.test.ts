import { describe, expect, it } from 'vitest';
import { acceptanceMean, acceptanceRange } from '../../../src/plan/acceptance';
import type { Pair } from '../../../src/plan/plan';

const pair = (saying: Omit<Pair, 'a' | 'b'>): Pair => ({ a: 'a', b: 'b', ...saying });
const tries = (took: number, tried: number) => pair({ acceptance: { took, tried } });

describe('how likely a pair takes', () => {
  it('takes a number as it is', () => {
    expect(acceptanceMean(pair({ acceptance: 0 }))).toBe(0);
    expect(acceptanceMean(pair({ acceptance: 0.7 }))).toBe(0.7);
    expect(acceptanceRange(pair({ acceptance: 0.7 }))).toBeNull();
  });

  it('weighs tries with Beta(0.05, 0.95), a judgement: one try that nearly failed', () => {
    expect(acceptanceMean(tries(0, 0))).toBeCloseTo(0.05, 12);
    expect(acceptanceMean(tries(3, 10))).toBeCloseTo(3.05 / 11, 12);
    expect(acceptanceMean(tries(10, 10))).toBeCloseTo(10.05 / 11, 12);
  });

  it('gives the 95 % range of what the tries allow', () => {
    const seldom = acceptanceRange(tries(3, 10));
    expect(seldom?.low).toBeGreaterThan(0.05);
    expect(seldom?.high).toBeLessThan(0.6);
    const never = acceptanceRange(tries(0, 890));
    expect(never?.low).toBeLessThan(1e-6);
    // Below the 95 % limits of 0 of 890 in Hildemann et al. 1980 (0.0034 to 0.0043), as the prior leans to failure.
    expect(never?.high).toBeLessThan(0.0034);
    const always = acceptanceRange(tries(10, 10));
    expect(always?.high).toBeGreaterThan(0.99);
  });

  it('reads kinship as published or judged, and a pair that is not listed as unknown', () => {
    const related = (word: Pair['related']) => acceptanceMean(pair({ related: word }));
    expect([related('unrelated'), related('unknown'), related('kin'), related('self')]).toEqual([
      0.003, 0.05, 0.5, 1,
    ]);
    expect(acceptanceMean(undefined)).toBe(0.05);
    expect(acceptanceMean(pair({ mingle: 'veins' }))).toBe(0.05);
  });
});

/** What same-bits.test.ts runs in Node and in Chromium: the hash of each plan at its last day. */
import { grow } from '../../src/model/grow';
import { hashState } from '../../src/model/hash';
import { compile } from '../../src/plan/compile';
import type { Plan } from '../../src/plan/plan';

export function hashAll(plans: readonly Plan[], seed: string, cellMm: number): string[] {
  return plans.map((plan) => {
    let hash = '';
    for (const state of grow(compile(plan, cellMm), seed)) {
      if (state.day === state.layout.days) hash = hashState(state);
    }
    return hash;
  });
}

/** Squares of numbers spread over 600 binary orders: sqrt must be exact on every host. */
export function sqrtDigest(): number {
  let digest = 0;
  let x = 1e-90;
  for (let k = 0; k < 10_000; k++) {
    x *= 1.0427;
    const bits = new Uint32Array(Float64Array.of(Math.sqrt(x)).buffer);
    digest = Math.imul(digest ^ bits[0], 0x01000193) + bits[1];
  }
  return digest | 0;
}

Object.assign(globalThis, { hashAll, sqrtDigest });

/** What same-bits.test.ts runs in Node, Chromium and Firefox: the hash of each plan at its last day. */
import { grow } from '../../src/model/grow';
import { hashState } from '../../src/model/hash';
import { compile } from '../../src/plan/compile';
import type { Plan } from '../../src/plan/plan';

/** A list of plans and the cell to grow them at. */
export interface Asked {
  readonly plans: readonly Plan[];
  readonly cellMm: number;
}

export interface Bits {
  readonly hashes: string[];
  readonly sqrt: number;
}

export function bitsOf(asked: readonly Asked[]): Bits {
  const hashes = asked.flatMap(({ plans, cellMm }) => plans.map((plan) => hashOf(plan, cellMm)));
  return { hashes, sqrt: sqrtDigest() };
}

function hashOf(plan: Plan, cellMm: number): string {
  let hash = '';
  for (const state of grow(compile(plan, cellMm), 'same bits')) {
    if (state.day === state.layout.days) hash = hashState(state);
  }
  return hash;
}

/** Squares of numbers spread over 600 binary orders: sqrt must be exact on every host. */
function sqrtDigest(): number {
  let digest = 0;
  let x = 1e-90;
  for (let k = 0; k < 10_000; k++) {
    x *= 1.0427;
    const bits = new Uint32Array(Float64Array.of(Math.sqrt(x)).buffer);
    digest = Math.imul(digest ^ bits[0], 0x01000193) + bits[1];
  }
  return digest | 0;
}

Object.assign(globalThis, { bitsOf });

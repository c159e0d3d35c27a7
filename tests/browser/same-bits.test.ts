/** One plan and seed, one result: Node, Chromium and Firefox agree on the whole state, down to the last bit. */
import fc from 'fast-check';
import { build } from 'vite';
import { beforeAll, expect, test } from 'vitest';
import { findFirefox } from '../../.ci/find-firefox.mjs';
import { PRESETS } from '../../src/plan/presets';
import { randomPlan } from '../fixtures/random-plan';
import { openFirefox } from './firefox';
import { bitsOf, type Asked, type Bits } from './hash-all';
import { openPage } from './open-page';

const presets = PRESETS.map(({ plan }) => plan);
/** The plans are the same in every run: which they are does not matter, and a fault can be looked into. */
const random = fc.sample(randomPlan(6), { numRuns: 200, seed: 20 });
const ASKED: Asked[] = [
  { plans: presets, cellMm: 0.5 },
  { plans: presets, cellMm: 0.25 },
  { plans: random, cellMm: 0.5 },
];
const CALL = `bitsOf(${JSON.stringify(ASKED)})`;

const firefox = findFirefox();
if ('why' in firefox) console.log(`Skipped, same bits in Firefox: ${firefox.why}`);

let inNode: Bits;
let engine: string;

async function engineText(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      lib: { entry: 'tests/browser/hash-all.ts', formats: ['iife'], name: 'engine' },
    },
  });
  const [bundle] = Array.isArray(built) ? built : [built];
  if (!('output' in bundle)) throw new Error('vite gave no bundle');
  return bundle.output[0].code;
}

beforeAll(async () => {
  engine = await engineText();
  inNode = bitsOf(ASKED);
}, 180_000);

test('plans differ in their bits, or agreement would say nothing', () => {
  expect(presets.length).toBeGreaterThanOrEqual(6);
  expect(inNode.hashes.length).toBe(2 * presets.length + random.length);
  expect(new Set(inNode.hashes).size).toBe(inNode.hashes.length);
});

test('Chromium grows the bits of Node', { timeout: 180_000 }, async () => {
  const page = await openPage();
  await page.evaluate(engine);
  expect(await page.evaluate(CALL)).toEqual(inNode);
});

test.skipIf('why' in firefox)('Firefox grows the bits of Node', { timeout: 180_000 }, async () => {
  if ('why' in firefox) throw new Error(firefox.why);
  const page = await openFirefox(firefox.found);
  try {
    expect(page.version).toMatch(/^firefox/iu);
    expect(await page.run(engine, CALL)).toEqual(inNode);
  } finally {
    await page.close();
  }
});

/** One plan and seed, one result: Node and Chromium agree on the whole state, down to the last bit. */
import { build } from 'vite';
import { expect, test } from 'vitest';
import { PRESETS } from '../../src/plan/presets';
import type { Plan } from '../../src/plan/plan';
import { hashAll, sqrtDigest } from './hash-all';
import { openPage } from './open-page';

interface Host {
  hashAll: typeof hashAll;
  sqrtDigest: typeof sqrtDigest;
}

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

test('every preset grows to the same hash in Node and in Chromium, with an exact sqrt', async () => {
  const plans: Plan[] = PRESETS.map((preset) => preset.plan);
  expect(plans.length).toBeGreaterThanOrEqual(6);
  const page = await openPage();
  await page.evaluate(await engineText());
  const seen = await page.evaluate((asked) => {
    const host = globalThis as unknown as Host;
    return { hashes: host.hashAll(asked, 'same bits', 0.5), sqrt: host.sqrtDigest() };
  }, plans);
  expect(seen.hashes).toEqual(hashAll(plans, 'same bits', 0.5));
  expect(new Set(seen.hashes).size).toBe(plans.length);
  expect(seen.sqrt).toBe(sqrtDigest());
});

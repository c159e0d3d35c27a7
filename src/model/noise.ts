/**
 * Counter-based noise: one draw is a hash of (channel key, site, counter), so it depends neither on the order of
 * visits nor on the cell size, and two plans on one seed share every polyp's place, rate and coin.
 * 32-bit integer arithmetic only: the same bits on every host.
 */
import alea from 'seedrandom/lib/alea';

/** THE list of channels: a rule that needs chance adds its own here, at the end. */
const CHANNELS = [
  'siteX',
  'siteY',
  'slowness',
  'lateral1',
  'lateral2',
  'lateral3',
  'strayChance',
  'strayReach',
  'weaveChance',
  'tie',
  'nucleate',
  'coin',
  'kind',
  'revert',
  'turnover',
  'turnoverFrom',
  'veil',
  'veilDays',
] as const;

export type Keys = Readonly<Record<(typeof CHANNELS)[number], number>>;

/** The seed word becomes one 32-bit key a channel, once a run. */
export function keysOf(seed: string): Keys {
  const stream = alea(`seambench ${seed}`);
  return Object.fromEntries(CHANNELS.map((channel) => [channel, stream.int32()])) as Record<
    (typeof CHANNELS)[number],
    number
  >;
}

/** Multiply-xorshift: every input bit reaches every output bit (tests/unit/noise.test.ts). */
function mix(h: number): number {
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
  return h ^ (h >>> 16);
}

/** A number in (0, 1), never 0 or 1. `site` and `counter` are 32-bit integers. */
export function draw(key: number, site: number, counter: number): number {
  const h = mix(mix(key ^ Math.imul(site, 0x9e3779b1)) + Math.imul(counter, 0x85ebca6b));
  return ((h >>> 0) + 0.5) * 2.3283064365386963e-10;
}

/**
 * Colours that most colour-blind people tell apart: CIEDE2000 (as culori computes it, checked elsewhere against the 34
 * pairs of Sharma, Wu & Dalal 2005) of at least 10 in simulated protan, deutan and tritan sight (Machado, Oliveira &
 * Fernandes 2009, severity 1, applied to linear light).
 */
import { converter, differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import { addVariety } from '../../../src/plan/edit';
import { colourDistance } from '../../../src/plan/colour-distance';
import { PRESETS } from '../../../src/plan/presets';
import { smallPlan } from '../../fixtures/small-plan';

const SIGHTS = {
  plain: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
};

const toLight = converter('lrgb');
const difference = differenceCiede2000();

function seen(hex: string, m: readonly number[]) {
  const light = toLight(hex);
  if (!light) throw new Error(`${hex} is no colour`);
  const row = (k: number) =>
    Math.min(1, Math.max(0, m[k] * light.r + m[k + 1] * light.g + m[k + 2] * light.b));
  return { mode: 'lrgb' as const, r: row(0), g: row(3), b: row(6) };
}

function leastDifference(colours: readonly string[]): number {
  let least = Infinity;
  for (const sight of Object.values(SIGHTS)) {
    for (const [k, one] of colours.entries()) {
      for (const other of colours.slice(k + 1)) {
        least = Math.min(least, difference(seen(one, sight), seen(other, sight)));
      }
    }
  }
  return least;
}

describe('colours', () => {
  it('measures as published: the least difference of the palette of Okabe & Ito 2008 is 10.9', () => {
    const palette = ['#000000', '#E69F00', '#56B4E9', '#009E73', '#F0E442', '#0072B2', '#D55E00', '#CC79A7'];
    expect(leastDifference(palette)).toBeCloseTo(10.9, 1);
  });

  it.each(PRESETS)('keeps the varieties of $key apart', ({ plan }) => {
    expect(leastDifference(plan.varieties.map((variety) => variety.colour))).toBeGreaterThanOrEqual(10);
  });

  it('gives new varieties colours that keep apart, up to eight', () => {
    let plan = smallPlan();
    while (plan.varieties.length < 8) plan = addVariety(plan).plan;
    expect(leastDifference(plan.varieties.map((variety) => variety.colour))).toBeGreaterThanOrEqual(10);
  });

  it('measures its own distance by the eye that finds it hardest', () => {
    expect(colourDistance('#319770', '#319770')).toBe(0);
    // Oklab: white is 1, black 0 in lightness.
    expect(colourDistance('#ffffff', '#000000')).toBeCloseTo(1, 2);
    // Red and green of equal lightness: plain to most, hardly there in deutan sight.
    expect(colourDistance('#c0504d', '#7a8a2a')).toBeLessThan(colourDistance('#c0504d', '#3b6fd0') / 2);
  });
});

import { describe, expect, it } from 'vitest';
import type { Check } from '../../src/checks/check';
import { FRONT_CHECKS } from '../../src/checks/fronts';
import { MEETING_CHECKS } from '../../src/checks/meetings';
import { RANGE_EXPANSION_CHECKS } from '../../src/checks/range-expansion';
import { SEAM_CHECKS } from '../../src/checks/seams';

const ROOMS: readonly (readonly [string, readonly Check[]])[] = [
  ['rims', FRONT_CHECKS],
  ['meeting rims', MEETING_CHECKS],
  ['seams', SEAM_CHECKS],
  ['colours in a colony', RANGE_EXPANSION_CHECKS],
];

function titleOf({ name, claim, expected, tolerance, unit, because, source }: Check): string {
  return `${name}: ${claim}; ${expected} +- ${tolerance} ${unit} (${because}) [${source}]`;
}

describe.each(ROOMS)('published and provable claims about %s', (_room, checks) => {
  it.each(checks.map((check) => [titleOf(check), check] as const))('%s', (_title, check) => {
    expect(Math.abs(check.run() - check.expected)).toBeLessThanOrEqual(check.tolerance);
  });

  it('have names of their own', () => {
    const names = checks.map((check) => check.name);
    expect(new Set(names).size).toBe(names.length);
  });
});

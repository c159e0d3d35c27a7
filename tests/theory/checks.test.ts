/** The quick checks, one test each; `npm run validate` runs all of them and writes the report. */
import { describe, expect, it } from 'vitest';
import type { Check } from '../../src/checks/check';
import { judge } from '../../src/checks/outcome';
import { TOPICS } from '../../src/checks/topics';

function titleOf({ name, claim, expected, tolerance, unit, because, source }: Check): string {
  return `${name}: ${claim}; ${expected} +- ${tolerance} ${unit} (${because}) [${source}]`;
}

describe.each(TOPICS.filter((topic) => topic.quick))(
  'published and provable claims: $title',
  ({ checks }) => {
    it.each(checks.map((check) => [titleOf(check), check] as const))('%s', (_title, check) => {
      const { found, expected, tolerance, pass, known } = judge(check);
      expect(pass || known !== null, `found ${found}, expected ${expected} +- ${tolerance}`).toBe(true);
    });
  },
);

describe('the list of checks', () => {
  const checks = TOPICS.flatMap((topic) => topic.checks);

  it('names each check once', () => {
    const names = checks.map((check) => check.name);
    expect(new Set(names).size).toBe(names.length);
  });

  it('says of each where it comes from and why it may be off', () => {
    for (const { source, because, claim } of checks) {
      expect(source.length).toBeGreaterThan(5);
      expect(because.length).toBeGreaterThan(5);
      expect(claim.length).toBeGreaterThan(5);
    }
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openPlan, planText } from '../../../src/plan/file';
import { PRESETS } from '../../../src/plan/presets';

describe('presets', () => {
  it('offers every plan of the folder, each under its own name', () => {
    const names = readdirSync('presets').map((file) => file.replace(/\.json$/u, ''));
    // a log of trials, which Trials offers
    const files = names.filter((name) => name !== 'demo-farm');
    expect(PRESETS.map(({ key }) => key).sort()).toEqual(files.sort());
    expect(new Set(PRESETS.map(({ plan }) => plan.name)).size).toBe(PRESETS.length);
  });

  it.each(PRESETS)('$key opens, is saved as it stands, and says that it is invented', ({ key, plan }) => {
    const text = readFileSync(`presets/${key}.json`, 'utf8');
    expect(openPlan(text)).toEqual({ plan, seed: null });
    expect(planText(plan)).toBe(text);
    expect(plan.note).toContain('The farm and its varieties are invented');
  });
});

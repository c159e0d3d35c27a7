import { describe, expect, it } from 'vitest';
import { onFewWords, printed, seedRows, spread } from '../../../src/view/grow/seed-rows';
import { smallPlan } from '../../fixtures/small-plan';

const rows = seedRows(smallPlan(), 7);
const ridge = rows.find(({ name }) => name === 'ridge height');

describe('numbers of a month beside those of 16 seeds', () => {
  it('all say their unit once, on the screen', () => {
    for (const row of rows) expect(row.unit, row.name).toMatch(/^(?:%|mm|month|0 to 1)$/u);
  });

  it('tie the day of settling to the month that is shown, for it moves with it', () => {
    expect(rows.map(({ name }) => name)).toContain('month 7’s seam settled by');
    expect(seedRows(smallPlan(), 8).map(({ name }) => name)).toContain('month 8’s seam settled by');
  });

  it('say on how many seeds a number exists where that is not all of them', () => {
    const range = { median: 2.3, low: 2.3, high: 2.4, count: 3 };
    expect(onFewWords(range, 16)).toBe('on 3 of 16 seeds');
    expect(onFewWords({ ...range, count: 16 }, 16)).toBeNull();
    expect(onFewWords(null, 16)).toBeNull();
  });

  it('print the middle 80 % as two numbers, or say that they are the same', () => {
    if (!ridge) throw new Error('no row for the height of ridges');
    expect(spread({ median: 2.3, low: 2.26, high: 2.44, count: 16 }, ridge)).toBe('2.3–2.4');
    expect(spread({ median: 2.3, low: 2.31, high: 2.32, count: 16 }, ridge)).toBe('same');
    expect([spread(null, ridge), printed(null, ridge)]).toEqual(['–', '–']);
  });
});

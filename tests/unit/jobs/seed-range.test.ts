import { afterEach, describe, expect, it } from 'vitest';
import { Channel } from '../../../src/jobs/channel';
import { rangeAt, rangeOf, RANGE_SEEDS, SeedRange, type SeedReadings } from '../../../src/jobs/seed-range';
import { testLine } from '../../fixtures/engine-line';
import { smallPlan } from '../../fixtures/small-plan';

const plan = smallPlan({ months: 2 });
const running: SeedRange[] = [];
afterEach(() => running.splice(0).forEach((range) => range.close()));

function seedRange(): { range: SeedRange; heard: SeedReadings[] } {
  const heard: SeedReadings[] = [];
  const channel = new Channel(
    () => testLine(),
    () => undefined,
    { quietTicks: 1000, tickMs: 500, isHidden: () => false },
  );
  const range = new SeedRange(channel, (runs) => heard.push(runs));
  running.push(range);
  return { range, heard };
}

describe('the range of a number', () => {
  it('is the median and the middle 80 % by straight lines between sorted values', () => {
    // 0 to 10: Hyndman & Fan 1996, definition 7, puts the p quantile of n values at place (n - 1) p.
    const range = rangeOf(Array.from({ length: 11 }, (_, index) => index));
    expect(range).toEqual({ median: 5, low: 1, high: 9, count: 11 });
  });

  it('leaves out seeds where the number does not exist, and says on how many it does', () => {
    expect(rangeOf([null, 4, null])).toEqual({ median: 4, low: 4, high: 4, count: 1 });
    expect(rangeOf([null, null])).toBeNull();
    expect(rangeOf([])).toBeNull();
  });
});

describe('quiet seeds', () => {
  it('grow one after another to sixteen, each to the last month', async () => {
    const { range, heard } = seedRange();
    range.rest(plan);
    await expect.poll(() => heard.at(-1)?.seeds.length, { timeout: 30_000 }).toBe(RANGE_SEEDS.length);
    const last = heard.at(-1)?.seeds ?? [];
    expect(last.map((months) => months.length)).toEqual(RANGE_SEEDS.map(() => 3));
    expect(last.map((months) => months[0].seed)).toEqual(RANGE_SEEDS);
    const cover = rangeAt({ key: '', seeds: last }, 2, (reading) => reading.coverMm2);
    expect(cover?.count).toBe(16);
    expect(cover?.low).toBeLessThanOrEqual(cover?.median ?? 0);
  });

  it('do not start while the tile is at work, and keep what they have', async () => {
    const { range, heard } = seedRange();
    range.rest(plan);
    await expect.poll(() => heard.at(-1)?.seeds.length, { timeout: 30_000 }).toBeGreaterThan(0);
    range.pause();
    const before = heard.at(-1)?.seeds.length ?? 0;
    await new Promise((resolve) => setTimeout(resolve, 900));
    expect(heard.at(-1)?.seeds.length).toBe(before);
    range.rest(plan);
    expect(heard.at(-1)?.seeds.length).toBe(before);
  });

  it('begin anew for another plan', async () => {
    const { range, heard } = seedRange();
    range.rest(plan);
    await expect.poll(() => heard.at(-1)?.seeds.length, { timeout: 30_000 }).toBeGreaterThan(0);
    range.rest({ ...plan, months: 1 });
    expect(heard.at(-1)?.seeds).toEqual([]);
    await expect.poll(() => heard.at(-1)?.seeds.length, { timeout: 30_000 }).toBeGreaterThan(0);
    expect(heard.at(-1)?.seeds[0]).toHaveLength(2);
  });
});

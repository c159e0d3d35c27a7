import { describe, expect, it } from 'vitest';
import { ridgeFits } from '../../src/trials/log-ridge';
import { dateOfDay, dayOfDate, DAYS_PER_MONTH } from '../../src/units/quantity';
import { logOf, type Look, tileOfTwo, variety } from '../fixtures/log';

const SET = dayOfDate('2026-01-01');
const on = (day: number): string => dateOfDay(SET + day);

/** A fair draw about 0 for each tile and look, the same for every run. */
function off(tile: number, look: number): number {
  let h = Math.imul(tile + 1, 0x9e3779b1) ^ Math.imul(look + 1, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  return ((h ^ (h >>> 13)) >>> 0) / 2 ** 32 - 0.5;
}

/** Tiles read every 20 days; the verdict falls on day 70, between the looks of days 60 and 80. */
function farm(heightMm: (months: number) => number, days: number) {
  const trials = Array.from({ length: 12 }, (_, tile) => {
    const looks: Look[] = [];
    for (let day = 20; day <= days; day += 20) {
      if (day < 70) looks.push({ on: on(day), saw: 'undecided' });
      else {
        const exact = heightMm((day - 70) / DAYS_PER_MONTH) + 0.1 * off(tile, day);
        looks.push({ on: on(day), saw: 'ridge', ridgeMm: Math.max(0, Math.round(10 * exact) / 10) });
      }
    }
    return tileOfTwo(`t${tile}`, ['fern', 'amber'], looks);
  });
  return logOf([variety('fern'), variety('amber')], trials);
}

// Expected: the numbers that the heights were made with, by the model's own law (model/ridge.ts); heights are read to
// 0.1 mm with errors of 0.05 mm to either side.
describe('how ridges rise', () => {
  it('is read off heights by the law of the model: first rise and cap within three standard errors', () => {
    const [cap, first] = [2.5, 0.4];
    const [fit] = ridgeFits(farm((t) => cap * -Math.expm1((-first * t) / cap), 700));
    expect(fit.seams).toBe(12);
    expect(fit.heights).toHaveLength(12 * 32);
    expect(Math.abs((fit.firstMmPerMonth ?? 0) - first)).toBeLessThan(3 * (fit.firstError ?? 0));
    expect(Math.abs((fit.capMm ?? 0) - cap)).toBeLessThan(3 * (fit.capError ?? 0));
    expect(fit.firstError).toBeLessThan(0.02);
    expect(fit.capError).toBeLessThan(0.05);
    expect(fit.heightAt(6)).toBeCloseTo(cap * -Math.expm1((-first * 6) / cap), 1);
  });

  it('tells no cap while ridges still rise straight', () => {
    const [fit] = ridgeFits(farm((t) => 0.3 * t, 300));
    expect(fit.capMm).toBeNull();
    expect(Math.abs((fit.firstMmPerMonth ?? 0) - 0.3)).toBeLessThan(0.03);
  });

  it('leaves out ridges of which it is not known when they began, and tells nothing of a few', () => {
    const late = tileOfTwo('t1', ['fern', 'amber'], [
      { on: '2026-01-20', saw: 'undecided' },
      { on: '2026-06-01', saw: 'ridge', ridgeMm: 1 },
      { on: '2026-07-01', saw: 'ridge', ridgeMm: 1.3 },
    ]); // prettier-ignore
    const [fit] = ridgeFits(logOf([variety('fern'), variety('amber')], [late]));
    expect(fit.firstMmPerMonth).toBeNull();
    expect(fit.leftOut).toEqual([{ why: 'height of a ridge that began on a day not known', count: 2 }]);
    expect(ridgeFits(logOf([], []))).toEqual([]);
  });
});

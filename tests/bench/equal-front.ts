/**
 * The same four pieces grown for half a year on tiles of three sizes: no rim reaches an edge, so the front is the same
 * to the cell, and only set-up and reading may cost more on a larger tile.
 */
import { read } from '../../src/measure/read';
import { grow } from '../../src/model/grow';
import { compile } from '../../src/plan/compile';
import { fourPieces } from './bench-plan';
import { median, rowOf, type Section } from './row';

const SEEDS = 16;
const SIZES_MM = [100, 200, 300] as const;
const MONTHS = 6;
const CELL_MM = 0.25;

interface Cost {
  readonly setUp: number;
  readonly growth: number;
  readonly reading: number;
  readonly coverMm2: number;
}

function costOf(sizeMm: number, seed: number): Cost {
  const plan = fourPieces(sizeMm, MONTHS);
  const start = performance.now();
  const days = grow(compile(plan, CELL_MM), String(seed));
  let step = days.next();
  if (step.done) throw new Error('a run yields its day 0');
  const state = step.value;
  const set = performance.now();
  while (!step.done) step = days.next();
  const grown = performance.now();
  const { coverMm2 } = read(state, ['', ...plan.varieties.map(({ id }) => id)], String(seed), MONTHS);
  const end = performance.now();
  return { setUp: set - start, growth: grown - set, reading: end - grown, coverMm2 };
}

export function benchEqualFront(): Section {
  const costs = new Map(SIZES_MM.map((sizeMm) => [sizeMm as number, [] as Cost[]]));
  for (const sizeMm of SIZES_MM) costOf(sizeMm, 0);
  for (let seed = 1; seed <= SEEDS; seed++) {
    for (const sizeMm of SIZES_MM) costs.get(sizeMm)?.push(costOf(sizeMm, seed));
    const covers = SIZES_MM.map((sizeMm) => costs.get(sizeMm)?.at(-1)?.coverMm2);
    if (new Set(covers).size > 1)
      throw new Error(`not the same front on every tile: ${covers.join(', ')} mm2`);
  }
  const of = (sizeMm: number, part: 'setUp' | 'growth' | 'reading'): number =>
    median((costs.get(sizeMm) ?? []).map((cost) => cost[part]));
  const growth = SIZES_MM.map((sizeMm) => of(sizeMm, 'growth'));
  return {
    title: `The same front on larger tiles: 4 pieces, ${MONTHS} months, no edge reached (median of ${SEEDS} seeds)`,
    rows: [rowOf('equal-front-300', growth[2], 'ours on 100 mm', growth[0])],
    bars: [
      // a tenth is what two medians of the same run differ by on a shared machine
      {
        words: 'growth on 300 mm over growth on 100 mm',
        found: growth[2] / growth[0],
        bar: 1.1,
        bound: 'most',
        unit: 'times',
      },
    ],
    notes: SIZES_MM.map(
      (sizeMm, k) =>
        `${sizeMm} mm: set-up ${of(sizeMm, 'setUp').toFixed(1)} ms, growth ${growth[k].toFixed(1)} ms, last reading ${of(sizeMm, 'reading').toFixed(1)} ms`,
    ),
  };
}

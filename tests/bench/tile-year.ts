/**
 * What a tile-year costs beside the same rules grown by a plain scan of the whole tile. A tile-year is 12 months from
 * plan to last reading, set-up included, no frames.
 */
import { read } from '../../src/measure/read';
import { grow } from '../../src/model/grow';
import type { Layout } from '../../src/model/layout';
import type { State } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import type { Plan } from '../../src/plan/plan';
import { fourPieces } from './bench-plan';
import { growByFullScan } from './full-scan';
import { median, msOf, rowOf, type Bar, type Section } from './row';

const SEEDS = 16;
const PEER_SEEDS = 3;
const PEER = 'full scan';

type Grower = (layout: Layout, seed: string) => Generator<State, void>;

function tileYear(plan: Plan, cellMm: number, seed: number, by: Grower): void {
  let end: State | undefined;
  for (const state of by(compile(plan, cellMm), String(seed))) end = state;
  if (!end) throw new Error('a run yields its day 0');
  const reading = read(end, ['', ...plan.varieties.map((variety) => variety.id)], String(seed), plan.months);
  if (reading.coverMm2 <= 0) throw new Error('nothing grew');
}

const JOBS = [
  { name: 'tile-year-100', sizeMm: 100, cellMm: 0.25, barMs: 80, barRatio: 20 },
  { name: 'tile-year-300', sizeMm: 300, cellMm: 0.25, barMs: 400, barRatio: 23 },
  { name: 'preview-100', sizeMm: 100, cellMm: 0.5, barMs: 20, barRatio: null },
];

export function benchTileYears(): Section {
  const rows = [];
  const bars: Bar[] = [];
  for (const { name, sizeMm, cellMm, barMs, barRatio } of JOBS) {
    const plan = fourPieces(sizeMm, 12);
    // two rounds to warm up; own runs and the peer's are interleaved, so that both meet the same machine
    for (let k = 0; k < 2; k++) tileYear(plan, cellMm, k, grow);
    const own: number[] = [];
    const peer: number[] = [];
    for (let seed = 1; seed <= SEEDS; seed++) {
      own.push(msOf(() => tileYear(plan, cellMm, seed, grow)));
      if (seed <= PEER_SEEDS) peer.push(msOf(() => tileYear(plan, cellMm, seed, growByFullScan)));
    }
    const row = rowOf(name, median(own), PEER, median(peer));
    rows.push(row);
    bars.push({ words: name, found: row.ms, bar: barMs, bound: 'most', unit: 'ms' });
    if (barRatio !== null) {
      bars.push({
        words: `${name}, faster than the scan`,
        found: row.ratio,
        bar: barRatio,
        bound: 'least',
        unit: 'times',
      });
    }
  }
  return {
    title: `A tile-year: 4 pieces at 3 mm/month, plan to last reading (median of ${SEEDS} seeds; full scan: ${PEER_SEEDS})`,
    rows,
    bars,
    notes: [
      'full scan: the same rules, set-up and arithmetic; every empty cell is worked out in every sub-step',
    ],
  };
}

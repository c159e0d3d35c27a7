/**
 * `npm run bench`: what a tile-year costs, beside the same rules grown by a plain scan of the whole tile, in one run.
 * A tile-year is 12 months from plan to last reading, set-up included, no frames. Median over seeds; `--json` for
 * machines. Never part of the tests: times depend on the machine and on what else it does.
 */
import os from 'node:os';
import { read } from '../../src/measure/read';
import { grow } from '../../src/model/grow';
import type { State } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import type { Piece, Plan } from '../../src/plan/plan';
import { growByFullScan } from './full-scan';

const SEEDS = 16;
const PEER_SEEDS = 3;

function fourPieces(sizeMm: number): Plan {
  const variety = (id: string, aggression: number) => ({
    id,
    name: id,
    colour: '#336644',
    rimMmPerMonth: 3,
    aggression,
  });
  const disc = (id: string, varietyId: string, x: number, y: number): Piece => ({
    id,
    variety: varietyId,
    at: [x, y],
    turnDeg: 0,
    disc: { diameterMm: 10 },
  });
  return {
    seambench: 1,
    name: 'bench',
    tile: { shape: 'square', sizeMm },
    varieties: [variety('a', 0.2), variety('b', 0.2), variety('c', 0.8)],
    pairs: [
      { a: 'a', b: 'b', acceptance: 0.7 },
      { a: 'a', b: 'c', acceptance: 0.3 },
      { a: 'b', b: 'c', acceptance: 0.3 },
    ],
    pieces: [
      disc('p1', 'a', -18, -18),
      disc('p2', 'b', 18, -18),
      disc('p3', 'c', -18, 18),
      disc('p4', 'a', 18, 18),
    ],
    steps: [],
    months: 12,
  };
}

type Grower = (layout: ReturnType<typeof compile>, seed: string) => Generator<State, void>;

function tileYearMs(plan: Plan, cellMm: number, seed: number, by: Grower): number {
  const start = performance.now();
  let end: State | undefined;
  for (const state of by(compile(plan, cellMm), String(seed))) end = state;
  if (!end) throw new Error('a run yields its day 0');
  const reading = read(end, ['', ...plan.varieties.map((variety) => variety.id)], String(seed), plan.months);
  if (reading.coverMm2 <= 0) throw new Error('nothing grew');
  return performance.now() - start;
}

function median(values: number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

const JOBS = [
  { name: 'tile-year-100', sizeMm: 100, cellMm: 0.25, barMs: 200, barRatio: 8 },
  { name: 'tile-year-300', sizeMm: 300, cellMm: 0.25, barMs: 1000, barRatio: 15 },
  { name: 'preview-100', sizeMm: 100, cellMm: 0.5, barMs: 60, barRatio: null },
];

const rows = JOBS.map((job) => {
  const plan = fourPieces(job.sizeMm);
  // two rounds to warm up; own runs and the peer's are interleaved, so that both meet the same machine
  for (let k = 0; k < 2; k++) tileYearMs(plan, job.cellMm, k, grow);
  const own: number[] = [];
  const peer: number[] = [];
  for (let seed = 1; seed <= SEEDS; seed++) {
    own.push(tileYearMs(plan, job.cellMm, seed, grow));
    if (seed <= PEER_SEEDS) peer.push(tileYearMs(plan, job.cellMm, seed, growByFullScan));
  }
  const ms = median(own);
  const peerMs = median(peer);
  return { ...job, ms, peer: 'full scan', peerMs, ratio: peerMs / ms };
});

if (process.argv.includes('--json')) {
  console.log(
    JSON.stringify(rows.map(({ name, ms, peer, peerMs, ratio }) => ({ name, ms, peer, peerMs, ratio }))),
  );
} else {
  const cpu = os.cpus()[0].model;
  console.log(
    `${cpu}, ${os.cpus().length} cores, load ${os.loadavg()[0].toFixed(1)}, Node ${process.version}`,
  );
  console.log(`median of ${SEEDS} seeds; peer: ${PEER_SEEDS} seeds; a year of 4 pieces at 3 mm/month`);
  for (const row of rows) {
    const bar = `bar ${row.barMs} ms${row.barRatio === null ? '' : `, ${row.barRatio} x`}`;
    console.log(
      `${row.name.padEnd(14)} ${row.ms.toFixed(0).padStart(5)} ms   full scan ${row.peerMs.toFixed(0).padStart(6)} ms   ` +
        `${row.ratio.toFixed(1).padStart(5)} x   (${bar})`,
    );
  }
}

/**
 * `npm run bench:page`: how the built page keeps up, in Chromium. Never part of the tests: times depend on the machine.
 * A picture counts as drawn once its worker says so, which it does after the pixels are there; the screen follows
 * within one of its frames. Blocked is the longest task of the page's own thread, from 50 ms on (Long Tasks API).
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import os from 'node:os';
import { chromium, type Browser } from 'playwright-core';
import { CHROMIUM_FLAGS, findBrowser } from '../../.ci/find-browser.mjs';
import { serve } from '../../.ci/serve.mjs';
import { fourPieces } from './bench-plan';
import type { ProbeLog } from './page-probe';
import { Visit, type Moved, type Span } from './page-visit';
import { median, sectionText, type Bar, type Section } from './row';

const ROOT = new URL('../../', import.meta.url).pathname;
const VISITS = 5;
const ACT_MS = 3000;
const MONTHS = 12;
/** The first visit plays these by itself. */
const LAST_PLAYED = 8;

type Log = Omit<ProbeLog, 'watchFrames'>;

const within = (ms: number, { fromMs, toMs }: Span): boolean => ms >= fromMs && ms <= toMs;

/** 0 where no task reached 50 ms. */
function longestBlocked(log: Log, span: Span): number {
  return Math.max(0, ...log.blocked.filter(({ fromMs }) => within(fromMs, span)).map(({ ms }) => ms));
}

function gaps(times: readonly number[], span: Span): number[] {
  const inside = times.filter((time) => within(time, span));
  return inside.slice(1).map((time, k) => time - inside[k]);
}

function at(values: readonly number[], share: number): number {
  return values.toSorted((a, b) => a - b)[Math.floor(share * (values.length - 1))] ?? 0;
}

function perSecond(log: Log, span: Span): number {
  const drawn = log.drawings.filter(({ drawnMs }) => within(drawnMs, span)).length;
  return (1000 * drawn) / (span.toMs - span.fromMs);
}

function pictureWords(log: Log, span: Span): string {
  const between = gaps(
    log.drawings.map(({ drawnMs }) => drawnMs),
    span,
  );
  const frames = gaps(log.frames, span);
  return (
    `${perSecond(log, span).toFixed(0)} pictures a second (from one to the next ${at(between, 0.5).toFixed(0)} ms, 95 % within ${at(between, 0.95).toFixed(0)} ms), ` +
    `the page's own frames ${at(frames, 0.5).toFixed(0)} ms, 95 % within ${at(frames, 0.95).toFixed(0)} ms; longest task ${longestBlocked(log, span).toFixed(0)} ms`
  );
}

/** The machine, the browser and the probe warm up on the first visit, which is not counted. */
async function benchOpening(browser: Browser, address: string): Promise<Section> {
  const first: number[] = [];
  const last: number[] = [];
  const blocked: number[] = [];
  for (let k = 0; k <= VISITS; k++) {
    const visit = await Visit.to(browser, address, false);
    await visit.untilDrawn(LAST_PLAYED);
    const log = await visit.log();
    await visit.end();
    if (k === 0) continue;
    const grown = log.drawings.filter(({ month }) => month >= 0);
    const drawnLast = grown.find(({ month }) => month === LAST_PLAYED)?.drawnMs ?? Infinity;
    first.push(grown[0].drawnMs);
    last.push(drawnLast);
    blocked.push(longestBlocked(log, { fromMs: 0, toMs: drawnLast }));
  }
  return {
    title: `Opening the page, nothing stored or cached (median of ${VISITS} visits; blocked: the worst of them)`,
    rows: [],
    bars: [
      { words: 'first grown picture', found: median(first), bar: 1500, bound: 'most', unit: 'ms' },
      { words: 'months 2 to 8 played', found: median(last), bar: 6000, bound: 'most', unit: 'ms' },
      { words: 'longest task', found: Math.max(...blocked), bar: 100, bound: 'most', unit: 'ms' },
    ],
    notes: [`first grown picture of each visit: ${first.map((ms) => ms.toFixed(0)).join(', ')} ms`],
  };
}

async function benchTile(browser: Browser, address: string, sizeMm: number): Promise<Section> {
  const cells = sizeMm * 4;
  const visit = await Visit.to(browser, address, true);
  await visit.untilDrawn(LAST_PLAYED);
  const opened = await visit.now();
  await visit.openPlan(fourPieces(sizeMm, MONTHS));
  await visit.untilDrawn(0, opened);
  await visit.showMonth('End');
  await visit.untilDrawn(MONTHS, opened);
  await visit.page.waitForTimeout(ACT_MS);
  await visit.watchFrames();
  const scrubbed = await visit.scrub(MONTHS, ACT_MS);
  const played = await visit.play(MONTHS);
  const dragged = await visit.dragPiece(-18, -18, sizeMm, ACT_MS);
  const log = await visit.log();
  await visit.end();

  const ofPlan = log.months.filter(({ cameMs }) => cameMs > opened && cameMs < scrubbed.fromMs);
  const ways = [0, MONTHS].flatMap((month) => {
    const came = ofPlan.find((each) => each.month === month);
    const drawing = log.drawings.find(
      (each) => each.month === month && each.drawnMs > (came?.cameMs ?? Infinity),
    );
    return came && drawing ? [`month ${month}: ${wayWords(came, drawing.drawnMs)}`] : [];
  });
  const moved = Math.max(0, ...ofPlan.map(({ bytes }) => bytes));
  const copied = Math.max(
    0,
    ...log.drawings.filter(({ askedMs }) => askedMs > opened).map(({ bytes }) => bytes),
  );
  const words = `${cells} x ${cells}`;
  const bars: Bar[] = [
    {
      words: `${words}, longest task scrubbing`,
      found: longestBlocked(log, scrubbed),
      bar: 100,
      bound: 'most',
      unit: 'ms',
    },
    {
      words: `${words}, longest task dragging a piece`,
      found: longestBlocked(log, dragged),
      bar: 100,
      bound: 'most',
      unit: 'ms',
    },
  ];
  if (cells === 400) {
    bars.unshift({
      words: `${words}, pictures scrubbing`,
      found: perSecond(log, scrubbed),
      bar: 30,
      bound: 'least',
      unit: 'a second',
    });
  }
  return {
    title: `${words} cells: ${sizeMm} mm at 0.25 mm, 4 pieces, ${MONTHS} months`,
    rows: [],
    bars,
    notes: [
      `scrubbing, ${movesWords(scrubbed)}: ${pictureWords(log, scrubbed)}`,
      `playing at 4x: ${pictureWords(log, played)}`,
      `dragging a piece, ${movesWords(dragged)}: ${pictureWords(log, dragged)}`,
      `from the engine's post to the drawn picture: ${ways.join('; ')}`,
      `moved a month: ${moved} bytes from the engine (handed over), ${copied} bytes to the picture's worker (copied)`,
    ],
  };
}

function movesWords({ fromMs, toMs, moves }: Moved): string {
  return `${((1000 * moves) / (toMs - fromMs)).toFixed(0)} moves a second`;
}

function wayWords({ sentMs, cameMs }: { sentMs: number | null; cameMs: number }, drawnMs: number): string {
  if (sentMs === null) throw new Error('the engine was not clocked');
  return `${(drawnMs - sentMs).toFixed(0)} ms (${(cameMs - sentMs).toFixed(0)} to the page)`;
}

function benchSize(): Section {
  const { stdout } = spawnSync(process.execPath, [`${ROOT}.ci/size.mjs`], { encoding: 'utf8' });
  const kb = Number(/first view: ([\d.]+) kB/.exec(stdout)?.[1]);
  return {
    title: 'Weight of the first view, gzipped',
    rows: [],
    bars: [{ words: 'all files that the page names', found: kb, bar: 350, bound: 'most', unit: 'kB' }],
    notes: [],
  };
}

if (!existsSync(`${ROOT}dist/index.html`))
  throw new Error('There is no built page: run npm run build first.');
const found = findBrowser();
if ('cure' in found) throw new Error(found.cure);
const server = await serve(`${ROOT}dist/`, { port: 0, under: '/bench/seambench/' });
const browser = await chromium.launch({ executablePath: found.found, args: CHROMIUM_FLAGS });
const [cpu] = os.cpus();
console.log(
  `${cpu.model}, ${os.cpus().length} cores, load ${os.loadavg()[0].toFixed(1)} at start, Chromium ${browser.version()}, graphics by software`,
);
try {
  console.log(`\n${sectionText(await benchOpening(browser, server.address))}`);
  for (const sizeMm of [100, 300])
    console.log(`\n${sectionText(await benchTile(browser, server.address, sizeMm))}`);
  console.log(`\n${sectionText(benchSize())}`);
} finally {
  await browser.close();
  await server.close();
}

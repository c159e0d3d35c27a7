/**
 * npm test: installs what is missing, finds a browser and runs every step; stops at the first that fails.
 * The tests run one step after another. Steps that read the source run beside them, two at a time and at a low
 * priority: they take what the tests leave of two cores, which in a browser is a quarter. What one of them says is
 * printed when it has ended.
 * The last line is 'N passed, N failed': the tests of vitest's own counts, and a step that fails otherwise as 1.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { setPriority } from 'node:os';
import path from 'node:path';
import { findBrowser } from './find-browser.mjs';
import { installFirefox } from './find-firefox.mjs';
import { command, install, ROOT } from './install.mjs';

const CACHE = path.join(ROOT, '.cache');
/** A step that hangs is ended; the longest, the tests in a browser, takes some 400 s on 2 slow cores. */
const STEP_LIMIT_MS = 1_200_000;
const SIDE_BY_SIDE = 2;
/** Of who runs beside the tests: these wait on clocks. */
const LOW_PRIORITY = 15;

const counts = { passed: 0, failed: 0, left: 0 };
/** @type {{ name: string, seconds: number }[]} */
const times = [];

function fail(/** @type {string} */ name, /** @type {string} */ why, /** @type {string[]} */ notRun) {
  console.error(`\nFAILED: ${name}. ${why}`);
  if (notRun.length > 0) console.error(`Skipped, because '${name}' failed: ${notRun.join(', ')}.`);
  if (counts.failed === 0) counts.failed = 1;
}

/**
 * @typedef {{ status: number | null, said: Buffer[], seconds: number }} Done
 * @typedef {{ name: string, cure: string, reads: boolean, go: () => Promise<Done> }} Step
 */

/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set();

/**
 * Runs a script of Node; `aside` at a low priority, keeping what it says instead of printing it.
 * @param {string[]} words
 * @returns {Promise<Done>} status is null where the script was ended or could not be started
 */
function run(words, aside = false) {
  const start = Date.now();
  const child = spawn(process.execPath, words, {
    cwd: ROOT,
    env: { ...process.env, NO_COLOR: '1' },
    stdio: aside ? ['ignore', 'pipe', 'pipe'] : ['ignore', 'inherit', 'inherit'],
    timeout: STEP_LIMIT_MS,
  });
  running.add(child);
  if (aside && child.pid !== undefined) setPriority(child.pid, LOW_PRIORITY);
  /** @type {Buffer[]} */
  const said = [];
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (part) => said.push(part));
  return new Promise((resolve) => {
    const end = (/** @type {number | null} */ status) => {
      running.delete(child);
      resolve({ status, said, seconds: (Date.now() - start) / 1000 });
    };
    child.on('error', () => end(null));
    child.on('close', end);
  });
}

/** Runs vitest projects and adds their counts. */
async function vitest(/** @type {string[]} */ ...projects) {
  const report = path.join(CACHE, `${projects.join('-')}.json`);
  rmSync(report, { force: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const done = await run([
    command('vitest'),
    'run',
    ...projects.map((name) => `--project=${name}`),
    ...reporters,
  ]);
  if (existsSync(report)) {
    const counted = JSON.parse(readFileSync(report, 'utf8'));
    counts.passed += counted.numPassedTests;
    counts.failed += counted.numFailedTests;
    counts.left += counted.numPendingTests + counted.numTodoTests;
  }
  return done;
}

const TSC_ROOMS = ['src/model', 'workers', 'src/cli', 'tests'];

const began = Date.now();
if (install()) times.push({ name: 'install', seconds: (Date.now() - began) / 1000 });
mkdirSync(CACHE, { recursive: true });

const browser = findBrowser();
console.log('found' in browser ? `browser: ${browser.found}` : `browser: none yet. ${browser.cure}`);

const firefox = installFirefox();
console.log(
  'found' in firefox ? `Firefox: ${firefox.found}` : `Skipped, same bits in Firefox: ${firefox.why}`,
);

/**
 * A step that reads the source and may run beside another.
 * @param {string} name
 * @param {string[]} words
 * @param {string} cure
 * @returns {Step}
 */
function reading(name, words, cure) {
  return { name, cure, reads: true, go: () => run(words, true) };
}

/** @type {Step[]} */
const steps = [
  reading('format', [command('prettier'), '--check', '--log-level', 'warn', '.'], 'Run: npm run format'),
  reading(
    'lint',
    [command('eslint'), '.', '--max-warnings', '0'],
    'The lines above name the place and the rule.',
  ),
  reading(
    'room order',
    [command('depcruise', 'dependency-cruiser'), '--output-type', 'err-long', 'src', 'workers'],
    'Each rule in .dependency-cruiser.mjs says why, and what to do instead.',
  ),
  reading('unused code', [command('knip'), '--no-config-hints'], 'Delete what nobody uses.'),
  ...TSC_ROOMS.map((room) =>
    reading(
      `types of ${room}`,
      [command('tsc', 'typescript'), '-p', room],
      'The lines above name the place.',
    ),
  ),
  reading(
    'types of the page',
    [command('svelte-check'), '--tsconfig', './tsconfig.json', '--fail-on-warnings'],
    'The lines above name the place.',
  ),
  {
    name: 'tests in Node',
    cure: 'The lines above name the test.',
    reads: false,
    go: () => vitest('unit', 'alone', 'grown'),
  },
  {
    name: 'build',
    cure: 'The lines above say why.',
    reads: false,
    go: () => run([command('vite'), 'build', '--logLevel', 'warn']),
  },
  { name: 'size', cure: 'See .ci/size.mjs.', reads: false, go: () => run(['.ci/size.mjs']) },
  {
    name: 'tests in a browser',
    cure: 'cure' in browser ? browser.cure : 'The lines above name the test.',
    reads: false,
    go: () => ('found' in browser ? vitest('browser') : Promise.resolve({ status: 1, said: [], seconds: 0 })),
  },
];

let free = SIDE_BY_SIDE;
/** @type {(() => void)[]} */
const waiting = [];
let hasFailed = false;

/** Prints what a step came to; the first that failed ends all others. */
function tell(/** @type {Step} */ step, /** @type {Done} */ { status, said, seconds }) {
  // ended by the failure of another
  if (hasFailed) return;
  if (step.reads) console.log(`\n== ${step.name}`);
  for (const part of said) process.stdout.write(part);
  times.push({ name: step.name, seconds });
  if (status === 0) return;
  hasFailed = true;
  const left = steps.filter(({ name }) => !times.some((time) => time.name === name));
  const why = status === null ? `It was ended after ${STEP_LIMIT_MS / 1000} s.` : step.cure;
  fail(
    step.name,
    why,
    left.map(({ name }) => name),
  );
  for (const child of running) child.kill();
  for (const begin of waiting) begin();
}

/** Begins a step once one of the places is free; whoever asks first begins first. */
async function aside(/** @type {Step} */ step) {
  if (free > 0) free--;
  else await new Promise((/** @type {(value: void) => void} */ begin) => waiting.push(begin));
  if (hasFailed) return;
  tell(step, await step.go());
  const next = waiting.shift();
  if (next) next();
  else free++;
}

async function oneByOne() {
  for (const step of steps.filter(({ reads }) => !reads)) {
    if (hasFailed) return;
    console.log(`\n== ${step.name}`);
    tell(step, await step.go());
  }
}

await Promise.all([oneByOne(), ...steps.filter(({ reads }) => reads).map(aside)]);

console.log('');
for (const { name, seconds } of times) console.log(`${seconds.toFixed(1).padStart(6)} s  ${name}`);
console.log(
  `${((Date.now() - began) / 1000).toFixed(1).padStart(6)} s  in all; what reads the source ran beside the tests`,
);
if ('why' in firefox) console.log(`Skipped, same bits in Firefox: ${firefox.why}`);
if (counts.left > 0) console.log(`${counts.left} tests were left out by their own files; see above.`);
console.log(`${counts.passed} passed, ${counts.failed} failed`);
process.exitCode = counts.failed > 0 ? 1 : 0;

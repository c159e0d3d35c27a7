/**
 * npm test: installs what is missing, finds a browser and runs every step in order; stops at the first that fails.
 * Steps that read the source and write nothing run two at a time, since each keeps one core busy; what they say is
 * held back and printed in their order, so the log reads, and the first failure is named, as if each had run alone.
 * The last line is 'N passed, N failed': the tests of vitest's own counts, and a step that fails otherwise as 1.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { findBrowser } from './find-browser.mjs';
import { installFirefox } from './find-firefox.mjs';
import { command, install, ROOT } from './install.mjs';

const CACHE = path.join(ROOT, '.cache');
/** A step that hangs is ended; the longest, the tests in a browser, takes some 400 s on 2 slow cores. */
const STEP_LIMIT_MS = 1_200_000;
/** More than the two cores of the machine that checks would make each step slower. */
const SIDE_BY_SIDE = 2;

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
 * Runs a script of Node; `hold` keeps what it says instead of printing it.
 * @param {string[]} words
 * @returns {Promise<Done>} status is null where the script was ended or could not be started
 */
function run(words, hold = false) {
  const start = Date.now();
  const child = spawn(process.execPath, words, {
    cwd: ROOT,
    env: { ...process.env, NO_COLOR: '1' },
    stdio: hold ? ['ignore', 'pipe', 'pipe'] : ['ignore', 'inherit', 'inherit'],
    timeout: STEP_LIMIT_MS,
  });
  running.add(child);
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

/** Begins a step once one of the places is free; whoever asks first begins first. */
async function inTurn(/** @type {Step} */ step) {
  if (free > 0) free--;
  else await new Promise((/** @type {(value: void) => void} */ begin) => waiting.push(begin));
  const done = await step.go();
  const next = waiting.shift();
  if (next) next();
  else free++;
  return done;
}

const begun = new Map(steps.filter(({ reads }) => reads).map((step) => [step, inTurn(step)]));

for (const [at, step] of steps.entries()) {
  console.log(`\n== ${step.name}`);
  const { status, said, seconds } = await (begun.get(step) ?? step.go());
  for (const part of said) process.stdout.write(part);
  times.push({ name: step.name, seconds });
  if (status !== 0) {
    waiting.length = 0;
    for (const child of running) child.kill();
    const why = status === null ? `It was ended after ${STEP_LIMIT_MS / 1000} s.` : step.cure;
    fail(
      step.name,
      why,
      steps.slice(at + 1).map((later) => later.name),
    );
    break;
  }
}

console.log('');
for (const { name, seconds } of times) console.log(`${seconds.toFixed(1).padStart(6)} s  ${name}`);
console.log(
  `${((Date.now() - began) / 1000).toFixed(1).padStart(6)} s  in all, the source's steps ${SIDE_BY_SIDE} at a time`,
);
if ('why' in firefox) console.log(`Skipped, same bits in Firefox: ${firefox.why}`);
if (counts.left > 0) console.log(`${counts.left} tests were left out by their own files; see above.`);
console.log(`${counts.passed} passed, ${counts.failed} failed`);
process.exitCode = counts.failed > 0 ? 1 : 0;

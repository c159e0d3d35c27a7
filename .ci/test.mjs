/**
 * npm test: installs what is missing, finds a browser and runs every step in order; stops at the first that fails.
 * The last line is 'N passed, N failed': the tests of vitest's own counts, and a step that fails otherwise as 1.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { findBrowser } from './find-browser.mjs';
import { installFirefox } from './find-firefox.mjs';
import { command, install, ROOT } from './install.mjs';

const CACHE = path.join(ROOT, '.cache');
const STEP_LIMIT_MS = 480_000;

const counts = { passed: 0, failed: 0, left: 0 };
/** @type {{ name: string, seconds: number }[]} */
const times = [];

function fail(/** @type {string} */ name, /** @type {string} */ why, /** @type {string[]} */ notRun) {
  console.error(`\nFAILED: ${name}. ${why}`);
  if (notRun.length > 0) console.error(`Skipped, because '${name}' failed: ${notRun.join(', ')}.`);
  if (counts.failed === 0) counts.failed = 1;
}

function run(/** @type {string[]} */ words) {
  const env = { ...process.env, NO_COLOR: '1' };
  return spawnSync(process.execPath, words, {
    cwd: ROOT,
    env,
    stdio: ['ignore', 'inherit', 'inherit'],
    timeout: STEP_LIMIT_MS,
  });
}

/** Runs one vitest project and adds its counts. */
function vitest(/** @type {string} */ project) {
  const report = path.join(CACHE, `${project}.json`);
  rmSync(report, { force: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const done = run([command('vitest'), 'run', '--project', project, ...reporters]);
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

/** @type {{ name: string, cure: string, go: () => { status: number | null } }[]} */
const steps = [
  {
    name: 'format',
    cure: 'Run: npm run format',
    go: () => run([command('prettier'), '--check', '--log-level', 'warn', '.']),
  },
  {
    name: 'lint',
    cure: 'The lines above name the place and the rule.',
    go: () => run([command('eslint'), '.', '--max-warnings', '0']),
  },
  {
    name: 'room order',
    cure: 'Each rule in .dependency-cruiser.mjs says why, and what to do instead.',
    go: () =>
      run([command('depcruise', 'dependency-cruiser'), '--output-type', 'err-long', 'src', 'workers']),
  },
  {
    name: 'unused code',
    cure: 'Delete what nobody uses.',
    go: () => run([command('knip'), '--no-config-hints']),
  },
  ...TSC_ROOMS.map((room) => ({
    name: `types of ${room}`,
    cure: 'The lines above name the place.',
    go: () => run([command('tsc', 'typescript'), '-p', room]),
  })),
  {
    name: 'types of the page',
    cure: 'The lines above name the place.',
    go: () => run([command('svelte-check'), '--tsconfig', './tsconfig.json', '--fail-on-warnings']),
  },
  { name: 'tests in Node', cure: 'The lines above name the test.', go: () => vitest('node') },
  {
    name: 'build',
    cure: 'The lines above say why.',
    go: () => run([command('vite'), 'build', '--logLevel', 'warn']),
  },
  { name: 'size', cure: 'See .ci/size.mjs.', go: () => run(['.ci/size.mjs']) },
  {
    name: 'tests in a browser',
    cure: 'cure' in browser ? browser.cure : 'The lines above name the test.',
    go: () => ('found' in browser ? vitest('browser') : { status: 1 }),
  },
];

for (const [at, step] of steps.entries()) {
  console.log(`\n== ${step.name}`);
  const start = Date.now();
  const { status } = step.go();
  times.push({ name: step.name, seconds: (Date.now() - start) / 1000 });
  if (status !== 0) {
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
console.log(`${((Date.now() - began) / 1000).toFixed(1).padStart(6)} s  in all`);
if ('why' in firefox) console.log(`Skipped, same bits in Firefox: ${firefox.why}`);
if (counts.left > 0) console.log(`${counts.left} tests were left out by their own files; see above.`);
console.log(`${counts.passed} passed, ${counts.failed} failed`);
process.exitCode = counts.failed > 0 ? 1 : 0;

/** Sees to it that Node is new enough and that the packages of package-lock.json are there. No packages needed. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');

const LOCK = path.join(ROOT, 'package-lock.json');
const MARK = path.join(ROOT, 'node_modules', '.seambench-lock');
const LEAST_NODE = [20, 19];

/** Ends the process with a sentence: for what a person has to put right first. */
export function stop(/** @type {string} */ sentence) {
  console.error(sentence);
  process.exit(1);
}

/** @returns {boolean} true when packages were installed, false when they were there */
export function install() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  const [leastMajor = 0, leastMinor = 0] = LEAST_NODE;
  if (major < leastMajor || (major === leastMajor && minor < leastMinor)) {
    stop(
      `Node ${process.versions.node} is too old: install Node ${LEAST_NODE.join('.')} or newer from nodejs.org.`,
    );
  }
  const lock = createHash('sha256').update(readFileSync(LOCK)).digest('hex');
  if (existsSync(MARK) && readFileSync(MARK, 'utf8') === lock) return false;

  const npm = process.env['npm_execpath'];
  const ci = ['ci', '--no-audit', '--no-fund'];
  const done = npm?.endsWith('.js')
    ? spawnSync(process.execPath, [npm, ...ci], { cwd: ROOT, stdio: 'inherit' })
    : spawnSync('npm', ci, { cwd: ROOT, stdio: 'inherit', shell: process.platform === 'win32' });
  if (done.status !== 0) {
    stop(
      'The packages could not be installed: the lines above say why. npm needs to reach its registry once.',
    );
  }
  writeFileSync(MARK, lock);
  return true;
}

/** The script behind a package's command, so that it can be run by this Node on any system without a shell. */
export function command(/** @type {string} */ name, pack = name) {
  const folder = path.join(ROOT, 'node_modules', pack);
  const bin = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')).bin;
  return path.join(folder, typeof bin === 'string' ? bin : bin[name]);
}

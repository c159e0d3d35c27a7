/**
 * Finds a Chromium for the browser tests: CHROME_PATH, PATH, the usual places, Playwright's cache; as root with
 * apt-get it installs one. No packages needed. Not tried on macOS and Windows.
 */
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync, readdirSync, statSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'msedge'];

const CURE =
  'No Chromium was found. Install one (Debian: apt-get install chromium fonts-liberation), ' +
  'or set CHROME_PATH to the program of a Chromium, Chrome or Edge.';

export const env = (/** @type {string} */ name) => process.env[name] ?? '';

export function runs(/** @type {string} */ file) {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}

export function onPath(/** @type {string[]} */ programs) {
  const names = process.platform === 'win32' ? programs.map((name) => `${name}.exe`) : programs;
  const folders = env('PATH')
    .split(path.delimiter)
    .filter((folder) => folder !== '');
  return names.flatMap((name) => folders.map((folder) => path.join(folder, name)));
}

function usualPlaces() {
  if (process.platform === 'darwin') {
    return ['Chromium', 'Google Chrome', 'Microsoft Edge'].map(
      (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
    );
  }
  if (process.platform === 'win32') {
    const roots = [env('PROGRAMFILES'), env('PROGRAMFILES(X86)'), env('LOCALAPPDATA')];
    return roots
      .filter((root) => root !== '')
      .flatMap((root) => [
        path.join(root, 'Google/Chrome/Application/chrome.exe'),
        path.join(root, 'Chromium/Application/chrome.exe'),
        path.join(root, 'Microsoft/Edge/Application/msedge.exe'),
      ]);
  }
  return [
    '/usr/bin/chromium',
    '/snap/bin/chromium',
    '/usr/lib/chromium/chromium',
    '/opt/google/chrome/chrome',
  ];
}

/** Browsers that Playwright has fetched for another project, newest first. */
function playwrightCache() {
  const roots = [
    env('PLAYWRIGHT_BROWSERS_PATH'),
    path.join(os.homedir(), '.cache/ms-playwright'),
    path.join(os.homedir(), 'Library/Caches/ms-playwright'),
    path.join(env('LOCALAPPDATA') || os.homedir(), 'ms-playwright'),
  ];
  const inside = [
    'chrome-linux/chrome',
    'chrome-linux64/chrome',
    'chrome-mac/Chromium.app/Contents/MacOS/Chromium',
    'chrome-win/chrome.exe',
  ];
  return roots
    .filter((root) => root !== '' && existsSync(root))
    .flatMap((root) =>
      readdirSync(root)
        .filter((name) => /^chromium-\d+$/.test(name))
        .sort((one, other) => Number(other.slice(9)) - Number(one.slice(9)))
        .flatMap((name) => inside.map((file) => path.join(root, name, file))),
    );
}

/**
 * Asks apt-get for packages, then looks again.
 * @param {string} what
 * @param {string[]} packages
 * @param {() => string | undefined} find
 * @returns {string | undefined} the program, if apt-get could be asked for it
 */
export function byApt(what, packages, find) {
  if (process.getuid?.() !== 0 || spawnSync('apt-get', ['--version']).status !== 0) return undefined;
  console.log(`No ${what} on this machine: asking apt-get for one (some minutes, once) ...`);
  const quiet = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const words of [['update'], ['install', '-y', '--no-install-recommends', ...packages]]) {
    spawnSync('apt-get', words, { env: quiet, stdio: ['ignore', 'ignore', 'inherit'], timeout: 240_000 });
  }
  return find();
}

/** @returns {{ found: string } | { cure: string }} */
export function findBrowser() {
  const named = env('CHROME_PATH');
  if (named !== '') {
    return runs(named)
      ? { found: named }
      : { cure: `CHROME_PATH is ${named}, and no program is there: correct it or unset it.` };
  }
  const installed = () => [...onPath(NAMES), ...usualPlaces()].find(runs);
  // fonts are only recommended by the first, so named
  const byPackage = () => byApt('Chromium', ['chromium', 'fonts-liberation'], installed);
  const found = installed() ?? playwrightCache().find(runs) ?? byPackage();
  return found === undefined ? { cure: CURE } : { found };
}

/**
 * How tests and the page's bench start Chromium: graphics by software, and none of the browser's own pages that a new
 * window loads beside the one under test.
 */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--enable-unsafe-swiftshader',
  '--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup',
];

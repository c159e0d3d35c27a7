/**
 * Finds a Firefox for the check that every host grows the same bits: FIREFOX_PATH, PATH, the usual places; as root with
 * apt-get it installs Debian's. Nothing else needs it, so that without one the check is left out and the reason told.
 */
import { byApt, env, onPath, runs } from './find-browser.mjs';

const NAMES = ['firefox-esr', 'firefox'];

const USUAL =
  process.platform === 'darwin'
    ? ['/Applications/Firefox.app/Contents/MacOS/firefox']
    : [
        '/usr/bin/firefox-esr',
        '/usr/bin/firefox',
        '/snap/bin/firefox',
        'C:/Program Files/Mozilla Firefox/firefox.exe',
      ];

const WHY =
  'no Firefox was found. Install one (Debian: apt-get install firefox-esr), or set FIREFOX_PATH to its program.';

const look = () => [...onPath(NAMES), ...USUAL].find(runs);

/** @returns {{ found: string } | { why: string }} */
export function findFirefox() {
  const named = env('FIREFOX_PATH');
  if (named !== '' && !runs(named)) {
    return { why: `FIREFOX_PATH is ${named}, and no program is there: correct it or unset it.` };
  }
  const found = named === '' ? look() : named;
  return found === undefined ? { why: WHY } : { found };
}

/** The same, after asking apt-get for one where there is none. */
export function installFirefox() {
  if (env('FIREFOX_PATH') === '' && look() === undefined) byApt('Firefox', ['firefox-esr'], look);
  return findFirefox();
}

/**
 * Weighs what the first view of the built page loads, in kB (1000 bytes) gzipped, against a limit.
 * From index.html every file that is named there or in a file so reached counts: scripts, styles, workers, the font;
 * also what is loaded only on some machines, so the sum is an upper bound. Parts named in later.json are left out with
 * what only they name: a browser test holds that a first visit does not ask for them.
 */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { ROOT } from './install.mjs';

const LIMIT_KB = 350;

const dist = path.join(ROOT, 'dist');
const NAMED = /[\w./-]+\.(?:js|css|woff2|svg|json)\b/g;

/** @type {string[]} */
const LATER = JSON.parse(readFileSync(path.join(ROOT, '.ci/later.json'), 'utf8'));
const isLater = (/** @type {string} */ file) =>
  LATER.some((name) => path.basename(file).startsWith(`${name}-`));

/** @type {Map<string, number>} */
const weighed = new Map();

function weigh(/** @type {string} */ file) {
  if (weighed.has(file) || isLater(file)) return;
  const bytes = readFileSync(file);
  // woff2 is packed already
  weighed.set(file, (file.endsWith('.woff2') ? bytes.length : gzipSync(bytes, { level: 9 }).length) / 1000);
  if (!/\.(html|js|css)$/.test(file)) return;
  for (const [name] of bytes.toString('utf8').matchAll(NAMED)) {
    // a name is relative to the file that says it, or to the page
    const near = [path.resolve(path.dirname(file), name), path.resolve(dist, name)].find(
      (place) => place.startsWith(dist + path.sep) && existsSync(place),
    );
    if (near !== undefined) weigh(near);
  }
}

weigh(path.join(dist, 'index.html'));
const totalKb = [...weighed.values()].reduce((sum, kb) => sum + kb, 0);
for (const [file, kb] of [...weighed].sort(([, one], [, other]) => other - one)) {
  if (kb >= 1) console.log(`  ${kb.toFixed(1).padStart(6)} kB  ${path.relative(dist, file)}`);
}
console.log(`first view: ${totalKb.toFixed(1)} kB gzipped, limit ${LIMIT_KB} kB`);
if (totalKb > LIMIT_KB) {
  console.error(
    `The first view is ${(totalKb - LIMIT_KB).toFixed(1)} kB too heavy: load what it does not show later.`,
  );
  process.exit(1);
}

/**
 * `npm run bench`: speed and memory of the engine beside its peers, in one run. `--json` prints the rows alone.
 * Never part of the tests: times depend on the machine and on what else it does.
 */
import os from 'node:os';
import { benchEdit } from './edit';
import { benchEqualFront } from './equal-front';
import { benchFronts } from './front';
import { benchMemory } from './memory';
import { sectionText, type Section } from './row';
import { benchTileYears } from './tile-year';

const isJson = process.argv.includes('--json');
const began = Date.now();

if (!isJson) {
  const [cpu] = os.cpus();
  const load = os.loadavg()[0].toFixed(1);
  console.log(`${cpu.model}, ${os.cpus().length} cores, load ${load} at start, Node ${process.version}`);
}

const sections: Section[] = [];
for (const job of [benchTileYears, benchEdit, benchFronts, benchEqualFront, benchMemory]) {
  const section = await job();
  sections.push(section);
  if (!isJson) console.log(`\n${sectionText(section)}`);
}

if (isJson) console.log(JSON.stringify(sections.flatMap(({ rows }) => rows)));
else
  console.log(
    `\nload ${os.loadavg()[0].toFixed(1)} at the end, ${((Date.now() - began) / 1000).toFixed(0)} s in all`,
  );

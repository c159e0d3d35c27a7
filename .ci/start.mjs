/** npm start: installs what is missing, builds the page and serves it. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { command, install, ROOT, stop } from './install.mjs';
import { serve } from './serve.mjs';

const PORT = 4173;

install();
const built = spawnSync(process.execPath, [command('vite'), 'build', '--logLevel', 'warn'], {
  cwd: ROOT,
  stdio: 'inherit',
});
if (built.status !== 0) stop('The page could not be built: the lines above say why.');

const dist = path.join(ROOT, 'dist');
const server = await serve(dist, { port: PORT }).catch((/** @type {NodeJS.ErrnoException} */ fault) => {
  if (fault.code !== 'EADDRINUSE') throw fault;
  return serve(dist, { port: 0 });
});
console.log(`Seambench is at ${server.address}  (Ctrl+C ends it)`);

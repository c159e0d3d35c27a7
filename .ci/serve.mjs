/** A plain static server for the built page: no packages, no cache, one folder, optionally under a sub-path. */
import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import path from 'node:path';

/** @type {Record<string, string>} */
const KINDS = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
};

/** @returns {string | null} the file that an address names, null where there is none */
function fileOf(/** @type {string} */ folder, /** @type {string} */ under, /** @type {string} */ address) {
  let asked;
  try {
    asked = decodeURIComponent(new URL(address, 'http://localhost').pathname);
  } catch {
    return null;
  }
  if (!asked.startsWith(under)) return null;
  const inside = asked.slice(under.length);
  const file = path.join(folder, inside === '' || inside.endsWith('/') ? `${inside}index.html` : inside);
  if (!file.startsWith(folder + path.sep)) return null;
  return statSync(file, { throwIfNoEntry: false })?.isFile() ? file : null;
}

/**
 * @param {string} folder what to serve
 * @param {{ port: number, under?: string }} where port 0 takes any free one; `under` begins and ends with '/'
 * @returns {Promise<{ address: string, close: () => Promise<void> }>}
 */
export function serve(folder, { port, under = '/' }) {
  const server = createServer((request, response) => {
    const file = fileOf(path.resolve(folder), under, request.url ?? '/');
    if (file === null) {
      response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('Not found');
      return;
    }
    response.writeHead(200, {
      'content-type': KINDS[path.extname(file)] ?? 'application/octet-stream',
      'cache-control': 'no-cache',
      'x-content-type-options': 'nosniff',
    });
    createReadStream(file).pipe(response);
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      const at = server.address();
      if (at === null || typeof at === 'string') throw new Error('the server has no port');
      resolve({
        address: `http://127.0.0.1:${at.port}${under}`,
        close: () =>
          new Promise((closed) => {
            server.close(() => closed());
            server.closeAllConnections();
          }),
      });
    });
  });
}

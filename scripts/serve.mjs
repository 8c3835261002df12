// One way to serve a built site, for `npm start`, the tests and the bench.
import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join, resolve } from 'node:path';
import sirv from 'sirv';

/** A sub-path with a slash at both ends: 'club/power' and '/club/power/' are the same; nothing is '/'. */
export function folderOf(path = '') {
  const names = path.split('/').filter((name) => name !== '');
  return names.length === 0 ? '/' : `/${names.join('/')}/`;
}

/** Where `path` has to be asked for instead, with its query, or undefined. */
function redirect(folder, base, path, query) {
  if (`${path}/` === base) return `${base}${query}`;
  if (!path.startsWith(base) || path.endsWith('/')) return;
  const inside = decodeURIComponent(path.slice(base.length));
  const page = resolve(folder, inside, 'index.html');
  return page.startsWith(folder) && existsSync(page) ? `${path}/${query}` : undefined;
}

function sendMissing(folder, response) {
  const page = join(folder, '404.html');
  response.writeHead(404, { 'content-type': 'text/html; charset=utf-8' });
  response.end(existsSync(page) ? readFileSync(page) : '<!doctype html><title>Not found</title><h1>Not found</h1>');
}

function refuse(response, status, headers = {}) {
  response.writeHead(status, headers).end();
}

/** The address that is asked for, or undefined where it cannot be read. */
function addressOf(request) {
  try {
    return new URL(request.url ?? '/', 'http://localhost');
  } catch {
    return;
  }
}

/** Files with a hash in their name never change; the rest is asked for again. What says which release there is, nobody may keep. */
function cacheOf(path) {
  if (path.startsWith('/_astro/')) return 'public, max-age=31536000, immutable';
  return path === '/sw.js' ? 'no-store' : 'no-cache';
}

const setHeaders = (response, path) => response.setHeader('cache-control', cacheOf(path));

/** Answers one request out of the files below `folder`, which are listed once. */
function answerer(folder, base, brotli) {
  const files = sirv(folder, { gzip: true, brotli, etag: true, setHeaders });
  return (request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405, { allow: 'GET, HEAD' });
    const at = addressOf(request);
    if (at === undefined) return refuse(response, 400);
    const missing = () => sendMissing(folder, response);
    let elsewhere;
    try {
      elsewhere = redirect(folder, base, at.pathname, at.search);
    } catch {
      return missing();
    }
    if (elsewhere !== undefined) return response.writeHead(301, { location: elsewhere }).end();
    if (!at.pathname.startsWith(base)) return missing();
    request.url = `/${at.pathname.slice(base.length)}${at.search}`;
    return files(request, response, missing);
  };
}

function listen(server, port, mostTries) {
  return new Promise((done, fail) => {
    let tries = 0;
    server.on('error', (error) => {
      tries += 1;
      if (error.code !== 'EADDRINUSE' || tries >= mostTries) return fail(error);
      server.listen(port + tries, '127.0.0.1');
    });
    server.on('listening', () => done(server.address().port));
    server.listen(port, '127.0.0.1');
  });
}

/**
 * Serves the built site in `folder` under `base`. Port 0 is any free one; a taken port gives the next one.
 * @param {{ folder: string, base?: string | undefined, port?: number, brotli?: boolean }} options
 * @returns {Promise<{ origin: string, address: string, port: number, close: () => Promise<void> }>}
 */
export async function serve({ folder, base, port = 0, brotli = true }) {
  const root = resolve(folder);
  if (!existsSync(join(root, 'index.html'))) throw new Error(`There is no built site in ${folder}: run npm run build`);
  const path = folderOf(base);
  const server = createServer(answerer(root, path, brotli));
  const listening = await listen(server, port, port === 0 ? 1 : 50);
  const origin = `http://127.0.0.1:${listening}`;
  const close = () =>
    new Promise((done) => {
      server.close(() => done());
      server.closeAllConnections();
    });
  return { origin, address: `${origin}${path}`, port: listening, close };
}

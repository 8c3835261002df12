// The configuration that the README offers, in the real server: what is said beside the files, packed files, a folder below the root.
import { spawn, spawnSync } from 'node:child_process';
import { cpSync, globSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { freePort } from './engine.ts';

const NGINX = '/usr/sbin/nginx';
const FOLDER = resolve(process.env.SITE_FOLDER ?? 'dist');
const WRITTEN = readFileSync('docs/hosting/nginx.conf', 'utf8');

/** Starts nginx with the file as it stands, but for the lines that it says are to be changed. */
async function start(root: string, below: string) {
  const place = mkdtempSync(join(tmpdir(), 'nginx-'));
  const port = await freePort();
  mkdirSync(join(place, 'logs'));
  const site = WRITTEN.replace(/listen 80;/, `listen 127.0.0.1:${port};`)
    .replace(/root \S+;/, `root ${root};`)
    .replace(/error_page 404 \S+;/, `error_page 404 ${below}404.html;`);
  const temporary = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi']
    .map((one) => `${one}_temp_path ${place}/${one};`)
    .join(' ');
  // Where the test runs as root, the server would read the folder as somebody who may not.
  const user = process.getuid?.() === 0 ? 'user root; ' : '';
  const whole = `${user}daemon off; error_log stderr warn; pid ${place}/pid; worker_processes 1;
    events { worker_connections 64; } http { access_log off; ${temporary} ${site} }`;
  writeFileSync(join(place, 'nginx.conf'), whole);
  const args = ['-p', place, '-c', join(place, 'nginx.conf')];
  const checked = spawnSync(NGINX, ['-t', ...args], { encoding: 'utf8' });
  if (checked.status !== 0) throw new Error(checked.stderr);
  const server = spawn(NGINX, args, { stdio: 'ignore' });
  const address = `http://127.0.0.1:${port}`;
  for (let tries = 0; tries < 100; tries += 1) {
    if (await fetch(address).catch(() => undefined)) break;
    await new Promise((done) => setTimeout(done, 50));
  }
  return {
    address: address + below,
    stop: () => {
      server.kill('SIGQUIT');
      rmSync(place, { recursive: true, force: true });
    },
  };
}

const hashed = globSync('_astro/*.js', { cwd: FOLDER })[0] ?? '';

/** The site as it is, or a copy of it in a folder below the root. */
function rootFor(below: string): string {
  if (below === '/') return FOLDER;
  const root = mkdtempSync(join(tmpdir(), 'site-'));
  cpSync(FOLDER, join(root, below), { recursive: true });
  return root;
}

describe.each(['/', '/club/power/'])('Behind nginx, at %s', (below) => {
  let address = '';
  let root = '';
  let stop = (): void => undefined;
  beforeAll(async () => {
    root = rootFor(below);
    ({ address, stop } = await start(root, below));
  });
  afterAll(() => {
    stop();
    if (root !== FOLDER) rmSync(root, { recursive: true });
  });

  test('every page of the site is there, in its own type', async () => {
    const files = globSync('en/**/*.html', { cwd: FOLDER });
    expect(files.length).toBeGreaterThan(100);
    for (const file of files) {
      const answer = await fetch(address + file.replaceAll('\\', '/').replace(/index\.html$/, ''));
      expect([file, answer.status, answer.headers.get('content-type')]).toEqual([
        file,
        200,
        'text/html; charset=utf-8',
      ]);
      await answer.body?.cancel();
    }
  });

  test('no other page may frame it, and no address is passed on, on an error page neither', async () => {
    for (const path of ['en/', 'en/nowhere/', hashed]) {
      const { headers } = await fetch(address + path);
      expect(headers.get('content-security-policy')).toBe("frame-ancestors 'none'");
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('permissions-policy')).toBe('camera=(), microphone=(), geolocation=()');
      expect(headers.get('server')).toBe('nginx');
    }
  });

  test('files with a hash in their name are kept, the worker never, pages only if asked for again', async () => {
    const cached = async (path: string) => (await fetch(address + path)).headers.get('cache-control');
    expect(await cached(hashed)).toBe('public, max-age=31536000, immutable');
    expect(await cached('sw.js')).toBe('no-store');
    expect(await cached('en/')).toBe('no-cache');
    expect(await cached('offline.json')).toBe('no-cache');
  });

  test('a page goes over the line packed', async () => {
    const asked = await fetch(`${address}en/`, { headers: { 'accept-encoding': 'gzip' } });
    expect(asked.headers.get('content-encoding')).toBe('gzip');
    expect(asked.headers.get('vary')).toMatch(/accept-encoding/i);
    expect(await asked.text()).toContain('<html');
  });

  test('an address without its last slash leads on and keeps its answers; one that leads nowhere gets our page', async () => {
    const led = await fetch(`${address}en/work-it-out/enough-current?scale=n`, { redirect: 'manual' });
    expect([led.status, led.headers.get('location')]).toEqual([301, `${below}en/work-it-out/enough-current/?scale=n`]);
    const lost = await fetch(`${address}en/nowhere/`);
    expect(lost.status).toBe(404);
    expect(await lost.text()).toBe(readFileSync(join(FOLDER, '404.html'), 'utf8'));
  });

  test('nothing can be sent to it, and no file outside of it is given', async () => {
    expect((await fetch(address, { method: 'POST', body: 'x' })).status).toBe(405);
    for (const path of ['%2e%2e/%2e%2e/etc/passwd', '..%2f..%2fetc%2fpasswd', '%00']) {
      expect((await fetch(address + path)).status, path).toBeGreaterThanOrEqual(400);
    }
  });
});

// The server of npm start and of the tests.
import { connect } from 'node:net';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serve } from '../../scripts/serve.mjs';

let site: Awaited<ReturnType<typeof serve>>;
beforeAll(async () => {
  site = await serve({ folder: 'dist', base: 'club/power' });
});
afterAll(() => site.close());

const ask = (path: string, headers = {}) => fetch(`${site.origin}${path}`, { redirect: 'manual', headers });

test('a page is served below the sub-path and nowhere else', async () => {
  expect((await ask('/club/power/')).status).toBe(200);
  expect((await ask('/')).status).toBe(404);
});

test('a page asked for without its slash is found at the slash, with its answers', async () => {
  const answer = await ask('/club/power/en?scale=n');
  expect([answer.status, answer.headers.get('location')]).toEqual([301, '/club/power/en/?scale=n']);
  const root = await ask('/club/power?scale=n');
  expect([root.status, root.headers.get('location')]).toEqual([301, '/club/power/?scale=n']);
});

test('what is not there is a 404, outside the folder too', async () => {
  for (const path of ['/club/power/no-such-page/', '/club/power/..%2f..%2fpackage.json', '/club/power/%']) {
    expect((await ask(path)).status).toBe(404);
  }
});

test('compressed twins are sent to who takes them', async () => {
  const encoding = async (accepted: string) =>
    (await ask('/club/power/', { 'accept-encoding': accepted })).headers.get('content-encoding');
  expect([await encoding('br, gzip'), await encoding('gzip'), await encoding('identity')]).toEqual([
    'br',
    'gzip',
    null,
  ]);
});

test('a taken port gives the next one', async () => {
  const second = await serve({ folder: 'dist', port: site.port });
  expect(second.port).toBeGreaterThan(site.port);
  await second.close();
});

/** One request as it is written on the wire, past everything that tidies an address; gives the status. */
function raw(method: string, target: string): Promise<number> {
  return new Promise((done, fail) => {
    let heard = '';
    const line = connect(site.port, '127.0.0.1', () => {
      line.write(`${method} ${target} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`);
    });
    line.on('data', (part) => {
      heard += part.toString('latin1');
    });
    line.on('error', fail);
    line.on('close', () => done(Number(/^HTTP\/1\.1 (\d{3})/.exec(heard)?.[1])));
  });
}

test('an address that cannot be read is refused, and the server goes on', async () => {
  for (const target of ['//', '///', '//?x', 'http://[', 'http://[::1', '//[/club/power/']) {
    expect([target, await raw('GET', target)]).toEqual([target, 400]);
  }
  expect((await ask('/club/power/')).status).toBe(200);
});

test('only asking is allowed: whatever would change something is refused, with what is allowed', async () => {
  for (const method of ['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS']) {
    const answer = await fetch(`${site.origin}/club/power/`, { method });
    expect([method, answer.status, answer.headers.get('allow')]).toEqual([method, 405, 'GET, HEAD']);
  }
  expect((await fetch(`${site.origin}/club/power/`, { method: 'HEAD' })).status).toBe(200);
});

// The link check notices each kind of wrong link. (Over the built site it runs as a part of its own in npm test.)
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { checkLinks } from '../../scripts/check/links.mjs';

const folder = mkdtempSync(join(tmpdir(), 'links-'));
afterAll(() => rmSync(folder, { recursive: true }));

function write(body: string): void {
  mkdirSync(join(folder, 'en'), { recursive: true });
  writeFileSync(join(folder, 'index.html'), body);
  writeFileSync(join(folder, 'en/index.html'), '<h1 id="here">Here</h1>');
  writeFileSync(join(folder, 'a.css'), 'body { background: url("missing.png") }');
}

test('right links pass', () => {
  write(
    '<a href="/club/en/?scale=n#here">a</a> <a href="en/">b</a> <a href="https://example.org/">c</a> <a href="#top">d</a>',
  );
  expect(checkLinks(folder, '/club/').broken).toEqual(['a.css: missing.png leads nowhere']);
});

test('wrong links are named', () => {
  write('<a href="/en/">a</a> <a href="en">b</a> <a href="en/#there">c</a> <img src="no.svg" srcset="no2.svg 2x">');
  expect(checkLinks(folder, '/club/').broken).toEqual([
    'index.html: /en/ leaves /club/',
    'index.html: en lacks the final slash',
    'index.html: en/#there has no part #there',
    'index.html: no.svg leads nowhere',
    'index.html: no2.svg leads nowhere',
    'a.css: missing.png leads nowhere',
  ]);
});

test('a file that an island fetches later is looked for too', () => {
  write('<astro-island props="{&quot;laterStyles&quot;:[1,[[0,&quot;/club/_astro/walk.css&quot;]]]}"></astro-island>');
  expect(checkLinks(folder, '/club/').broken).toContain('index.html: /club/_astro/walk.css leads nowhere');
});

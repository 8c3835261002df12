// The site below /club/power/: npm test builds it there into a folder of its own and names both in the environment.
import { createHash } from 'node:crypto';
import { globSync, readFileSync } from 'node:fs';
import { parse } from 'node-html-parser';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { checkLinks } from '../../scripts/check/links.mjs';
import { shortened } from '../../src/wizards/short-links/index.ts';
import { open, site } from './browser.ts';

const folder = process.env.SITE_FOLDER ?? '';
const base = process.env.SITE_BASE ?? '';
const WIZARD = 'en/work-it-out/enough-current/';

test('every link stays below the sub-path', () => {
  expect(base).not.toBe('');
  const { pages, broken } = checkLinks(folder, base);
  expect(pages).toBeGreaterThanOrEqual(20);
  expect(broken).toEqual([]);
});

test('a wizard comes to life', async () => {
  const { page, problems, close } = await open(WIZARD, { width: 360 });
  await page.locator('astro-island:not([ssr])').first().waitFor({ state: 'attached' });
  expect(await page.locator('h1').count()).toBe(1);
  expect(await problems()).toEqual([]);
  await close();
});

test('the search finds pages and gives addresses below the sub-path', async () => {
  const { page, problems, close } = await open('en/search/?q=power');
  const hits = page.locator('#results .list a');
  await hits.first().waitFor();
  const found = await hits.evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''));
  expect(found.length).toBeGreaterThan(0);
  for (const address of found) expect(address.startsWith(base)).toBe(true);
  expect(await problems()).toEqual([]);
  await close();
});

test('all of it is kept below the sub-path, and is there without a line', async () => {
  const { address, browser } = await site();
  const context = await browser.newContext({ serviceWorkers: 'allow' });
  const page = await context.newPage();
  await page.goto(`${address}en/`);
  await expect
    .poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null), { timeout: 30_000 })
    .toBe(true);
  expect(await page.evaluate(async () => (await navigator.serviceWorker.ready).scope)).toBe(address);
  await context.setOffline(true);
  await page.goto(`${address}${WIZARD}`);
  await page.locator('astro-island:not([ssr])').first().waitFor({ state: 'attached' });
  const short = shortened({ page: 'work-it-out/enough-current', search: '?modern=4&scale=h0' });
  await page.goto(`${address}en/a/?${short}`);
  await page.waitForURL(`${address}${WIZARD}?modern=4&scale=h0`);
  await page.goto(`${address}en/search/?q=power`);
  await page.locator('#results .list a').first().waitFor();
  await page.goto(`${address}en/privacy/`);
  await expect.poll(() => page.locator('[data-stored="copy"]').innerText()).toMatch(/^\d{3} files/);
  const manifest = await page.locator('link[rel=manifest]').getAttribute('href');
  expect(new URL(manifest ?? '', address).pathname).toBe(`${base}manifest.webmanifest`);
  const begins = await page.evaluate(async (href) => (await (await fetch(href)).json()).start_url, manifest ?? '');
  expect(begins).toBe(`${base}en/`);
  await context.close();
});

const HOME = `https://club.example${base}`;
const built = (file: string): string => readFileSync(`${folder}/${file}`, 'utf8');
const all = (text: string, tag: RegExp): string[] => [...text.matchAll(tag)].map(([, found = '']) => found);

test('where the site knows its own address, every page says it, and the map has just those pages', () => {
  const files = globSync('*/**/index.html', { cwd: folder }).map((file) => file.replaceAll('\\', '/'));
  expect(files.length).toBeGreaterThan(200);
  const told = files.map((file) => {
    const head = parse(built(file)).querySelector('head');
    const canonical = head?.querySelector('link[rel=canonical]')?.getAttribute('href');
    expect(canonical, file).toBe(HOME + file.replace('index.html', ''));
    expect(head?.querySelector('meta[property="og:url"]')?.getAttribute('content'), file).toBe(canonical);
    for (const name of ['title', 'description'])
      expect(head?.querySelector(`meta[property="og:${name}"]`)?.getAttribute('content'), file).toMatch(/\S/);
    return canonical;
  });
  expect(all(built('sitemap.xml'), /<loc>([^<]+)<\/loc>/g).toSorted()).toEqual(told.toSorted());
  expect(built('404.html')).not.toContain('canonical');
});

test('the picture of each section is there, of the size that is shown', async () => {
  const pictures = new Set(
    globSync('*/**/index.html', { cwd: folder }).map(
      (file) => parse(built(file)).querySelector('meta[property="og:image"]')?.getAttribute('content') ?? file,
    ),
  );
  expect(pictures.size).toBe(4);
  for (const picture of pictures) {
    expect(picture.startsWith(HOME)).toBe(true);
    expect(await sharp(`${folder}/${picture.slice(HOME.length)}`).metadata()).toMatchObject({
      width: 1200,
      height: 630,
    });
  }
});

test('the feed of changes has each with its date, the latest first, and leads to pages that there are', () => {
  const feed = built('en/changes.xml');
  const dates = all(feed, /<entry>[\s\S]*?<updated>([^<]+)<\/updated>/g);
  expect(dates.length).toBeGreaterThan(1);
  expect(dates).toEqual(dates.toSorted().toReversed());
  for (const date of dates) expect(Number.isNaN(Date.parse(date))).toBe(false);
  const ids = all(feed, /<id>([^<]+)<\/id>/g);
  expect(new Set(ids).size).toBe(ids.length);
  for (const link of all(feed, /<entry>[\s\S]*?<link href="([^"]+)"/g))
    expect(built(`${link.slice(HOME.length)}index.html`)).toContain('<main');
});

test('what is told to search engines is data: no policy refuses it, and none has to name it', async () => {
  const { address, browser } = await site();
  const page = await (await browser.newContext({ serviceWorkers: 'block' })).newPage();
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ violatedDirective }) => {
      document.documentElement.dataset['refused'] = violatedDirective;
    });
  });
  const path = 'en/fixes/larger-supply/';
  const said: string[] = [];
  page.on('console', (message) => said.push(message.text()));
  await page.goto(`${address}${path}`, { waitUntil: 'load' });
  expect(await page.evaluate(() => document.documentElement.dataset['refused'])).toBeUndefined();
  expect(said.filter((text) => /content security policy|refused/i.test(text))).toEqual([]);
  const told = await page.locator('script[type="application/ld+json"]').textContent();
  expect(JSON.parse(told ?? '')['@type']).toBe('HowTo');
  const hash = createHash('sha256')
    .update(told ?? '')
    .digest('base64');
  expect(built(`${path}index.html`)).not.toContain(hash);
  await page.context().close();
});

test('every fix tells its steps to search engines, each with the dangers that stand at it, and no sign of a gap in the words', () => {
  const files = globSync('en/fixes/*/index.html', { cwd: folder });
  expect(files.length).toBeGreaterThan(150);
  for (const file of files) {
    const page = parse(built(file));
    const told = JSON.parse(page.querySelector('script[type="application/ld+json"]')?.rawText ?? '');
    expect(told['@type'], file).toBe('HowTo');
    expect(told.step.length, file).toBeGreaterThan(0);
    expect(JSON.stringify(told), file).not.toMatch(/[{]\w+[:}]/);
    for (const { text } of told.step) expect(text, file).not.toMatch(/undefined|\{|\}/);
  }
});

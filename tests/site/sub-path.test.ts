// The site below /club/power/: npm test builds it there into a folder of its own and names both in the environment.
import { expect, test } from 'vitest';
import { checkLinks } from '../../scripts/check/links.mjs';
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
  await page.goto(`${address}en/search/?q=power`);
  await page.locator('#results .list a').first().waitFor();
  await page.goto(`${address}en/privacy/`);
  await expect.poll(() => page.locator('[data-stored="copy"]').innerText()).toMatch(/^\d{3} files/);
  const manifest = await page.locator('link[rel=manifest]').getAttribute('href');
  expect(manifest).toBe(`${base}manifest.webmanifest`);
  const begins = await page.evaluate(async (href) => (await (await fetch(href)).json()).start_url, manifest ?? '');
  expect(begins).toBe(`${base}en/`);
  await context.close();
});

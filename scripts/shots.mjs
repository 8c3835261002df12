// npm run shots -- en/ 'en/work-it-out/enough-current/?scale=n': pictures of pages of the built site, at three widths,
// light and dark, into reports/shots.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { assertNode, manyVisitsOptions, ROOT } from './machine.mjs';
import { serve } from './serve.mjs';

assertNode();

const WIDTHS = [360, 768, 1280];
const folder = join(ROOT, 'reports/shots');
const paths = process.argv.slice(2);
if (paths.length === 0) paths.push('en/');

mkdirSync(folder, { recursive: true });
const site = await serve({ folder: join(ROOT, 'dist'), base: process.env.BASE_PATH });
const browser = await chromium.launch(manyVisitsOptions());

/** A file's name, short enough for every file system. */
const nameOf = (path) =>
  path
    .replace(/^\/|\/$/g, '')
    .replaceAll(/[^\w=.-]+/g, '_')
    .slice(0, 120) || 'home';

async function shoot(path, width, colorScheme) {
  const context = await browser.newContext({ viewport: { width, height: 800 }, colorScheme, serviceWorkers: 'block' });
  // As on every page but the first: in the faces of the site.
  await context.addInitScript(() => localStorage.setItem('both-rails-faces', '1'));
  const page = await context.newPage();
  await page.goto(`${site.address}${path.replace(/^\//, '')}`, { waitUntil: 'networkidle' });
  const file = join(folder, `${nameOf(path)}-${width}-${colorScheme}.png`);
  await page.screenshot({ path: file, fullPage: true });
  await context.close();
  console.log(file);
}

for (const path of paths) {
  for (const width of WIDTHS) for (const scheme of ['light', 'dark']) await shoot(path, width, scheme);
}
await browser.close();
await site.close();

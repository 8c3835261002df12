// npm run record: what every address in tests/record/addresses.txt shows a person, word by word and number by number, into
// reports/record.json. With `--only TEXT` only addresses
// that hold the text. With `--against FILE` it says which addresses show something else than in that file, and what.
// Lesson figures are also moved by their controls. A change that should change nothing is recorded before and after.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { chromium } from 'playwright-core';
import { assertNode, chromiumOptions, ROOT } from './machine.mjs';
import { serve } from './serve.mjs';

assertNode();

const { values: chosen } = parseArgs({
  options: {
    only: { type: 'string', default: '' },
    against: { type: 'string' },
    to: { type: 'string', default: 'reports/record.json' },
  },
});
/** Pages looked at at the same time. */
const TABS = 4;

/** What stands in the main part, closed parts too; where the address went; what the island's state is. Runs in the page. */
function look() {
  const main = document.querySelector('main');
  const own = main?.cloneNode(true);
  for (const node of own?.querySelectorAll('script, style, noscript, .in-feet') ?? []) node.remove();
  // A space between the texts of neighbours, so that moved boxes do not join words.
  const walker = document.createTreeWalker(own ?? document.createElement('p'), NodeFilter.SHOW_TEXT);
  const texts = [];
  while (walker.nextNode()) texts.push(walker.currentNode.textContent);
  const fields = [...(main?.querySelectorAll('input, select, textarea') ?? [])].map((field) =>
    field.type === 'radio' || field.type === 'checkbox'
      ? `${field.name}=${field.value}:${field.checked}`
      : `${field.name || field.id}=${field.value}`,
  );
  const links = [...(main?.querySelectorAll('a[href]') ?? [])].map((link) => link.getAttribute('href'));
  const drawn = [...(main?.querySelectorAll('svg path[d], svg text, svg circle') ?? [])].map(
    (shape) =>
      shape.getAttribute('d') ??
      `${shape.getAttribute('x') ?? shape.getAttribute('cx')},${shape.getAttribute('y') ?? shape.getAttribute('cy')}`,
  );
  return {
    search: location.search,
    title: document.title,
    heading: main?.querySelector('h1')?.textContent ?? '',
    text: texts.join(' ').replace(/\s+/g, ' ').trim(),
    fields,
    links,
    drawn: drawn.join(' '),
  };
}

/** Moves each control of the live figures once, and looks again. */
async function move(page) {
  const figures = page.locator('main astro-island');
  if ((await figures.count()) === 0) return [];
  const seen = [];
  const controls = await page
    .locator('main astro-island')
    .locator('input[type=range], input[type=radio], select, input[type=checkbox]')
    .all();
  for (const control of controls) {
    if (!(await control.isVisible())) continue;
    const kind = await control.evaluate((field) => (field.tagName === 'SELECT' ? 'select' : field.type));
    if (kind === 'range') for (let i = 0; i < 3; i += 1) await control.press('ArrowRight');
    else if (kind === 'select') await control.press('ArrowDown');
    else await control.click({ force: true });
    await page.waitForTimeout(250);
    seen.push(await page.evaluate(look));
  }
  return seen;
}

const LIVE = /^en\/(learn\/.+|fixes\/.+)/;

async function record(browser, site, path) {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    reducedMotion: 'reduce',
    locale: 'en-GB',
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  const errors = [];
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(`${site.address}${path}`, { waitUntil: 'networkidle' });
  for (const island of await page.locator('main astro-island').all())
    await island.scrollIntoViewIfNeeded().catch(() => undefined);
  await page.waitForLoadState('networkidle');
  await page.waitForTimeout(200);
  const shown = await page.evaluate(look);
  const moved = LIVE.test(path) ? await move(page) : [];
  await context.close();
  return { ...shown, errors, moved };
}

/** The first words that differ, with what stands around them. */
function difference(before, after) {
  const [a, b] = [before.split(' '), after.split(' ')];
  let at = 0;
  while (at < a.length && a[at] === b[at]) at += 1;
  let end = 0;
  while (end < a.length - at && end < b.length - at && a[a.length - 1 - end] === b[b.length - 1 - end]) end += 1;
  const cut = (words) => words.slice(Math.max(0, at - 4), Math.min(words.length - end + 2, at + 30)).join(' ');
  return `  before: … ${cut(a)} …\n  after:  … ${cut(b)} …`;
}

const PARTS = ['search', 'title', 'heading', 'text', 'fields', 'links', 'drawn', 'errors'];
const asText = (value) => (Array.isArray(value) ? value.join(' ') : (value ?? ''));

/** An address without the release and the verdict that links to answers carry. */
const withoutMade = (search = '') => search.replace(/[?&]made=[^&]*/, '').replace(/^&/, '?');
const partOf = (one, part) => (part === 'search' ? withoutMade(one.search) : asText(one[part]));

function compare(before, after) {
  let compared = 0;
  let different = 0;
  for (const [path, one] of Object.entries(before)) {
    if (!path.includes(chosen.only)) continue;
    compared += 1;
    const other = after[path];
    const pairs =
      other === undefined ? [] : [[one, other], ...one.moved.map((each, i) => [each, other.moved[i] ?? {}])];
    const found = pairs.flatMap(([a, b], i) =>
      PARTS.filter((part) => partOf(a, part) !== partOf(b, part)).map((part) => ({
        part,
        i,
        a: partOf(a, part),
        b: partOf(b, part),
      })),
    );
    if (other !== undefined && found.length === 0) continue;
    different += 1;
    console.log(`\n${path}${other === undefined ? ': not recorded' : ''}`);
    for (const { part, i, a, b } of found.slice(0, 4))
      console.log(` ${part}${i > 0 ? ` after control ${i}` : ''}\n${difference(a, b)}`);
  }
  console.log(`\n${compared} addresses compared, ${different} show something else`);
  return different;
}

const paths = readFileSync(join(ROOT, 'tests/record/addresses.txt'), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && line.includes(chosen.only));
const site = await serve({ folder: join(ROOT, 'dist'), base: process.env.BASE_PATH });
const browser = await chromium.launch(chromiumOptions());
const shown = {};
const waiting = [...paths];
await Promise.all(
  Array.from({ length: TABS }, async () => {
    for (let path = waiting.shift(); path !== undefined; path = waiting.shift())
      shown[path] = await record(browser, site, path);
  }),
);
await browser.close();
await site.close();
const inOrder = Object.fromEntries(paths.map((path) => [path, shown[path]]));
mkdirSync(join(ROOT, 'reports'), { recursive: true });
writeFileSync(join(ROOT, chosen.to), JSON.stringify(inOrder));
console.log(`${paths.length} addresses recorded in ${chosen.to}`);
if (chosen.against !== undefined)
  process.exitCode = compare(JSON.parse(readFileSync(resolve(ROOT, chosen.against), 'utf8')), inOrder) > 0 ? 1 : 0;

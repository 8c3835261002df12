// Links that nobody wrote in good faith, on every kind of page, those above all that read their address: no script of theirs runs, nothing
// breaks, and there is always something to read. `npm run hostile` tries ten thousand on all pages.
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { packSheet } from '../../src/components/kept-sheets/link-to.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { DEMO_CLUB, DEMO_OVAL } from '../../src/wizards/sheet/index.ts';
import { shortened } from '../../src/wizards/short-links/index.ts';
import { hostileSearches, type Known, TRIED } from '../hostile.ts';
import { ALL_FIELDS, textsFor } from '../wizards/told.ts';
import { goWithin, open, pages } from './browser.ts';

const FIELDS: Known = Object.fromEntries(ALL_FIELDS.map((field) => [field.id, textsFor(field)]));
const CHECKS: Known = {
  ...Object.fromEntries(SIGN_MODEL.checks.map(({ id, options }) => [id, [...Object.keys(options), 'cannot']])),
  told: ['yes', 'no'],
  tools: ['none', 'multimeter'],
  tried: ['reversed'],
  fixed: ['pickup'],
};
const FIGURE: Known = {
  at: ['1', '12'],
  bus: ['0.75', '4'],
  moving: ['4', '12'],
  older: ['yes'],
  volts: ['15'],
  'supply-amps': ['3'],
  seed: ['1'],
  path: ['first-layout'],
  made: ['0.1.0-enough'],
  units: ['feet', 'metric'],
};
const SHORT: Known = Object.fromEntries(
  [
    { page: 'work-it-out/enough-current', search: '?modern=4&moving=3&scale=h0&supply-amps=3' },
    { page: 'put-it-right/trips-at-gap', search: '?two-lamps=both-light' },
  ].map((state) => [shortened(state) ?? '', ['']]),
);
const SHEETS: Known = { sheet: await Promise.all([DEMO_CLUB, DEMO_OVAL].map(packSheet)) };

/** What the pages below a path can be asked by, and after which sign of the address; the first that fits. */
const ASKED: readonly (readonly [below: RegExp, known: Known, sign: '?' | '#'])[] = [
  [/^work-it-out\/first-power-up\/|^layout-sheet\/|^plan\//, SHEETS, '#'],
  [/^work-it-out\/./, FIELDS, '?'],
  [/^put-it-right\/./, CHECKS, '?'],
  [/^a\//, SHORT, '?'],
  [/^(search|help-desk)\//, { q: ['gap', 'booster', 'wire'] }, '?'],
  [/^/, FIGURE, '?'],
];
/** Of every kind of page some, where not all are tried. */
const SOME = [
  'en/work-it-out/enough-current/',
  'en/work-it-out/which-supply-where/',
  'en/work-it-out/share-out/',
  'en/work-it-out/wire-it/',
  'en/put-it-right/trips-at-gap/',
  'en/put-it-right/one-locomotive-only/',
  'en/learn/voltage-along-the-track/',
  'en/learn/drive-across-the-gap/',
  'en/search/',
  'en/fixes/more-feeders/',
  'en/a/',
  'en/layout-sheet/',
  'en/plan/',
];
const ALL = pages().filter((path) => path.startsWith('en/'));
/** Fewer on each page would try less than its kinds of harm. */
const LEAST = 4;
const ROUTES = TRIED.links / ALL.length < LEAST ? SOME : ALL;
const EACH = Math.max(LEAST, Math.ceil(TRIED.links / ROUTES.length));
/** One in so many is opened as a link is, the others as steps on a page that is there. */
const FRESH = 8;

test('some pages of every kind are there to be asked', () => {
  for (const path of SOME) expect(ALL).toContain(path);
});

test.each(ROUTES)(`%s with ${EACH} of them`, { timeout: 60_000 + EACH * 1_000 }, async (path) => {
  const [, known, sign] = ASKED.find(([below]) => below.test(path.replace('en/', ''))) ?? [/^/, FIGURE, '?'];
  const { page, problems, close } = await open(path, { width: 360 });
  const address = page.url();
  const soFar = await worked(page);
  let most = 0;
  let dialogs = 0;
  page.on('dialog', (dialog) => {
    dialogs += 1;
    return dialog.dismiss();
  });
  const there = () =>
    page.evaluate(() => (document.querySelector('main h1')?.textContent ?? '').trim().length).catch(() => 0);
  for (const [index, text] of hostileSearches(known, EACH, 20_261_126 + path.length).entries()) {
    const search = text.replace('?', sign);
    // A short link may lead on: each is opened where links are opened. So is one in so many of the others.
    if (index % FRESH === 0 || known === SHORT) {
      // A browser itself refuses some addresses, and a server one that is too long: those never reach the page.
      if (sign === '#') await page.goto('about:blank');
      const answer = await page.goto(address + search, { waitUntil: 'load' }).catch(() => undefined);
      if (answer === undefined || answer === null || answer.status() >= 400) await page.goto(address);
    } else {
      const took = await stepTo(page, search, soFar);
      most = Math.max(most, took);
      expect(took, search.slice(0, 300)).toBeLessThanOrEqual(TRIED.slowest);
    }
    // What comes only when it is wanted takes a moment.
    await expect.poll(there, { message: search.slice(0, 300), timeout: 10_000 }).toBeGreaterThan(3);
  }
  if (known !== SHORT) expect(most, 'a page that was stepped through works').toBeGreaterThan(0);
  expect(dialogs).toBe(0);
  expect((await problems()).filter((one) => !/ 4\d\d|^4\d\d:/.test(one))).toEqual([]);
  await close();
});

/**
 * Counts what a page works, milliseconds of the processor: how long that takes depends on what else the machine does. What is worked out beside
 * the page, in a worker, is not counted.
 */
async function worked(page: Page): Promise<() => Promise<number>> {
  const tools = await page.context().newCDPSession(page);
  await tools.send('Performance.enable', { timeDomain: 'threadTicks' });
  return async () => {
    const { metrics } = await tools.send('Performance.getMetrics');
    const { value } = metrics.find(({ name }) => name === 'TaskDuration') ?? { value: Number.NaN };
    return value * 1000;
  };
}

/** Goes there within the page and gives the milliseconds of work until what it then shows is drawn; of one that takes too long the least of some tries. */
async function stepTo(page: Page, search: string, soFar: () => Promise<number>): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let tries = 0; tries < 4 && (tries === 0 || least > TRIED.slowest); tries += 1) {
    if (tries > 0) await goWithin(page, '?');
    const before = await soFar();
    await goWithin(page, search);
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))));
    least = Math.min(least, (await soFar()) - before);
  }
  return least;
}

// Links that nobody wrote in good faith, on every kind of page that reads its address: no script of theirs runs, nothing breaks, and there is
// always something to read. `npm run hostile` tries ten thousand.
import { expect, test } from 'vitest';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { hostileSearches, type Known, TRIED } from '../hostile.ts';
import { ALL_FIELDS, textsFor } from '../wizards/told.ts';
import { goWithin, open } from './browser.ts';

const FIELDS: Known = Object.fromEntries(ALL_FIELDS.map((field) => [field.id, textsFor(field)]));
const CHECKS: Known = {
  ...Object.fromEntries(SIGN_MODEL.checks.map(({ id, options }) => [id, [...options, 'cannot']])),
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
  units: ['feet', 'metric'],
};
const ROUTES: readonly (readonly [path: string, known: Known])[] = [
  ['en/work-it-out/enough-current/', FIELDS],
  ['en/work-it-out/which-supply-where/', FIELDS],
  ['en/work-it-out/wire-it/', FIELDS],
  ['en/put-it-right/trips-at-gap/', CHECKS],
  ['en/put-it-right/one-locomotive-only/', CHECKS],
  ['en/learn/no-single-number/', FIGURE],
  ['en/learn/voltage-along-the-track/', FIGURE],
  ['en/learn/drive-across-the-gap/', FIGURE],
  ['en/search/', { q: ['gap', 'booster', 'wire'] }],
  ['en/fixes/more-feeders/', FIGURE],
];
const EACH = Math.max(4, Math.round(TRIED.links / ROUTES.length));
/** One in so many is opened as a link is, the others as steps on a page that is there. */
const FRESH = 8;

test.each(ROUTES)(`%s with ${EACH} of them`, { timeout: 60_000 + EACH * 1_000 }, async (path, known) => {
  const { page, problems, close } = await open(path, { width: 360 });
  const address = page.url();
  let dialogs = 0;
  page.on('dialog', (dialog) => {
    dialogs += 1;
    return dialog.dismiss();
  });
  const there = () => page.evaluate(() => (document.querySelector('main h1')?.textContent ?? '').trim().length);
  for (const [index, search] of hostileSearches(known, EACH, 20_261_126 + path.length).entries()) {
    if (index % FRESH === 0) {
      // A browser itself refuses some addresses, and a server one that is too long: those never reach the page.
      const answer = await page.goto(address + search, { waitUntil: 'load' }).catch(() => undefined);
      if (answer === undefined || answer === null || answer.status() >= 400) await page.goto(address);
    } else {
      await goWithin(page, search);
    }
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))));
    // What comes only when it is wanted takes a moment.
    await expect.poll(there, { message: search.slice(0, 300), timeout: 10_000 }).toBeGreaterThan(3);
  }
  expect(dialogs).toBe(0);
  expect((await problems()).filter((one) => !/ 4\d\d|^4\d\d:/.test(one))).toEqual([]);
  await close();
});

// What keeps a person safe is on the page before the first question: a danger answer needs no line. Whatever else cannot be
// loaded says so, and can be tried again.
import { describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import { COMPLAINT_IDS } from '../../src/wizards/put-it-right/model/index.ts';
import { dangersOf } from '../../src/wizards/safety/dangers.ts';
import { answered, open } from './browser.ts';
import {
  AGAIN,
  ASK_ME,
  answer,
  DANGERS,
  FIRST_DANGERS,
  fixOf,
  HOLES,
  MISSING,
  main,
  NOTHING_WARM,
  nothingIsWarm,
  type Page,
  question,
  showsDanger,
  TELLING,
} from './danger.ts';
import { accessibilityFaults, overflow } from './measure.ts';

test('there are danger answers before every other question, and what each leads to is written with steps and cautions', () => {
  expect(FIRST_DANGERS.length).toBeGreaterThan(1);
  for (const { fixClass } of DANGERS) {
    const { steps } = fixOf(fixClass);
    expect(steps.length).toBeGreaterThan(1);
    expect(steps.flatMap(({ acts }) => dangersOf(acts)).length).toBeGreaterThan(0);
  }
});

describe('with the line cut once the first question is there', () => {
  test.each(COMPLAINT_IDS)(
    'every danger answer of %s shows its first act, its steps and their cautions',
    async (id) => {
      const { page, context, close } = await open(question(id), { width: 360 });
      await context.setOffline(true);
      for (const danger of FIRST_DANGERS) {
        await answer(page, danger);
        await showsDanger(page, danger);
        await page.getByRole('button', { name: 'Back' }).first().click();
        await page.locator('.answers').waitFor();
      }
      await close();
    },
  );

  test('the danger page says what is missing beside it, stays when that is tried in vain, and goes on with the line', async () => {
    const { page, context, close } = await open(question('trips-at-gap'), { width: 360 });
    const [danger] = FIRST_DANGERS;
    if (danger === undefined) throw new Error('no danger answer');
    await context.setOffline(true);
    await answer(page, danger);
    for (let i = 0; i < 3; i++) {
      await page.getByRole('alert').getByText(MISSING).waitFor();
      await showsDanger(page, danger);
      await page.getByRole('button', { name: AGAIN }).click();
    }
    await page.getByRole('alert').getByText(MISSING).waitFor();
    expect(await overflow(page)).toEqual([]);
    expect(await accessibilityFaults(page)).toEqual([]);
    await context.setOffline(false);
    await page.getByRole('button', { name: AGAIN }).click();
    await page.getByRole('alert').waitFor({ state: 'detached' });
    await showsDanger(page, danger);
    await page.getByRole('button', { name: 'It is off and cold' }).click();
    await page.getByRole('heading', { level: 1, name: TELLING }).waitFor();
    await close();
  });
});

test('a link that tells of danger shows what to do before any other words have come', async () => {
  const { page, context, close } = await open(question('slow-far-away'));
  await context.route(/\.json$/, (route) => route.abort());
  for (const danger of DANGERS) {
    const before = danger.first ? '' : 'tools=none&';
    await page.goto(new URL(`?${before}${danger.check}=${danger.option}`, page.url()).href);
    await showsDanger(page, danger);
  }
  await close();
});

type Act = (page: Page) => Promise<unknown>;

/** Scripts and words that are asked for until what is wanted is there, without those of the page itself. */
async function asksFor(page: Page, act: Act, wanted: Act): Promise<string[]> {
  const asked = new Set<string>();
  const had = new Set(await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name)));
  page.on('request', (request) => asked.add(request.url()));
  await act(page);
  await wanted(page);
  return [...asked].filter((address) => /\.(js|json)$/.test(address) && !had.has(address));
}

/** Without `file` a sentence stands in place of what it is for; once it is back, "Try again" leads to what was wanted. */
async function isMissedAndFound(path: string, file: string, act: Act, wanted: Act): Promise<void> {
  const { page, context, close } = await open(path, { width: 360 });
  await context.route(file, (route) => route.fulfill({ status: 404, body: '' }));
  await act(page);
  await page.getByRole('alert').getByText(MISSING).first().waitFor({ timeout: 5_000 });
  expect(await main(page)).not.toMatch(HOLES);
  await context.unroute(file);
  await page.getByRole('button', { name: AGAIN }).first().click();
  await wanted(page);
  expect(await page.getByRole('alert').count()).toBe(0);
  expect(await main(page)).not.toMatch(HOLES);
  await close();
}

/** Without the worker `file` the page does its work: what was wanted stands there, and nothing is missed. */
async function isDoneWithout(path: string, file: string, act: Act, wanted: Act): Promise<void> {
  const { page, context, close } = await open(path, { width: 360 });
  let missed = 0;
  await context.route(file, (route) => {
    missed += 1;
    return route.fulfill({ status: 404, body: '' });
  });
  await act(page);
  await wanted(page);
  expect(missed).toBeGreaterThan(0);
  expect(await page.getByRole('alert').count()).toBe(0);
  expect(await main(page)).not.toMatch(HOLES);
  await close();
}

const isWorker = (file: string): boolean => /worker[^/]*\.js$/.test(file);

/** How many files come with `act`; each was missed and found again, but for a worker, which the page does without. */
async function eachIsMissedAndFound(path: string, act: Act, wanted: Act): Promise<number> {
  const { page, close } = await open(path);
  const files = await asksFor(page, act, wanted);
  await close();
  for (const file of files) await (isWorker(file) ? isDoneWithout : isMissedAndFound)(path, file, act, wanted);
  return files.length;
}

const follow =
  (search: string): Act =>
  (page) =>
    page.goto(new URL(search, page.url()).href);

/** A walk that has come to reversed rails. */
const PROPOSAL =
  '?when-it-happens=at-the-gap&analogue-one-at-the-gap=turned-round&meter-same-and-diagonal=same-rail-large&told=yes&tools=multimeter';

const WIZARDS = {
  'enough-current':
    '?accessories=0&aim=enough&coaches=0&draw=count&evening=unknown&modern=4&moving=3&older=2&own-use=bare&scale=h0&sound=0' +
    '&stored=0&supply-amps=2&supply-kind=dc&supply-plug=unknown&supply-volts=16&system=two-rail' +
    '&unit-input=dc&unit-input-volts=18&unit-limit=3&unit-plug=unknown&unit-rails=follows',
  'which-supply-where':
    '?booster-input=dc&booster-input-volts=19&booster-limit=3&booster-plug=centre-plus' +
    '&booster-rails=follows&busier=same&evening=2&modern=8&moving=5&older=0&one-amps=3&one-kind=dc&one-plug=centre-plus&one-volts=16' +
    '&scale=h0&sound=0&station-input=dc&station-input-volts=19&station-limit=3&station-plug=centre-plus&station-rails=follows&stored=0' +
    '&system=two-rail&two-amps=5&two-kind=dc&two-plug=centre-plus&two-volts=18',
  'wire-it':
    '?bus-length=12&bus-wire=0.75+mm2&feed-by=bus&scale=h0&supply-amps=5&supply-kind=dc&supply-plug=unknown&supply-volts=18&system=two-rail&track-length=12&wire-amps=1.5&wire-trip=3' +
    '&wire-volts=15',
};

describe('each file that comes after the first question is missed in a sentence and can be tried again', () => {
  test('after the first answer of a walk', async () => {
    const files = await eachIsMissedAndFound(
      question('trips-at-gap'),
      (page) => page.getByRole('button', { name: NOTHING_WARM }).first().click(),
      (page) => page.getByRole('heading', { level: 1, name: TELLING }).waitFor(),
    );
    expect(files).toBeGreaterThan(1);
  });

  test('on a slow line nothing is drawn before its words', async () => {
    const { page, context, close } = await open(question('trips-at-gap'), { width: 360 });
    await context.route(/\.json$/, async (route) => {
      await new Promise((done) => setTimeout(done, 700));
      await route.continue();
    });
    await page.evaluate(() => {
      const shown = { texts: [] as string[] };
      Object.assign(window, { shown });
      const note = () => shown.texts.push(document.querySelector('.walk')?.textContent ?? '');
      new MutationObserver(note).observe(document.body, { childList: true, subtree: true, characterData: true });
    });
    await page.getByRole('button', { name: NOTHING_WARM }).first().click();
    await page.getByText('One moment').waitFor();
    await page.getByRole('button', { name: ASK_ME }).click();
    await page.locator('.possible li').first().waitFor();
    const shown = z.object({ texts: z.array(z.string()) }).parse(await page.evaluate('window.shown')).texts;
    expect(shown.length).toBeGreaterThan(2);
    expect(shown.filter((text) => HOLES.test(text))).toEqual([]);
    await close();
  });

  test('what stays away lets the page be loaded anew, with the answers kept but that nothing is hot, for browsers that remember a failed script', async () => {
    const { page, context, close } = await open(`${question('trips-at-gap')}?which-places=every-gap`, { width: 360 });
    await context.route(/\/rest\.[^/]*\.js$/, (route) => route.fulfill({ status: 404, body: '' }));
    await page.getByRole('button', { name: NOTHING_WARM }).first().click();
    await page.getByRole('alert').getByText(MISSING).waitFor();
    const told = page.url();
    await page.evaluate(() => document.documentElement.setAttribute('data-before', ''));
    await page.getByRole('button', { name: AGAIN }).click();
    await page.locator('html:not([data-before])').waitFor();
    expect(page.url()).toBe(told);
    await context.unrouteAll();
    await nothingIsWarm(page);
    await page.getByText('You have told 2 things').waitFor();
    await close();
  });

  test('at the proposal of a walk', async () => {
    const files = await eachIsMissedAndFound(
      question('trips-at-gap'),
      async (page) => {
        await follow(PROPOSAL)(page);
        await page.getByRole('button', { name: NOTHING_WARM }).first().click();
      },
      (page) => page.getByRole('button', { name: 'I’ll do this now' }).waitFor(),
    );
    expect(files).toBeGreaterThan(2);
  });

  test.each(Object.entries(WIZARDS))('at the answer of %s', { timeout: 150_000 }, async (wizard, told) => {
    const files = await eachIsMissedAndFound(`en/work-it-out/${wizard}/`, follow(told), (page) => answered(page));
    expect(files).toBeGreaterThan(1);
  });

  test('for the picture of a link', async () => {
    const files = await eachIsMissedAndFound(
      `en/work-it-out/wire-it/${WIZARDS['wire-it']}`,
      (page) => page.getByRole('button', { name: 'Show as a code' }).click(),
      (page) => page.locator('svg.qr').waitFor(),
    );
    expect(files).toBeGreaterThan(0);
  });
});

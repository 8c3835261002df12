// Before a page is alive, and where it never comes alive: nobody in danger taps in vain, and nobody takes the first question for
// the answer of a link.
import { describe, expect, test } from 'vitest';
import { open, site } from './browser.ts';
import { answer, DANGERS, FIRST_DANGERS, fixOf, HOLES, main, type Page, question, showsDanger } from './danger.ts';
import { overflow } from './measure.ts';

/** A poor line: 400 kbit/s, an answer after 0.3 s. */
const SLOW = { offline: false, latency: 300, downloadThroughput: 50_000, uploadThroughput: 50_000 };

const NOT_ALIVE = 'A part of this page has not come';

/** Opens a page and does not wait for it: `done` ends it. */
async function enter(path: string, line?: typeof SLOW): Promise<{ page: Page; done: () => Promise<void> }> {
  const { address, browser } = await site();
  const context = await browser.newContext({ viewport: { width: 360, height: 740 }, serviceWorkers: 'block' });
  const page = await context.newPage();
  if (line !== undefined) {
    const session = await context.newCDPSession(page);
    await session.send('Network.enable');
    await session.send('Network.emulateNetworkConditions', line);
  }
  await page.goto(`${address}${path}`, { waitUntil: 'commit' });
  return { page, done: () => context.close() };
}

/** The page of a fix, read without any script: its name, and its first act straight below. */
async function showsFirstAct(page: Page, fixClass: string): Promise<void> {
  const { title, steps } = fixOf(fixClass);
  await page.waitForURL(new RegExp(`/fixes/${fixClass}/`), { timeout: 15_000 });
  expect(await page.locator('h1').innerText()).toBe(title);
  const inMain = await main(page);
  expect(inMain.startsWith(`${title} ${steps[0]?.do}`)).toBe(true);
}

describe('on a line of 400 kbit/s', () => {
  test.each(FIRST_DANGERS)(
    '$option can be told as soon as it is to be read, and leads to its first act',
    async (danger) => {
      const { page, done } = await enter(question('trips-at-gap'), SLOW);
      await answer(page, danger);
      const { title } = fixOf(danger.fixClass);
      await page.getByRole('heading', { level: 1, name: title }).waitFor({ timeout: 15_000 });
      // A page on such a line comes in pieces.
      await page.locator('.steps > li').first().waitFor({ timeout: 15_000 });
      expect(await main(page)).toContain(fixOf(danger.fixClass).steps[0]?.do);
      await done();
    },
  );

  test.each(DANGERS)('a link that tells of $option shows its steps, and no name in place of a word', async (danger) => {
    const before = danger.first ? '' : 'tools=none&';
    const { page, done } = await enter(`${question('slow-far-away')}?${before}${danger.check}=${danger.option}`, SLOW);
    await showsDanger(page, danger);
    expect(await page.getByText(NOT_ALIVE).isVisible()).toBe(false);
    await done();
  });
});

/** 24 V on a unit that permits 19 V: plugged in, it destroys the unit. */
const TOO_MANY_VOLTS =
  'en/work-it-out/enough-current/?modern=4&moving=3&older=2&scale=h0&supply-amps=2&supply-kind=dc&supply-plug=unknown&supply-volts=24' +
  '&system=two-rail';
const UNIT_OF_19 = '&unit-input=dc&unit-input-volts=19&unit-limit=3&unit-plug=unknown&unit-rails=follows';
const NO_PLUG = 'Plug nothing in and change no plug';

describe('on a line of 400 kbit/s, whoever has 24 V for a unit of 19 V', () => {
  /** Waits for the stop; what stood in the wizard until then, without what stands there always. */
  async function untilTheStop(page: Page): Promise<string> {
    await page.locator('.step-of, .wizard [role=status], h1.verdict').first().waitFor({ timeout: 30_000 });
    const before = await page.locator('.wizard').innerText();
    await page.locator('h1.verdict').waitFor({ timeout: 30_000 });
    return before;
  }

  async function showsTheStop(page: Page): Promise<void> {
    expect(await page.locator('.answer .tag').getAttribute('class')).toContain('stop');
    expect(await page.locator('.steps > li:visible').count()).toBeGreaterThan(2);
    expect(await page.locator('.steps .caution:visible').count()).toBeGreaterThan(0);
    expect(await page.locator('.histogram, .others, .trial').count()).toBe(0);
    expect(await main(page)).not.toMatch(HOLES);
  }

  test('is told by a link to plug nothing in until the answer is there, and then to stop', async () => {
    const { page, done } = await enter(`${TOO_MANY_VOLTS}${UNIT_OF_19}`, SLOW);
    const before = await untilTheStop(page);
    expect(before).toContain(NO_PLUG);
    await showsTheStop(page);
    await done();
  });

  test('is told the same while the last answer is given faster than the line can bring what it means', async () => {
    const { page, done } = await enter('en/', SLOW);
    const gate = Promise.withResolvers<void>();
    await page.context().route(/enough-current\.json$/, async (route) => {
      await gate.promise;
      await route.continue();
    });
    await page.goto(new URL(`/${TOO_MANY_VOLTS}`, page.url()).href, { waitUntil: 'commit' });
    await page.locator('#unit-limit').waitFor({ timeout: 30_000 });
    await page.locator('astro-island:not([ssr])').waitFor({ state: 'attached', timeout: 30_000 });
    await page.locator('#unit-limit').fill('3');
    await page.locator('input[name="unit-input"][value="dc"]').check();
    await page.locator('#unit-input-volts').fill('19');
    await page.locator('input[name="unit-plug"][value="unknown"]').check();
    await page.getByRole('button', { name: 'Continue' }).click();
    await page.getByText(NO_PLUG).waitFor();
    expect(await page.locator('h1.verdict, form').count()).toBe(0);
    gate.resolve();
    await untilTheStop(page);
    await showsTheStop(page);
    await done();
  });
});

/** Every script and list of words that a page asks for until it is still. */
async function filesOf(path: string): Promise<string[]> {
  const { page, close } = await open(path);
  const files = await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));
  await close();
  return files.filter((name) => /\.(js|json)$/.test(name));
}

describe('with any one of its files taken away', () => {
  test('the first question of a walk still leads every danger answer to its first act', async () => {
    const files = await filesOf(question('trips-at-gap'));
    expect(files.length).toBeGreaterThan(2);
    for (const file of files) {
      for (const danger of FIRST_DANGERS) {
        const { page, context, close } = await open('en/');
        await context.route(file, (route) => route.fulfill({ status: 404, body: '' }));
        await page.goto(new URL('put-it-right/trips-at-gap/', page.url()).href, { waitUntil: 'networkidle' });
        await answer(page, danger);
        await page.getByRole('heading', { level: 1, name: fixOf(danger.fixClass).title }).waitFor();
        expect(await main(page)).not.toMatch(HOLES);
        await close();
      }
    }
  });

  test('a question that does not come alive says so after a while, and offers the page again with the answers of its link', async () => {
    const { page, context, close } = await open('en/', { width: 360 });
    const told = 'en/work-it-out/wire-it/?bus-length=12&scale=h0&system=two-rail';
    await context.route(/\.js$/, (route) => route.abort());
    await page.goto(new URL(`/${told}`, page.url()).href);
    await page.getByRole('alert').getByText(NOT_ALIVE).waitFor({ timeout: 10_000 });
    expect(await overflow(page)).toEqual([]);
    await context.unrouteAll();
    await page.getByRole('link', { name: 'Load the page again' }).click();
    await page.locator('astro-island:not([ssr])').waitFor({ state: 'attached' });
    expect(page.url().endsWith(told)).toBe(true);
    expect(await page.getByText(NOT_ALIVE).isVisible()).toBe(false);
    await close();
  });

  test('a walk that does not come alive names the way to switch off', async () => {
    const { page, context, close } = await open('en/', { width: 360 });
    await context.route(/\.js$/, (route) => route.abort());
    await page.goto(new URL('put-it-right/slow-far-away/?danger-now=smoke-heat-or-damage', page.url()).href);
    await page.getByRole('alert').getByText(NOT_ALIVE).waitFor({ timeout: 10_000 });
    await page.getByRole('link', { name: /Switch off now/ }).click();
    await showsFirstAct(page, 'switch-off-now');
    await close();
  });
});

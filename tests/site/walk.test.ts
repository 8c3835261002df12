// "Put it right" in a real browser: from the complaint to the fix and its proof, the link, the way back, links of an older catalogue.
import { describe, expect, test } from 'vitest';
import { type Opened, open } from './browser.ts';
import { accessibilityFaults, overflow } from './measure.ts';

type Page = Opened['page'];

const heading = async (page: Page): Promise<string> => (await page.locator('main h1').textContent()) ?? '';

/** Taps the answer and waits until something else is asked. */
async function tap(page: Page, name: string | RegExp): Promise<void> {
  const before = page.url();
  await page.getByRole('button', { name }).first().click();
  await page.waitForURL((url) => url.href !== before);
}

const CANNOT = /I can’t check that/;

/** Answers whatever is asked, as the person would, until a fix is proposed. */
async function walk(page: Page, answers: ReadonlyMap<RegExp, RegExp>, most = 10): Promise<string[]> {
  const asked: string[] = [];
  for (let i = 0; i < most; i++) {
    await page.locator('main h1').waitFor();
    if ((await page.getByRole('button', { name: 'I’ll do this now' }).count()) > 0) return asked;
    const title = await heading(page);
    asked.push(title);
    const answer = [...answers].find(([question]) => question.test(title))?.[1] ?? CANNOT;
    const offered = (await page.getByRole('button', { name: answer }).count()) > 0;
    await tap(page, offered ? answer : CANNOT);
    // The address changes a moment before the screen: the old question must not be answered twice.
    await page.waitForFunction((old) => document.querySelector('main h1')?.textContent !== old, title);
  }
  return asked;
}

async function start(page: Page, complaint: RegExp, tools: readonly RegExp[]): Promise<void> {
  await page.getByRole('link', { name: 'Put it right' }).first().click();
  await page.locator('main').getByRole('link', { name: complaint }).first().click();
  await page.locator('.answers').waitFor();
  await tap(page, /^None of these/);
  await page.getByRole('heading', { name: 'What do you have at hand?' }).waitFor();
  for (const tool of tools) await page.getByLabel(tool).check();
  await tap(page, tools.length === 0 ? 'None of these' : 'Continue');
}

const HELPED = 'That fixed it';

describe('on a phone, a newcomer', () => {
  test('with "the second half is dead" gets to the missing track wires, mends them and proves it', async () => {
    const { page, problems, close } = await open('en/', { width: 360 });
    await start(page, /Trains stop when they enter the new part/, []);
    await walk(
      page,
      new Map([
        [/wholly into the new part/i, /No light, no movement/],
        [/lamp of the unit/i, /all is well/],
        [/Which places/i, /Anywhere in that part/],
        [/track wires|feed|wires/i, /There are none/],
      ]),
    );
    expect(await heading(page)).toMatch(/track wires|no power|feed/i);
    expect(await overflow(page)).toEqual([]);
    await tap(page, 'I’ll do this now');
    await page.locator('.steps > li').first().waitFor();
    expect(await page.locator('.steps > li').count()).toBeGreaterThan(2);
    expect(await page.locator('.steps .caution').count()).toBeGreaterThan(0);
    await tap(page, HELPED);
    await tap(page, 'Dead all the time');
    await tap(page, 'Both dark, or a faint glow');
    expect(await heading(page)).toBe('It runs again.');
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('with "it trips at the gap" gets to the reversed rails', async () => {
    const { page, problems, close } = await open('en/', { width: 360 });
    await start(page, /Everything shuts down when a train crosses/, [/Two equal filament lamps/]);
    await walk(
      page,
      new Map([
        [/Which places/i, /Every gap/],
        [/stand across/i, /switches off at once/],
        [/equal lamps/i, /Both shine clearly/],
        [/When does/i, /reaches the gap/],
      ]),
    );
    expect(await heading(page)).toBe('The two sides of the gap are reversed');
    expect(await overflow(page)).toEqual([]);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('with "it shuts down since I exchanged the supplies" gets to unlike volts on the rails', async () => {
    const { page, problems, close } = await open('en/', { width: 360 });
    await start(page, /since I exchanged the supplies/, [/multimeter/]);
    await walk(
      page,
      new Map([
        [/When does/i, /reaches the gap/],
        [/labels/i, /volts of the two supplies differ/],
        [/same meter/i, /differ by a volt or more/],
        [/put them back/i, /all is well again/],
        [/Which places/i, /Every gap/],
      ]),
    );
    expect(await heading(page)).toMatch(/volts|supplies/i);
    expect(await problems()).toEqual([]);
    await close();
  });
});

describe('a link into a walk', () => {
  const LINK =
    'en/put-it-right/trips-at-gap/?danger-now=none&stand-across=trips-at-once&tools=lamps.wire&which-places=every-gap';

  test('shows the same point to anyone, and what was seen can be changed', async () => {
    const { page, problems, close } = await open(LINK, { width: 768 });
    expect(await heading(page)).toBe('The two sides of the gap are reversed');
    await tap(page, /Which places/);
    expect(new URL(page.url()).searchParams.has('which-places')).toBe(false);
    await page.goBack();
    await page.getByRole('button', { name: 'I’ll do this now' }).waitFor();
    expect(await heading(page)).toBe('The two sides of the gap are reversed');
    expect(await problems()).toEqual([]);
    await close();
  });

  test('keeps what is known when another complaint is chosen', async () => {
    const { page, close } = await open(LINK);
    await page.getByText('Start from another complaint').click();
    await page.getByRole('link', { name: /jerk, a flicker/ }).click();
    await page.waitForURL(/jerks-at-gap/);
    expect(new URL(page.url()).searchParams.get('which-places')).toBe('every-gap');
    await close();
  });

  test('made with an older catalogue: what no longer exists is named and dropped, the rest is kept', async () => {
    const { page, problems, close } = await open(`${LINK}&is-it-plugged=yes&two-lamps=purple`);
    const alert = page.getByRole('alert');
    expect(await alert.innerText()).toContain('2 parts of this link');
    expect(await alert.innerText()).not.toMatch(/plugged|purple/);
    expect(await page.getByRole('button', { name: /Which places/ }).isVisible()).toBe(true);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('that says smoke ends every question at once', async () => {
    const { page, close } = await open('en/put-it-right/slow-far-away/?danger-now=smoke-heat-or-damage&tools=none');
    await page.locator('.steps > li').first().waitFor();
    expect(await page.locator('.steps > li').count()).toBeGreaterThan(1);
    await close();
  });
});

test('the live figure of a fix page is loaded only when it is opened, and then shows the fault', async () => {
  const { page, problems, close } = await open('en/fixes/reversed/', { width: 360 });
  // All but the switch of units, which stands at the foot of every page.
  const scripts = async (): Promise<readonly string[]> => {
    const names = await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));
    return names.filter((name) => name.endsWith('.js') && !/\/(?:Footer\.astro|units\.)[^/]*$/.test(name));
  };
  expect(await scripts()).toEqual([]);
  await page.locator('details.try > summary').click();
  await page.locator('astro-island:not([ssr])').waitFor({ state: 'attached' });
  expect((await scripts()).length).toBeGreaterThan(0);
  expect(await page.locator('details.try [aria-live], details.try [role=status]').count()).toBeGreaterThan(0);
  expect(await overflow(page)).toEqual([]);
  expect(await problems()).toEqual([]);
  await close();
});

test('without scripts a complaint shows every cause it knows, and where every check stands', async () => {
  const { page, close } = await open('en/put-it-right/trips-at-gap/', { javaScript: false });
  for (const summary of await page.locator('main details > summary').all()) await summary.click();
  expect(await page.locator('main table tbody tr').count()).toBeGreaterThan(40);
  expect(await page.locator('main table a[href*="/fixes/reversed/"]').first().isVisible()).toBe(true);
  await page.locator('main a[href$="/contributors/#checks"]').click();
  expect(await page.locator('#checks tbody tr').count()).toBeGreaterThan(60);
  await close();
});

// "Put it right" in a real browser: from the complaint to the fix and its proof, the link, the way back, links of an older catalogue.
import { describe, expect, test } from 'vitest';
import { OPENINGS, SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { type Opened, open } from './browser.ts';
import { linksIn, longOf } from './copied.ts';
import { ASK_ME, nothingIsWarm, TELLING } from './danger.ts';
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
/** Somebody who could check hardly anything: every question but two was passed over. */
const HANDED_ON = `en/put-it-right/trips-at-gap/?told=yes&tools=none&${SIGN_MODEL.checks
  .filter(({ first, tool }) => first !== true && tool === 'eyes')
  .map(({ id }) => `${id}=cannot`)
  .join('&')}`;

/** Answers whatever is asked, as the person would, until a fix is proposed. */
async function walk(page: Page, answers: ReadonlyMap<RegExp, RegExp>, most = 12) {
  for (let i = 0; i < most; i++) {
    await page.locator('.walk h1').waitFor();
    if ((await page.getByRole('button', { name: 'I’ll do this now' }).count()) > 0) return;
    const title = await heading(page);
    if (title === AT_HAND) {
      await page.getByLabel(/Two equal filament lamps/).check();
      await tap(page, 'Continue');
    } else {
      const answer = [...answers].find(([question]) => question.test(title))?.[1] ?? CANNOT;
      const offered = (await page.getByRole('button', { name: answer }).count()) > 0;
      await tap(page, offered ? answer : CANNOT);
    }
    // The address changes a moment before the screen: the old question must not be answered twice.
    await page.waitForFunction((old) => document.querySelector('.walk h1')?.textContent !== old, title);
  }
}

const AT_HAND = 'What do you have at hand?';
const HELPED = 'That fixed it';

/** From the home page to the screen on which everything can be told. */
async function start(page: Page, group: RegExp, complaint: RegExp): Promise<void> {
  await page.getByRole('link', { name: 'Put it right' }).first().click();
  await page.locator('main summary', { hasText: group }).click();
  await page.locator('main').getByRole('link', { name: complaint }).first().click();
  await page.locator('.answers').waitFor();
  await nothingIsWarm(page);
  await page.getByRole('heading', { name: TELLING }).waitFor();
}

describe('on a phone, a newcomer', () => {
  test('with "the second half is dead" gets to the missing track wires, mends them and proves it', async () => {
    const { page, problems, close } = await open('en/', { width: 360 });
    await start(page, /Trains stand still/, /Trains stop when they enter the new part/);
    await tap(page, ASK_ME);
    await walk(
      page,
      new Map([
        [/lights of the train/i, /went out/],
        [/changed last/i, /Track or wires/],
        [/wholly into the new part|vehicle/i, /dark|No light/i],
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
    // Volts are read there too: the leads first.
    expect(await page.locator('.walk').innerText()).toContain('No lead in the ampere socket.');
    await tap(page, 'Both dark or faint, next to no volts');
    expect(await heading(page)).toBe('It runs again.');
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('tells what is known by chips: the button counts them, and the walk begins with them', async () => {
    const { page, problems, close } = await open('en/put-it-right/trips-at-gap/', { width: 360, height: 740 });
    await nothingIsWarm(page);
    const act = page.getByRole('button', { name: ASK_ME });
    const box = await act.boundingBox();
    expect((box?.y ?? 999) + (box?.height ?? 0)).toBeLessThanOrEqual(740);
    await page.locator('summary', { hasText: /^When\s*$/ }).click();
    await page.getByLabel('At the instant a vehicle reaches the gap').check();
    await page.locator('summary', { hasText: 'Where, and with which' }).click();
    await page.locator('summary', { hasText: 'Which places' }).click();
    await page.getByLabel('Every gap of that part').check();
    expect(await overflow(page)).toEqual([]);
    expect(await accessibilityFaults(page)).toEqual([]);
    await tap(page, 'Go on with 2 facts');
    await page.getByText('You have told 3 things').waitFor();
    expect(new URL(page.url()).searchParams.get('which-places')).toBe('every-gap');
    await tap(page, 'I have seen something else');
    await page.locator('.chip-group > summary', { hasText: /^When/ }).click();
    expect(await page.getByLabel('At the instant a vehicle reaches the gap').isChecked()).toBe(true);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('writes of smoke: what to do comes before anything else, and what was written waits on this page and goes nowhere', async () => {
    const { page, close } = await open('en/put-it-right/nothing-works/', { width: 360 });
    await nothingIsWarm(page);
    const story = 'There was smoke from the booster, since then nothing works';
    await page.locator('textarea').fill(story);
    await page.locator('.heard .problem button').click();
    await page.locator('.walk.danger .steps > li').first().waitFor();
    await page.getByRole('button', { name: /It is off and cold/ }).click();
    await page.locator('textarea').waitFor();
    expect(await page.locator('textarea').inputValue()).toBe(story);
    expect(page.url()).not.toContain('nothing%20works');
    expect(await page.evaluate(() => JSON.stringify([localStorage, sessionStorage]))).not.toContain('since then');
    await close();
  });
});

const LINK =
  'en/put-it-right/trips-at-gap/?when-it-happens=at-the-gap&analogue-one-at-the-gap=turned-round&meter-same-and-diagonal=same-rail-large&told=yes&tools=multimeter';

describe('one step back', () => {
  test('asks the last answer again, and before the first one leads to where everything can be told', async () => {
    const { page, problems, close } = await open('en/put-it-right/loop-trips/', { width: 360 });
    await nothingIsWarm(page);
    await tap(page, ASK_ME);
    const asked = await heading(page);
    await page.locator('.answers button').first().click();
    await page.waitForFunction((old) => document.querySelector('.walk h1')?.textContent !== old, asked);
    await tap(page, /Back/);
    await page.waitForFunction((old) => document.querySelector('.walk h1')?.textContent === old, asked);
    await tap(page, /Back/);
    await page.getByRole('heading', { name: TELLING }).waitFor();
    expect(await problems()).toEqual([]);
    await close();
  });
});

describe('a link into a walk', () => {
  test('shows the same point to anyone once nothing is warm there, and what was seen can be changed', async () => {
    const { page, problems, close } = await open(LINK, { width: 768 });
    await nothingIsWarm(page);
    expect(await heading(page)).toBe('The two sides of the gap are reversed');
    await page.getByText('You have told 4 things').click();
    await tap(page, /Analogue locomotive/);
    expect(new URL(page.url()).searchParams.has('analogue-one-at-the-gap')).toBe(false);
    await page.goBack();
    await page.getByRole('button', { name: 'I’ll do this now' }).waitFor();
    expect(await heading(page)).toBe('The two sides of the gap are reversed');
    expect(await problems()).toEqual([]);
    await close();
  });

  test('of the first release, that says nothing is hot, asks for danger anew and keeps the rest', async () => {
    const { page, close } = await open(
      'en/put-it-right/trips-at-gap/?danger-now=none&stand-across=trips-at-once&tools=lamps.wire&which-places=every-gap',
    );
    expect(await heading(page)).toMatch(/hot, smelling or damaged/);
    await nothingIsWarm(page);
    expect(new URL(page.url()).searchParams.get('danger-now')).toBeNull();
    await page.getByText('You have told 3 things').waitFor();
    expect(await page.getByRole('alert').count()).toBe(0);
    await close();
  });

  test('keeps what is known when another complaint is chosen', async () => {
    const { page, close } = await open(`${LINK}&which-places=every-gap`);
    await nothingIsWarm(page);
    await page.getByText('Start from another complaint').click();
    await page.getByRole('link', { name: /jerk, a flicker/ }).click();
    await page.waitForURL(/jerks-at-gap/);
    expect(new URL(page.url()).searchParams.get('which-places')).toBe('every-gap');
    await close();
  });

  test('made with an older catalogue: what no longer exists is counted and dropped, the rest is kept', async () => {
    const { page, problems, close } = await open(`${LINK}&is-it-plugged=yes&two-lamps=purple`);
    await nothingIsWarm(page);
    const alert = page.getByRole('alert');
    expect(await alert.innerText()).toContain('2 parts of this link');
    expect(await alert.innerText()).not.toMatch(/plugged|purple/);
    await page.getByText('You have told 4 things').waitFor();
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

describe('what did not help', () => {
  test('is put back or left, and the card that is passed on says which', async () => {
    const { page, context, problems, close } = await open(LINK, { width: 360 });
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await nothingIsWarm(page);
    await tap(page, 'I’ll do this now');
    await tap(page, 'That did not help');
    expect(await heading(page)).toBe('Put it back as it was?');
    await tap(page, /I leave it as it is now/);
    await page.getByText('left as it was changed').first().waitFor();
    await page.getByRole('button', { name: 'Copy as text' }).first().click();
    await page.getByText('Copied').waitFor();
    const card = await page.evaluate(() => navigator.clipboard.readText());
    expect(card).toContain('Tried without success: The rails meet the wrong way round (left as it was changed).');
    expect(card).toMatch(/Told: .*When it happens: At the instant a vehicle reaches the gap/);
    expect(card).toMatch(/Still possible: .*about \d+/);
    expect(longOf(linksIn(card).at(-1) ?? '')).toContain('tried=reversed');
    expect(card.length).toBeLessThanOrEqual(1_250);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByText('Tried without success: The rails meet').last().isVisible()).toBe(true);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('and nothing more at hand: what is left stands side by side, with the one check that tells it apart', async () => {
    const { page, problems, close } = await open(HANDED_ON, { width: 360 });
    await nothingIsWarm(page);
    await page.getByText('to be shown to someone').waitFor();
    expect(await page.locator('.side-by-side > li').count()).toBeGreaterThan(1);
    // Nothing stands there twice, by two names and with two chances.
    expect(await page.locator('.possible').count()).toBe(0);
    const fold = page.locator('.tells-apart > summary');
    await fold.click();
    await page.locator('.tells-apart .answers button').first().waitFor();
    expect(await overflow(page)).toEqual([]);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.locator('.tells-apart .answers button').first().click();
    await page.getByText('You have told').waitFor();
    expect(await problems()).toEqual([]);
    await close();
  });
});

test('a trouble that comes and goes is waited for, and solved only when it has stayed away', async () => {
  const { page, close } = await open('en/put-it-right/now-and-then/?told=yes&tools=none&fixed=pickup', { width: 360 });
  await nothingIsWarm(page);
  expect(await heading(page)).toBe('Wait and see whether it stays away.');
  await tap(page, 'It has stayed away that long');
  expect(await heading(page)).toBe('It runs again.');
  await close();
});

test.each(['house-protection', 'tingle'])('below %s nothing leads back into questions', async (id) => {
  const { page, close } = await open(`en/fixes/${id}/`, { width: 360 });
  expect(await page.locator('.proof a').count()).toBe(0);
  await close();
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

test('without scripts a complaint shows every cause it mostly has, and the way to its fix', async () => {
  const { page, close } = await open('en/put-it-right/trips-at-gap/', { javaScript: false });
  for (const summary of await page.locator('main details > summary').all()) await summary.click();
  const shares = OPENINGS.find(({ id }) => id === 'trips-at-gap')?.shares ?? {};
  expect(await page.locator('main table tbody tr').count()).toBe(Object.keys(shares).length);
  expect(await page.locator('main table a[href*="/fixes/reversed/"]').first().isVisible()).toBe(true);
  await page.locator('main a[href$="/contributors/#checks"]').click();
  expect(await page.locator('#checks tbody tr').count()).toBeGreaterThan(60);
  await close();
});

// The site in a language that nobody speaks: npm test makes it from the English words, builds the site with it and looks here.
import { existsSync, globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type HTMLElement as Parsed, parse } from 'node-html-parser';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { answered, open } from '../site/browser.ts';
import { englishIn, MADE_UP, sentence } from './language.ts';
import { LACKING } from './site.ts';

const FOLDER = process.env['SITE_FOLDER'] ?? 'reports/made-up/dist';
const HOME = `${MADE_UP.id}/`;
const pagesOf = (language: string): string[] =>
  globSync('**/*.{html,json}', { cwd: join(FOLDER, language) })
    .map((file) => file.replaceAll('\\', '/'))
    .sort();
const PAGES = pagesOf(MADE_UP.id).filter((file) => file.endsWith('.html'));
/** English words that are no English: the language's own name, and what German numbers and lists are strung together with. */
const OF_OTHERS = new Set(['English', 'und']);
const englishOn = (said: string): string[] => [...new Set(englishIn(said))].filter((word) => !OF_OTHERS.has(word));
const read = (file: string): string => readFileSync(join(FOLDER, MADE_UP.id, file), 'utf8');

/** Attributes that are read by people, aloud or as they stand, or by the scripts that show them. */
const SAID_BY = [
  'aria-label',
  'title',
  'placeholder',
  'alt',
  'aria-valuetext',
  'data-label',
  'data-none',
  'data-found',
  'data-broken',
];

/** What is of another language or, as the name of a state of the program, of none. */
const NOT_ITS_OWN = '[lang="en"], [translate="no"]';

/** Everything that a page says in its own language: what is marked as English is left out, and so are the title and the lead of such a page. */
function saidOn(html: string): string {
  const root = parse(html);
  if (root.querySelector('main')?.getAttribute('lang') === 'en') root.querySelector('head')?.remove();
  // Charts and code are made of ids.
  for (const element of root.querySelectorAll(`script, style, pre, code, .flow, ${NOT_ITS_OWN}`)) element.remove();
  for (const element of root.querySelectorAll('noscript')) element.replaceWith(parse(element.text));
  const attributes = root
    .querySelectorAll('*')
    .flatMap((element) => SAID_BY.map((name) => element.getAttribute(name) ?? ''));
  const about = root.querySelector('meta[name="description"]')?.getAttribute('content') ?? '';
  return [root.querySelector('title')?.text ?? '', about, textOf(root.querySelector('body')), ...attributes].join('\n');
}

/** Texts of elements side by side do not run together. */
function textOf(element: Parsed | null): string {
  return element?.structuredText ?? '';
}

/** What is on the screen and what is read aloud instead, once a page has come to life. */
const saidNow = (page: Page): Promise<string> =>
  page.evaluate(
    ([names, apart]) => {
      const all = [...document.querySelectorAll<HTMLElement>('body *')].filter(
        (one) => one.closest(`${apart}, script, style, noscript`) === null,
      );
      const texts = all.flatMap((one) =>
        [...one.childNodes].filter((node) => node.nodeType === 3).map((node) => node.textContent ?? ''),
      );
      // An address on paper is no sentence.
      const sentences = texts.filter((text) => !text.startsWith(`${location.origin}/`));
      return [...sentences, ...all.flatMap((one) => names.map((name) => one.getAttribute(name) ?? ''))].join('\n');
    },
    [SAID_BY, NOT_ITS_OWN] as const,
  );

const widthOf = (page: Page): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth);

/** Nothing English, no key that shows itself, nothing wider than the screen. */
async function isRight(page: Page, where: string): Promise<void> {
  const said = await saidNow(page);
  expect(englishOn(said), where).toEqual([]);
  expect(said.match(/\[[a-z]+(?:-[a-z]+)+\]|\{(?!q|n\})[\w-]+[:}]/g) ?? [], where).toEqual([]);
  expect(await widthOf(page), where).toBeLessThanOrEqual(360);
}

describe('The made-up language', () => {
  test('is longer by two fifths, and accented', () => {
    const english = 'Two boosters with their own supplies never add up to one pool';
    const made = sentence(english);
    expect(made.length / english.length).toBeGreaterThan(1.35);
    expect(made.length / english.length).toBeLessThan(1.6);
    expect(sentence('{n} {n:train|trains}, {m:0.3}')).toBe('{n} {n:tráínöö|tráínsööö}, {m:0.3}');
  });

  test('is noticed where it was left out', () => {
    expect(englishIn(`${sentence('Put it right')}, or not yet: 3 mm² AWG`)).toEqual(['not', 'yet']);
  });
});

describe('Built with it, the site', () => {
  test('has each page and each file of words that there is in English', () => {
    expect(PAGES.length).toBeGreaterThan(120);
    expect(pagesOf(MADE_UP.id)).toEqual(pagesOf('en'));
  });

  test('keeps the English pages where they were', () => {
    for (const page of [
      'index',
      'work-it-out/wire-it/index',
      'put-it-right/trips-at-gap/index',
      'fixes/reversed/index',
    ]) {
      expect(existsSync(join(FOLDER, 'en', `${page}.html`)), page).toBe(true);
    }
  });

  test.each(PAGES)('says nothing in English on %s', (file) => {
    expect(englishOn(saidOn(read(file)))).toEqual([]);
  });

  test.each(PAGES)('tells of %s in which languages it is there', (file) => {
    const root = parse(read(file));
    const html = root.querySelector('html');
    expect([html?.getAttribute('lang'), html?.getAttribute('dir')]).toEqual([MADE_UP.id, MADE_UP.direction]);
    const path = file.replace(/index\.html$/, '');
    const told = root
      .querySelectorAll('link[rel=alternate]')
      .map((link) => [link.getAttribute('hreflang'), link.getAttribute('href')]);
    expect(told).toEqual([
      ['en', `/en/${path}`],
      [MADE_UP.id, `/${MADE_UP.id}/${path}`],
      ['x-default', `/en/${path}`],
    ]);
  });

  test.each([`fixes/${LACKING.fix}`, `learn/${LACKING.lesson}`])(
    'shows %s, which it lacks, in English and says so',
    (path) => {
      const root = parse(read(`${path}/index.html`));
      const main = root.querySelector('main');
      expect(main?.getAttribute('lang')).toBe('en');
      const notice = main?.querySelector('.not-translated');
      expect(notice?.getAttribute('lang')).toBe(MADE_UP.id);
      expect(notice?.text).toContain('English');
      const english = parse(readFileSync(join(FOLDER, 'en', path, 'index.html'), 'utf8')).querySelector('h1')?.text;
      expect(main?.querySelector('h1')?.text).toBe(english);
      expect(
        main
          ?.querySelectorAll('a')
          .map((link) => link.getAttribute('href'))
          .filter((href) => href?.startsWith('/en/')),
      ).toEqual([]);
    },
  );

  test('marks the one word of a list that it lacks', () => {
    const root = parse(read('glossary/index.html'));
    expect(root.querySelectorAll('li[lang=en] h2').map((term) => term.id)).toEqual([LACKING.term]);
    expect(root.querySelector('.not-translated')?.text).toContain('English');
    const english = parse(readFileSync(join(FOLDER, 'en/glossary/index.html'), 'utf8'));
    expect(english.querySelectorAll('.not-translated, li[lang]').length).toBe(0);
  });
});

/** Pages of each kind, at the width of a phone. */
const SAMPLE = [
  ...['', 'learn/', 'work-it-out/', 'put-it-right/', 'search/', 'glossary/', 'cautions/', 'sources/', 'privacy/'],
  ...[
    'fixes/reversed/',
    'fixes/larger-supply/',
    'fixes/breakers-and-sub-districts/',
    'fixes/read-both-labels/',
    'fixes/two-sources/',
  ],
  ...['put-it-right/trips-at-gap/', 'work-it-out/enough-current/'],
];

const LESSONS = globSync('learn/*/index.html', { cwd: join(FOLDER, MADE_UP.id) }).map((file) =>
  file.replaceAll('\\', '/').replace('index.html', ''),
);

/** What is told to each wizard: it is walked to its answer with these. */
const TOLD = {
  'enough-current':
    'accessories=0&aim=enough&coaches=0&draw=count&evening=2&modern=4&moving=3&older=2&own-use=bare&scale=h0&sound=0&stored=0' +
    '&supply-amps=2&supply-kind=dc&supply-plug=unknown&supply-volts=16&system=two-rail&unit-input=dc&unit-input-volts=18&unit-limit=3' +
    '&unit-plug=unknown&unit-rails=follows',
  'which-supply-where':
    'booster-input=dc&booster-input-volts=19&booster-limit=3&booster-plug=centre-plus&booster-rails=follows&busier=same&evening=2&modern=8' +
    '&moving=5&older=0&one-amps=3&one-kind=dc&one-plug=centre-plus&one-volts=16&scale=h0&sound=0&station-input=dc&station-input-volts=19' +
    '&station-limit=3&station-plug=centre-plus&station-rails=follows&stored=0&system=two-rail&two-amps=5&two-kind=dc&two-plug=centre-plus&two-volts=18',
  'wire-it':
    'bus-length=12&bus-wire=0.75+mm2&feed-by=bus&scale=h0&supply-amps=4&supply-kind=dc&supply-plug=centre-plus&supply-volts=16&system=two-rail' +
    '&track-length=12&wire-amps=1.5&wire-trip=3&wire-volts=15',
} as const;

/** Answers what the question on the screen asks, as far as something is told, and goes on. */
async function goOn(page: Page, told: URLSearchParams): Promise<void> {
  const before = await page.locator('h1').first().textContent();
  for (const field of await page.locator('.wizard form :is(input[type=radio], input[type=text])').all()) {
    const name = (await field.getAttribute('name')) ?? (await field.getAttribute('id')) ?? '';
    const value = told.get(name);
    if (value === null) continue;
    if ((await field.getAttribute('type')) !== 'radio') await field.fill(value);
    else if ((await field.getAttribute('value')) === value) await field.check();
  }
  await page.locator('.wizard form button[type=submit]').click();
  await page.waitForFunction((title) => document.querySelector('h1')?.textContent !== title, before);
}

/** The first answer to the question of danger; no link says it. */
async function nothingIsWarm(page: Page): Promise<void> {
  await page.locator('.answers button').first().click();
  await page.locator('.walk .acts').first().waitFor();
}

describe('In a browser', () => {
  test.each([...SAMPLE, ...LESSONS])('nothing of %s is wider than a phone or in English', async (path) => {
    const { page, problems, close } = await open(HOME + path, { width: 360 });
    for (const island of await page.locator('astro-island').all()) {
      if (await island.evaluate((one) => one.closest('details:not([open])') !== null)) continue;
      // What waits to be reached for stands as it was built.
      if ((await island.getAttribute('client')) === 'asked') continue;
      await island.evaluate((one) => one.firstElementChild?.scrollIntoView());
      await expect.poll(() => island.getAttribute('ssr'), { timeout: 10_000 }).toBeNull();
    }
    if (path !== `learn/${LACKING.lesson}/`) await isRight(page, path);
    expect(await problems()).toEqual([]);
    await close();
  });

  test.each(Object.entries(TOLD))('%s is asked and answered in it', async (wizard, told) => {
    const { page, problems, close } = await open(`${HOME}work-it-out/${wizard}/`, { width: 360 });
    const answers = new URLSearchParams(told);
    while (
      (await page.locator('.wizard form button[type=submit]').count()) > 0 &&
      (await page.locator('h1.verdict').count()) === 0
    ) {
      await isRight(page, `${wizard}: ${await page.locator('h1').first().textContent()}`);
      await goOn(page, answers);
    }
    await answered(page);
    for (const folded of await page.locator('details').all())
      await folded.evaluate((one) => one.setAttribute('open', ''));
    await isRight(page, wizard);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('a walk leads to its fix and its proof in it', async () => {
    const { page, problems, close } = await open(
      `${HOME}put-it-right/trips-at-gap/?when-it-happens=at-the-gap&analogue-one-at-the-gap=turned-round&meter-same-and-diagonal=same-rail-large&told=yes&tools=multimeter`,
      { width: 360 },
    );
    await nothingIsWarm(page);
    await answered(page);
    await isRight(page, 'the fix proposed');
    await page.locator('.walk .acts .button').first().click();
    await page.locator('.steps').waitFor();
    await isRight(page, 'the fix step by step');
    await page.locator('.walk .part > .acts .button').first().click();
    await page.locator('.answers').waitFor();
    await isRight(page, 'the last look');
    expect(await problems()).toEqual([]);
    await close();
  });

  test('a walk asks its questions in it', async () => {
    const { page, close } = await open(`${HOME}put-it-right/jerks-at-gap/?told=yes&tools=lamps.multimeter.wire`, {
      width: 360,
    });
    await nothingIsWarm(page);
    for (let asked = 0; asked < 4; asked += 1) {
      await page.locator('.answers').waitFor();
      await isRight(page, `question ${asked}`);
      const title = await page.locator('.walk h1').textContent();
      await page.locator('.answers button').last().click();
      await page.waitForFunction((old) => document.querySelector('.walk h1')?.textContent !== old, title);
    }
    await close();
  });

  test('the switch of languages keeps the answers and the spot', async () => {
    const { page, problems, close } = await open(`${HOME}work-it-out/wire-it/?${TOLD['wire-it']}`);
    await answered(page);
    const here = new URL(page.url());
    await page.evaluate(() => history.replaceState(null, '', `${location.pathname}${location.search}#main`));
    await page.locator('[data-languages] a[hreflang=en]').click();
    await page.getByText('With a bus that is fed from its middle it is good.').first().waitFor();
    const there = new URL(page.url());
    expect([there.pathname, there.search, there.hash]).toEqual(['/en/work-it-out/wire-it/', here.search, '#main']);
    expect(await page.locator('[data-languages] [aria-current]').textContent()).toBe('English');
    expect(await problems()).toEqual([]);
    await close();
  });

  test('numbers are written as its line says', async () => {
    const { page, close } = await open(`${HOME}work-it-out/wire-it/?${TOLD['wire-it']}`);
    await answered(page);
    expect(await page.locator('.wizard .lead').textContent()).toMatch(/\d,\d/);
    expect(await page.locator('.wizard .lead').textContent()).not.toMatch(/\d\.\d/);
    await close();
  });

  test('its search finds its own pages by its own words', async () => {
    const { page, problems, close } = await open(`${HOME}search/?q=${encodeURIComponent(sentence('booster'))}`);
    await page.locator('#results .list a').first().waitFor();
    const found = await page
      .locator('#results .list a')
      .evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''));
    expect(found.filter((href) => !href.startsWith(`/${HOME}`))).toEqual([]);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('the entry leads on to the language of the browser, and offers each by its own words', async () => {
    const { page, close } = await open('');
    await page.waitForURL(/\/en\/$/);
    await close();
    const still = await open('', { javaScript: false });
    expect(await still.page.locator('[data-choose] a').allInnerTexts()).toEqual([
      'Read in English',
      sentence('Read in English'),
    ]);
    await still.close();
  });
});

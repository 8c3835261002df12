// The search finds the right page from the words people use. The phrases were written by people who had not seen the site, and collected
// from what is asked and reported; a help-desk reader said which pages are right for each. Those set aside were not read before the search was done.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Page, Searcher } from '../../src/components/search/index.ts';
import { CONFUSIONS } from '../content/confusions.ts';
import { open } from './browser.ts';

interface Phrase {
  readonly q: string;
  readonly lang: string;
  /** Pages that are a right first hit. */
  readonly right: readonly string[];
  readonly aside: boolean;
  /** Of the second lot set aside, which nobody read before the search was done. */
  readonly second?: boolean;
}

const SITE = process.env.SITE_FOLDER ?? 'dist';
const PHRASES: readonly Phrase[] = JSON.parse(
  readFileSync(new URL('search-phrases.json', import.meta.url), 'utf8'),
).phrases;
const PACKED = readFileSync(`${SITE}/en/search.json`, 'utf8');
const PAGES: readonly Page[] = JSON.parse(PACKED).pages;
const searcher = new Searcher(PACKED);

/** At which place a right page stands, from 0; after all others where it is not found. */
function placeOf({ q, right }: Phrase): number {
  const at = searcher.find(q).findIndex(({ path }) => right.includes(path));
  return at < 0 ? Number.POSITIVE_INFINITY : at;
}

const share = (phrases: readonly Phrase[], among: number): number =>
  phrases.filter((phrase) => placeOf(phrase) < among).length / phrases.length;

describe('What people type', () => {
  const worked = PHRASES.filter(({ aside }) => !aside);

  test('is said in four languages', () => {
    const of = (lang: string): number => PHRASES.filter((phrase) => phrase.lang === lang).length;
    expect(of('en')).toBeGreaterThanOrEqual(120);
    for (const lang of ['de', 'fr', 'nl']) expect(of(lang), lang).toBeGreaterThanOrEqual(20);
  });

  test('leads to pages that there are', () => {
    const paths = new Set(PAGES.map(({ path }) => path));
    for (const { q, right } of PHRASES) {
      expect(right, q).not.toEqual([]);
      expect(
        right.filter((path) => !paths.has(path)),
        q,
      ).toEqual([]);
    }
  });

  test('finds a right page first in 80 of 100, and among the first three in 97 of 100', () => {
    expect(share(worked, 1)).toBeGreaterThanOrEqual(0.8);
    expect(share(worked, 3)).toBeGreaterThanOrEqual(0.97);
  });
});

test.each([
  ['what is cv29', 'glossary/#configuration-variable'],
  ['CV 29', 'glossary/#configuration-variable'],
  ['what is common rail', 'glossary/#common-rail'],
  ['what is phase', 'glossary/#phase'],
  ['was ist ein booster', 'glossary/#booster'],
  ['what does trip current mean', 'glossary/#trip-current'],
  ['what is pom', 'glossary/#programming-track'],
])('Who asks “%s” finds the word explained first', (asked, term) => {
  expect(searcher.find(asked)[0]?.path).toBe(term);
});

describe('The pages of a layout and its plan', () => {
  test.each([
    [
      'work-it-out/share-out/',
      'wo soll ich das Oval trennen',
      'où couper les rails de mon ovale',
      'waar moet mijn ovaal doorgeknipt',
    ],
    ['layout-sheet/', 'meinen Gleisplan eintragen', 'décrire mon réseau tronçon par tronçon', 'sporenplan invullen'],
    ['plan/', 'Verkabelungsplan drucken', 'imprimer mon plan de câblage', 'bedradingsplan afdrukken'],
    [
      'work-it-out/first-power-up/',
      'erstes Einschalten nach dem Umbau',
      'première mise sous tension',
      'voor het eerst inschakelen',
    ],
  ])('%s is among the first three in German, French and Dutch', (path, ...phrases) => {
    for (const phrase of phrases) {
      const found = searcher.find(phrase).map((page) => page.path);
      expect(found.slice(0, 3), phrase).toContain(path);
    }
  });
});

describe('What beginners believe', () => {
  test('is 18 things, each in words of their own', () => {
    expect(new Set(CONFUSIONS.map(({ says }) => says)).size).toBe(18);
  });

  test.each(CONFUSIONS)('“$says” has the lesson that clears it up among the first four', ({ says, lesson }) => {
    const found = searcher.find(says).map(({ path }) => path);
    expect(found.slice(0, 4)).toContain(`learn/${lesson}/`);
  });
});

describe('The search', () => {
  test('never puts a verdict before the wizard that would say so', () => {
    for (const asked of ['your power is enough', 'power is enough', 'wiring is good', 'supplies either way round']) {
      const found = searcher.find(asked);
      for (const [at, { verdictOf }] of found.entries()) {
        if (verdictOf === undefined) continue;
        expect(
          found.slice(0, at).map(({ path }) => path),
          asked,
        ).toContain(verdictOf);
      }
      expect(
        found.some(({ verdictOf }) => verdictOf !== undefined),
        asked,
      ).toBe(true);
    }
  });

  test('finds each page first by its own title', () => {
    expect(PAGES.length).toBeGreaterThan(300);
    for (const { title, verdictOf } of PAGES) {
      const [first, second] = searcher.find(title);
      expect(verdictOf === undefined ? first?.title : second?.title, title).toBe(title);
    }
  });

  test.each([
    ['is my power enough', 'work-it-out/enough-current/', 'wizard'],
    ['fishplate', 'glossary/#rail-joiner', 'term'],
    ['NEM 609', 'sources/#nem-609', 'source'],
  ])('finds by “%s” what it is the name of, and says what that is', (asked, path, kind) => {
    expect(searcher.find(asked)[0]).toMatchObject({ path, kind });
  });

  test.each(['boster', 'kehrschleiffe', 'voltge drop', 'aiguilage', 'kortsluitting'])(
    'finds something by the misspelt “%s”',
    (asked) => {
      expect(searcher.find(asked)).not.toEqual([]);
    },
  );

  test.each(['house current', 'protective earth', 'crosstie', 'set of points', 'HO scale', '00 gauge'])(
    'finds by “%s” the word that is said elsewhere',
    (asked) => {
      expect(
        searcher
          .find(asked)
          .slice(0, 3)
          .map(({ kind }) => kind),
      ).toContain('term');
    },
  );

  test.each(['my rails bite', 'choc électrique', 'meterkast', 'FI fliegt', 'it smells burnt'])(
    'leads from “%s” to unplugging at once',
    (asked) => {
      const urgent = ['fixes/tingle/', 'fixes/house-protection/', 'fixes/switch-off-now/'];
      expect(urgent).toContain(searcher.find(asked)[0]?.path);
    },
  );

  test('finds nothing for what is nowhere, and for nothing', () => {
    expect(searcher.find('zzqxv')).toEqual([]);
    expect(searcher.find(' … ')).toEqual([]);
  });
});

describe('The search page', () => {
  test('shows what was found and what each hit is, with the words in the address', async () => {
    const { page, problems, close } = await open('en/search/');
    await page.locator('main .ask input').fill('Everything shuts down when a train crosses into the new part');
    const first = page.locator('#results .list li').first();
    await first.getByText('Put it right').waitFor();
    expect(await first.locator('a').getAttribute('href')).toContain('/en/put-it-right/trips-at-gap/');
    expect(new URL(page.url()).searchParams.get('q')).toBe(
      'Everything shuts down when a train crosses into the new part',
    );
    expect(await page.locator('#otherwise').isVisible()).toBe(false);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('says so when nothing is found, and offers where to begin', async () => {
    const { page, close } = await open('en/search/?q=zzqxv');
    await page.getByText(/Nothing found/).waitFor();
    await page.locator('#otherwise').getByRole('link', { name: 'Is my power enough?' }).waitFor();
    await close();
  });

  test('that could not be loaded says so, and works with the next try once it can be had', async () => {
    const { page, context, close } = await open('en/search/');
    await context.route(/search\.json$/, (route) => route.fulfill({ status: 404, body: '' }));
    await page.locator('main .ask input').fill('underpowered');
    await page.getByText('The search could not be loaded').waitFor();
    await context.unrouteAll();
    await page.locator('main .ask button').click();
    await page.locator('#results .list a').first().waitFor();
    await close();
  });
});

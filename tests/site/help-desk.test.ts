// The index for whoever helps others: nothing of the site is missing from it, and every line can be found and passed on.
import { readFileSync } from 'node:fs';
import { parse } from 'node-html-parser';
import { describe, expect, test } from 'vitest';
import { questionsOf, WIZARD_IDS } from '../../src/wizards/index.ts';
import { COMPLAINT_IDS, ENDS_AT_ONCE, SIGN_MODEL } from '../../src/wizards/put-it-right/index.ts';
import { cautionsOfCheck, wordsOf } from '../content/folder.ts';
import { open } from './browser.ts';
import { accessibilityFaults, overflow } from './measure.ts';

const PAGE = 'en/help-desk/';
const FOLDER = process.env.SITE_FOLDER ?? 'dist';
const page = parse(readFileSync(`${FOLDER}/${PAGE}index.html`, 'utf8'));
const rows = page.querySelectorAll('.rows > li');
const told = (text: string): string => text.replace(/\s+/g, ' ').trim();
const lines = rows.map((row) => ({
  link: row.querySelector('a')?.getAttribute('href') ?? '',
  title: told(row.querySelector('a')?.textContent ?? ''),
  text: told(row.textContent),
}));
/** Questions that several wizards ask are asked once here. */
const PLANNED = [...new Set(WIZARD_IDS.flatMap((wizard) => questionsOf(wizard)))];
const leadsTo = (path: string): boolean => lines.some(({ link }) => link.endsWith(path));

describe('The index for helpers has', () => {
  test('every trouble that people come with, under its own title', () => {
    const atOnce: Readonly<Record<string, string>> = ENDS_AT_ONCE;
    const lacking = COMPLAINT_IDS.filter((id) => {
      const fix = atOnce[id];
      return !leadsTo(fix === undefined ? `/put-it-right/${id}/` : `/fixes/${fix}/`);
    });
    expect(lacking).toEqual([]);
    const titles = wordsOf('en', 'complaints').map(({ data }) => String(data['title']));
    expect(titles.filter((title) => !lines.some((line) => line.title === title))).toEqual([]);
  });

  test('every wizard with its questions, every check, every fix and every lesson', () => {
    const paths = [
      ...WIZARD_IDS.map((id) => `/work-it-out/${id}/`),
      ...SIGN_MODEL.checks.map(({ id }) => `/help-desk/questions/#check-${id}`),
      ...PLANNED.map((id) => `/help-desk/questions/#question-${id}`),
      ...wordsOf('en', 'fixes').map(({ id }) => `/fixes/${id}/`),
      ...wordsOf('en', 'lessons').map(({ id }) => `/learn/${id}/`),
    ];
    expect(paths.filter((path) => !leadsTo(path))).toEqual([]);
  });

  test('every cause by its name, at the fix that mends it', () => {
    const [causes] = wordsOf('en', 'words').filter(({ id }) => id === 'causes');
    const lacking = SIGN_MODEL.causes.filter(({ id, fixClass }) => {
      const name = told(String(causes?.data[`fault-${id}`]));
      return !lines.some(({ link, text }) => link.endsWith(`/fixes/${fixClass}/`) && text.includes(name));
    });
    expect(lacking.map(({ id }) => id)).toEqual([]);
  });
});

describe('A question of the index', () => {
  const asked = lines.filter(({ link }) => link.includes('/help-desk/questions/#'));

  test('stands there once, and its link opens that question in full: its answers, and every caution of how it is checked', () => {
    expect(asked).toHaveLength(PLANNED.length + SIGN_MODEL.checks.length);
    expect(new Set(asked.map(({ link }) => link)).size).toBe(asked.length);
    const inFull = parse(readFileSync(`${FOLDER}/en/help-desk/questions/index.html`, 'utf8'));
    for (const { link, title } of asked) {
      const question = inFull.getElementById(link.split('#')[1] ?? '');
      expect(told(question?.querySelector('h4')?.textContent ?? link)).toBe(title);
    }
    for (const { id, options } of SIGN_MODEL.checks) {
      const question = inFull.getElementById(`check-${id}`);
      const [words] = wordsOf('en', 'checks').filter((check) => check.id === id);
      expect(words && question?.querySelectorAll('.caution').length).toBe(words && cautionsOfCheck(words).length);
      expect(question?.querySelectorAll('ul:not(.needs) > li')).toHaveLength(options.length);
    }
  });

  test('asked by several wizards names them all', () => {
    const [scale] = asked.filter(({ link }) => link.endsWith('#question-scale'));
    expect(scale?.text.match(/Asked by: .*;.*;/)).not.toBeNull();
  });
});

test('A helper types words, is told how many lines have them, and copies the link of one; the address keeps the words', async () => {
  const opened = await open(PAGE, { width: 360 });
  const { page, context, problems, close } = opened;
  expect(await overflow(page)).toEqual([]);
  await page.getByLabel('Show only lines with these words').fill('tripping gap');
  await page.getByText(/^\d+ lines? with “tripping gap”$/).waitFor();
  const shown = await page.locator('.rows > li:visible').allTextContents();
  expect(shown.length).toBeGreaterThan(0);
  expect(shown.filter((line) => !(/\btrip/i.test(line) && /\bgap/i.test(line)))).toEqual([]);
  expect(new URL(page.url()).searchParams.get('q')).toBe('tripping gap');
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const first = page.locator('.rows > li:visible').first();
  await first.getByRole('button', { name: /^Copy link: / }).press('Enter');
  await page.getByText(/^The link to “.+” is copied\.$/).waitFor();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  expect(copied).toBe(await first.locator('a').evaluate((link: HTMLAnchorElement) => link.href));
  await page.getByLabel('Show only lines with these words').fill('zeppelin');
  await page.getByText(/^No line has all of “zeppelin”/).waitFor();
  expect(await page.locator('.rows > li:visible').count()).toBe(0);
  await page.goto(`${page.url().split('?')[0]}?q=wheel`, { waitUntil: 'networkidle' });
  expect(await page.getByLabel('Show only lines with these words').inputValue()).toBe('wheel');
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await problems()).toEqual([]);
  await close();
});

test('Without JavaScript the whole list is there, with ways to its parts, no field and no button', async () => {
  const { page, close } = await open(PAGE, { width: 360, javaScript: false });
  expect(await page.locator('.rows > li:visible').count()).toBe(rows.length);
  expect(await page.locator('main :is(input, button):visible').count()).toBe(0);
  expect(await page.locator('main nav a:visible').count()).toBe(5);
  await close();
});

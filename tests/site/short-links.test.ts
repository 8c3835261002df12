// A short link is copied, opened by somebody else, and stands there as the long one; going back leads to where it was found. One that is damaged
// says so in a sentence and keeps what is good.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { answered, open, site } from './browser.ts';
import { copiedBy, found, linksIn, longOf } from './copied.ts';
import { nothingIsWarm } from './danger.ts';

const MOST = 120;
const { version }: { version: string } = JSON.parse(readFileSync('package.json', 'utf8'));

const ENOUGH =
  'en/work-it-out/enough-current/?accessories=0&coaches=0&evening=unknown&modern=4&moving=3&older=2&own-use=bare&scale=h0&sound=0&stored=0' +
  '&supply-amps=2&supply-kind=dc&supply-plug=unknown&supply-volts=16&system=two-rail&unit-input=dc&unit-input-volts=18&unit-limit=3' +
  '&unit-plug=unknown&unit-rails=follows';
const WIRE =
  'en/work-it-out/wire-it/?bus-length=12&bus-wire=0.75&feed-by=bus&scale=h0&supply-amps=4&supply-kind=dc&supply-plug=unknown&supply-volts=15' +
  '&system=two-rail&track-length=12&wire-amps=1.5&wire-trip=3&wire-volts=15';
const WALK =
  'en/put-it-right/trips-at-gap/?when-it-happens=at-the-gap&analogue-one-at-the-gap=turned-round&meter-same-and-diagonal=same-rail-large&told=yes&tools=multimeter';

/** As if the site stood there. */
const asOnExample = (link: string, address: string): string => link.replace(address, 'https://example.org/');

describe('The short link of an answer', () => {
  test.each([
    ['is my power enough', ENOUGH],
    ['how thick must the wire be', WIRE],
  ])(
    'to “%s” has at most 120 letters, and opens as the long one, with a history in which it never stood',
    async (_, path) => {
      const { address } = await site();
      const opened = await open(path, { width: 360 });
      await found(opened.page);
      const long = opened.page.url();
      const verdict = await opened.page.locator('h1.verdict').innerText();
      const short = await copiedBy(opened, 'Copy the link');
      expect(asOnExample(short, address).length).toBeLessThanOrEqual(MOST);
      expect(longOf(short)).toBe(long);
      await opened.close();

      const { page, problems, close } = await open('en/', { width: 360 });
      await page.goto(short);
      await page.waitForURL(long);
      expect(await page.locator('h1.verdict').innerText()).toBe(verdict);
      await page.goBack();
      expect(page.url()).toBe(`${address}en/`);
      await page.goForward();
      await answered(page);
      expect(page.url()).toBe(long);
      expect(await problems()).toEqual([]);
      await close();
    },
  );

  test('leads to one of its steps where that stands behind it', async () => {
    const whole = await open(ENOUGH);
    await found(whole.page);
    const link = `${await copiedBy(whole, 'Copy the link')}#step-3`;
    await whole.page.goto(link);
    await whole.page.waitForURL(/work-it-out\/enough-current\/\?.*#step-3$/);
    await whole.page.locator('#step-3').waitFor();
    expect(await whole.page.locator('.steps > li:visible').count()).toBe(1);
    await whole.close();
  });

  test('says what an earlier release said, as the long one does', async () => {
    const opened = await open(WIRE);
    await found(opened.page);
    const short = longOf(await copiedBy(opened, 'Copy the link')).replace(/made=[^&]+/, 'made=0.0.1-booster-near-load');
    await opened.page.goto(short);
    await opened.page.locator('.made-then').waitFor();
    expect(await opened.page.locator('.made-then').innerText()).toMatch(
      /made with an earlier release, which said: “.+”/,
    );
    await opened.close();
  });

  test('stands at the end of what is copied as text, and in the Markdown', async () => {
    const opened = await open(WIRE);
    await found(opened.page);
    const long = opened.page.url();
    const text = await copiedBy(opened, 'Copy as text');
    expect(longOf(linksIn(text).at(-1) ?? '')).toBe(long);
    const markdown = await copiedBy(opened, 'Copy as Markdown');
    expect(longOf(linksIn(markdown).at(-1) ?? '')).toBe(long);
    expect(await copiedBy(opened, 'Copy the long link')).toBe(long);
    const verdict = await opened.page.locator('h1.verdict').innerText();
    expect(markdown.split('\n')[0]).toMatch(/^## /);
    expect(markdown.split('\n')[0]).toContain(verdict);
    const steps = await opened.page.locator('.steps > li').count();
    expect(steps).toBeGreaterThan(2);
    expect(markdown.match(/^\d+\. /gm)?.length).toBe(steps);
    expect(markdown).toContain('### How you know it worked');
    expect(markdown.match(/^ {3}- \*\*/gm)?.length).toBeGreaterThan(1);
    // What it says is what the plain text says.
    const said = (whole: string): string => whole.replace(/https?:\S+|[^\p{L}\d]/gu, '');
    const lead = await opened.page.locator('.lead').first().innerText();
    expect(said(markdown)).toContain(said(lead));
    await opened.close();
  });
});

describe('The short link of a walk', () => {
  test('opens it where it stood, and never says for its reader that nothing is hot', async () => {
    const { address } = await site();
    const opened = await open(WALK, { width: 360 });
    await nothingIsWarm(opened.page);
    await answered(opened.page);
    await found(opened.page);
    const short = await copiedBy(opened, 'Copy the link');
    expect(asOnExample(short, address).length).toBeLessThanOrEqual(MOST);
    const long = longOf(short);
    expect(long).toBe(opened.page.url());
    expect(long).toContain(`made=${version}-reversed`);
    expect(long).not.toContain('danger-now');
    await opened.close();

    const { page, problems, close } = await open(short.slice(address.length), { width: 360 });
    await page.waitForURL(/put-it-right\/trips-at-gap/);
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await page.locator('h1.verdict').count()).toBe(0);
    await nothingIsWarm(page);
    await answered(page);
    expect(await page.getByRole('alert').count()).toBe(0);
    expect(await problems()).toEqual([]);
    await close();
  });
});

describe('A damaged short link', () => {
  const shortOf = async (path: string): Promise<string> => {
    const opened = await open(path);
    await found(opened.page);
    const short = await copiedBy(opened, 'Copy the link');
    await opened.close();
    return short;
  };

  test('says from which letter on, how much is kept, and leads there when that is wanted', async () => {
    const { address } = await site();
    const short = await shortOf(ENOUGH);
    const cut = short.slice(0, -14);
    const { page, problems, close } = await open(cut.slice(address.length), { width: 360 });
    const said = await page.locator('#short-link [role=status]').innerText();
    expect(said).toMatch(/damaged from its letter \d+ on \(of \d+\): of 21 things that were said, \d+ can be read/);
    expect(page.url()).toBe(cut);
    await page.getByRole('link', { name: 'Go on with what is kept' }).click();
    await page.waitForURL(/enough-current\/\?/);
    await page.locator('form, h1.verdict').first().waitFor();
    expect(new URL(page.url()).searchParams.get('modern')).toBe('4');
    expect(await problems()).toEqual([]);
    await close();
  });

  test.each([
    ['?1AbCdEfGhIjKlMnOpQrSt', /damaged from its letter 2 on .* not even the page/],
    ['?2AbCdEf', /later release/],
    ['?<script>', /No short link is given/],
    ['', /No short link is given/],
  ])('%s is told as what it is', async (search, sentence) => {
    const { page, problems, close } = await open(`en/a/${search}`, { width: 360 });
    expect(await page.locator('#short-link [role=status]').innerText()).toMatch(sentence);
    expect(await page.getByRole('link', { name: 'Go on with what is kept' }).count()).toBe(0);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('and without script the page says what it needs', async () => {
    const { page, close } = await open('en/a/?1AbC', { javaScript: false });
    expect(await page.locator('main').innerText()).toMatch(/needs JavaScript/);
    await close();
  });
});

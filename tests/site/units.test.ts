// Feet and gauges, metres and square millimetres: by what was typed, by the switch, by the link; and what a device keeps of it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { answered, type Opened, open, pages } from './browser.ts';
import { nothingIsWarm } from './danger.ts';

type Page = Opened['page'];

const WIRE = 'en/work-it-out/wire-it/';
const REST =
  'bus-shape=end&feed-by=bus&feeder-count=4&feeder-length=unknown&feeder-wire=unknown&joints=fed' +
  '&rail-kind=code-83&scale=h0&supply-amps=5&supply-kind=dc&supply-plug=unknown&supply-volts=18&system=two-rail&wire-amps=3&wire-trip=3&wire-volts=15';
const IN_FEET = `${WIRE}?bus-length=40+ft&bus-wire=18+AWG&track-length=40+ft&${REST}`;
const IN_METRES = `${WIRE}?bus-length=12+m&bus-wire=0.75+mm2&track-length=12+m&${REST}`;
const BARE = `${WIRE}?bus-length=12&bus-wire=0.75&track-length=12&${REST}`;

const shown = async (page: Page): Promise<string> => (await page.locator('main').innerText()).replaceAll('\u00a0', ' ');
const kept = (page: Page): Promise<string | null> => page.evaluate(() => localStorage.getItem('both-rails-units'));
const chooseFeet = (page: Page): Promise<void> => page.getByLabel('feet and AWG').check();

/** Lengths and wires of one system in a text. */
const METRIC = /\d (?:m|cm|mm|mm²)(?![a-z²])|mohm\/m\b/g;
const FEET = /\d (?:ft|in)\b(?! all)|AWG \d|mohm\/ft\b/g;

describe('an answer in the units of what was typed', () => {
  test('feet and AWG come back as feet and AWG: the verdict, the figures, what to buy, what is known', async () => {
    const { page, problems, close } = await open(IN_FEET);
    await answered(page);
    const text = await shown(page);
    expect(text).toContain('40 ft');
    expect(text).toContain('AWG 18');
    expect(text).toMatch(/a bus of AWG (?:16|14|12|10)/);
    expect(text.match(METRIC)).toBeNull();
    expect(await kept(page)).toBeNull();
    expect(new URL(page.url()).search).not.toContain('units=');
    expect(await problems()).toEqual([]);
    await close();
  });

  test('metres and mm² come back so, and a bare number says what it was taken as', async () => {
    const { page, close } = await open(IN_METRES);
    await answered(page);
    expect((await shown(page)).match(FEET)).toBeNull();
    expect(await shown(page)).not.toContain('taken as');
    await close();
    const bare = await open(BARE);
    await answered(bare.page);
    const known = await bare.page.locator('.known').innerText();
    expect(known.match(/taken as metres/g)).toHaveLength(2);
    expect(known.match(/taken as mm²/g)).toHaveLength(1);
    // What was assumed was not typed, and says nothing of the kind.
    expect((await bare.page.locator('main').textContent())?.match(/taken as/g)).toHaveLength(3);
    await bare.close();
  });
});

describe('the switch', () => {
  test('turns an answer, says so in the address, is kept on the device, and a link keeps its own units elsewhere', async () => {
    const { page, problems, close } = await open(BARE);
    await answered(page);
    await chooseFeet(page);
    await page.getByText('39.4 ft').first().waitFor();
    expect((await shown(page)).match(METRIC)).toBeNull();
    const { search } = new URL(page.url());
    expect(search).toContain('units=feet');
    expect(await kept(page)).toBe('feet');

    const other = await open(WIRE + search);
    await answered(other.page);
    expect((await shown(other.page)).match(METRIC)).toBeNull();
    expect(await kept(other.page)).toBeNull();
    await other.close();

    // A link with units of its own wins over the device.
    await page.goto(new URL(page.url()).origin + new URL(page.url()).pathname + IN_METRES.slice(WIRE.length));
    await answered(page);
    expect((await shown(page)).match(FEET)).toBeNull();
    expect(await problems()).toEqual([]);
    await close();
  });

  test('is reached by keyboard, as large as a fingertip, and not there without script', async () => {
    const { page, close } = await open('en/fixes/more-feeders/', { width: 360 });
    const metric = page.getByLabel('metres and mm²');
    expect(await metric.isChecked()).toBe(true);
    await metric.focus();
    await page.keyboard.press('ArrowRight');
    expect(await page.getByLabel('feet and AWG').isChecked()).toBe(true);
    for (const box of await page.locator('.units label').all()) {
      expect((await box.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    }
    await close();
    const plain = await open('en/fixes/more-feeders/', { javaScript: false });
    expect(await plain.page.locator('.units').isVisible()).toBe(false);
    await plain.close();
  });

  test('a bare number is then taken as feet, beside the field and in the address', async () => {
    const { page, close } = await open(`${WIRE}?${REST}`);
    await page.locator('#bus-length').fill('40');
    expect(await page.locator('#bus-length-taken').innerText()).toBe('taken as metres');
    await chooseFeet(page);
    await page.locator('#bus-length-taken', { hasText: 'taken as feet' }).waitFor();
    await page.locator('#bus-wire').fill('14');
    expect(await page.locator('#bus-wire-taken').innerText()).toBe('taken as AWG');
    await page.getByRole('button', { name: 'Continue' }).click();
    await page.waitForURL(/bus-length=40\+ft/);
    expect(new URL(page.url()).searchParams.get('bus-wire')).toBe('14 AWG');
    expect(new URL(page.url()).searchParams.get('units')).toBe('feet');
    await page.getByText('40 ft').waitFor();
    await close();
  });

  test('the driven train says its place in inches, and in centimetres again', async () => {
    const { page, problems, close } = await open('en/learn/drive-across-the-gap/?units=feet', { width: 360 });
    const train = page.locator('.drive [role=slider]');
    const place = async (): Promise<string> =>
      (await train.getAttribute('aria-valuetext'))?.replace('\u00a0', ' ') ?? '';
    await train.focus();
    await page.keyboard.press('Home');
    expect(await place()).toBe('-6.3 in, wholly in A');
    await page.getByLabel('metres and mm²').check();
    await page.locator('.drive [role=slider][aria-valuetext*="cm"]').waitFor();
    expect(await place()).toBe('-16 cm, wholly in A');
    expect(await problems()).toEqual([]);
    await close();
  });

  test('a bare gauge where metres are chosen is told how to write one', async () => {
    const { page, close } = await open(`${WIRE}?${REST}`);
    await page.locator('#bus-length').fill('12');
    await page.locator('#bus-wire').fill('14');
    await page.getByRole('button', { name: 'Continue' }).click();
    const told = page.getByText('For a gauge type 14 AWG.').first();
    await told.waitFor();
    expect((await told.innerText()).replaceAll('\u00a0', ' ')).toContain('from 0.05 mm² to 10 mm²');
    await close();
  });

  test('units that were typed go on to the page of the fix', async () => {
    const { page, close } = await open(IN_FEET);
    await answered(page);
    await page.getByRole('link', { name: 'How to prove it' }).click();
    await page.locator('#proof').getByRole('link', { name: 'The whole page on this' }).first().click();
    await page.waitForURL(/fixes\/.*units=feet/);
    expect(await page.locator('html').getAttribute('data-units')).toBe('feet');
    await close();
  });
});

describe('the privacy page', () => {
  const PRIVACY = 'en/privacy/';
  const now = (page: Page): Promise<string> => page.locator('[data-stored="units"]').innerText();
  const clearUnits = (page: Page) => page.locator('button[data-clear="units"]');

  test('shows what is kept and clears it', async () => {
    const { page, problems, close } = await open(PRIVACY);
    expect(await now(page)).toBe('Nothing is kept.');
    expect(await clearUnits(page).innerText()).toBe('Clear this');
    expect(await clearUnits(page).isDisabled()).toBe(true);
    for (const button of [clearUnits(page), page.getByRole('button', { name: 'Clear all' })]) {
      await page.goto(page.url().replace(/\?.*/, ''));
      await chooseFeet(page);
      expect(await now(page)).toBe('feet');
      await page.reload();
      expect(await now(page)).toBe('feet');
      await button.click();
      expect(await now(page)).toBe('Nothing is kept.');
      expect(await kept(page)).toBeNull();
      await expect.poll(() => page.getByRole('status').innerText()).toBe('Cleared.');
    }
    expect(await problems()).toEqual([]);
    await close();
  });

  test('something old or damaged does no harm, is told, and can be cleared', async () => {
    const { page, problems, close } = await open(PRIVACY);
    await page.evaluate(() => localStorage.setItem('both-rails-units', '{"furlongs":1'));
    await page.goto(page.url().replace('privacy/', 'fixes/more-feeders/'));
    expect(await page.getByLabel('metres and mm²').isChecked()).toBe(true);
    await page.goBack();
    await page.reload();
    expect(await now(page)).toMatch(/old or damaged/);
    await clearUnits(page).click();
    expect(await kept(page)).toBeNull();
    expect(await problems()).toEqual([]);
    await close();
  });
});

describe('what is written once for both systems', () => {
  test('a fix and a lesson change with the switch, their headings and steps too, and print what is chosen', async () => {
    for (const [path, metric, feet] of [
      ['en/fixes/more-feeders/', /feeder wire of 0\.5 mm²/i, /feeder wire of AWG 20/i],
      ['en/fixes/thin-wire/', /wire of at least 1\.5 mm²/, /wire of at least AWG 14/],
      ['en/fixes/gap-closed/', /Ten metres of rail/, /Thirty feet of rail/],
      ['en/learn/voltage-along-the-track/', /a bus of 10 m,/, /a bus of 30 ft,/],
      ['en/glossary/', /Code 100 is 2\.54 mm high/, /Code 100 is 0\.1 in high/],
    ] as const) {
      const { page, problems, close } = await open(path);
      // What a fix needs stands folded.
      for (const fold of await page.locator('.named summary').all()) await fold.click();
      expect(await shown(page)).toMatch(metric);
      expect(await shown(page)).not.toMatch(feet);
      await chooseFeet(page);
      expect(await shown(page)).toMatch(feet);
      expect(await shown(page)).not.toMatch(metric);
      await page.emulateMedia({ media: 'print' });
      expect(await shown(page)).toMatch(feet);
      expect(await problems()).toEqual([]);
      await close();
    }
  });

  test('no placeholder is left on any page, nor in its description', () => {
    const left = pages().flatMap((path) => {
      const html = readFileSync(join(process.env.SITE_FOLDER ?? 'dist', path, 'index.html'), 'utf8');
      const read = html.replaceAll(/ (?:props|opts)="[^"]*"/g, '');
      return [...read.matchAll(/\{(?:m|cm|mm|mm2|either):[^}]*\}/g)].map(([found]) => `${path}: ${found}`);
    });
    expect(pages().length).toBeGreaterThan(100);
    expect(left).toEqual([]);
  });

  test('a walk asks and mends in feet where that was chosen', async () => {
    const { page, problems, close } = await open('en/put-it-right/slow-far-away/?told=yes&tools=none&units=feet');
    await nothingIsWarm(page);
    await page.locator('.walk .answers').waitFor();
    expect(await page.locator('html').getAttribute('data-units')).toBe('feet');
    expect(await shown(page)).not.toMatch(/could not be read|left out/i);
    expect((await shown(page)).match(METRIC)).toBeNull();
    await page.locator('.walk .answers button').first().click();
    await page.waitForURL(({ searchParams }) => searchParams.size > 3);
    expect(new URL(page.url()).searchParams.get('units')).toBe('feet');
    expect(await problems()).toEqual([]);
    await close();
  });
});

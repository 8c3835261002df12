// What the help desk and its callers do, in every engine: an answered link, a walk, a figure, the search, paper, and no line.
import { inflateSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serve } from '../../scripts/serve.mjs';
import { ASK_ME, NOTHING_WARM, TELLING } from '../site/danger.ts';
import { ENGINES, type Engine } from './engine.ts';

const ANSWERED =
  'en/work-it-out/enough-current/?modern=4&moving=3&older=2&scale=h0&supply-amps=4&supply-kind=dc&supply-plug=unknown&supply-volts=16' +
  '&system=two-rail&unit-input=dc&unit-input-volts=18&unit-limit=3&unit-plug=unknown&unit-rails=follows';
const WALK = 'en/put-it-right/loop-trips/';
const LESSON = 'en/learn/voltage-along-the-track/';
const VERDICT = '//h1[contains(@class,"verdict")]';
const SLIDER = '(//input[@type="range"])[1]';
const FIGURE = `document.querySelector('astro-island:has(input[type=range])')`;
const FIRST_HIT = '(//*[contains(@class,"list")]//li/a)[1]';
const MOST_SHEETS = 2;

const inOneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();
const button = (name: string): string => `//button[contains(normalize-space(.),"${name}")]`;

/** What a line says by when a whole copy of the site is kept. */
const KEPT = `(async () => {
  for (let tries = 0; tries < 100; tries += 1) {
    if (navigator.serviceWorker.controller !== null && (await caches.match('/_kept')) !== undefined) return true;
    await new Promise((done) => setTimeout(done, 250));
  }
  return false;
})()`;

/** Pages of a PDF; an engine may pack what tells of them (ISO 32000-1, 7.5.7, object streams). */
function sheetsOf(pdf: Buffer): number {
  const plain = pdf.toString('latin1');
  const packed = [...plain.matchAll(/\/ObjStm\b[\s\S]*?\bstream\r?\n([\s\S]*?)\r?\nendstream/g)].map(([, one = '']) =>
    inflateSync(Buffer.from(one, 'latin1')).toString('latin1'),
  );
  return [plain, ...packed].join('\n').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

/** What the other engines have to show, as it was seen in the first. */
const seen = new Map<string, string>();
function sameAsOthers(what: string, text: string): void {
  const shown = text.replace(/\s+/g, '');
  expect(shown).not.toBe('');
  const before = seen.get(what) ?? shown;
  seen.set(what, before);
  expect(shown).toBe(before);
}

describe.each(ENGINES)('In $name', ({ start }) => {
  let engine: Engine;
  let address: string;
  let stop: () => Promise<unknown>;
  beforeAll(async () => {
    const server = await serve({ folder: process.env.SITE_FOLDER ?? 'dist' });
    ({ address } = server);
    let up = true;
    stop = async () => {
      if (up) await server.close();
      up = false;
    };
    engine = await start();
  });
  afterAll(async () => {
    await engine?.close();
    await stop();
  });

  test('a link to an answer shows the verdict, its first step and its numbers', async () => {
    await engine.go(address + ANSWERED);
    sameAsOthers('verdict', await engine.text(VERDICT));
    await engine.picture('answer');
    await engine.click('//a[contains(normalize-space(.),"Start with the first step")]');
    sameAsOthers('first step', await engine.text('(//main//ol[contains(@class,"steps")]/li)[1]'));
  });

  test('an answer is copied at the first press', async () => {
    await engine.go(address + ANSWERED);
    await engine.click(button('Copy as text'));
    const told = () => engine.text('//*[contains(@class,"share")]/*[@role="status"]');
    await expect.poll(told, { timeout: 20_000 }).toBe('Copied');
  });

  /** What is asked once `before` is asked no more. */
  async function asked(before: string): Promise<string> {
    const now = async () => inOneLine(String(await engine.evaluate(`document.querySelector('.walk h1').textContent`)));
    await expect.poll(now, { timeout: 20_000 }).not.toBe(before);
    return now();
  }

  test('a walk asks, takes an answer, and asks the next question', async () => {
    await engine.go(address + WALK);
    await engine.click(button(NOTHING_WARM));
    await engine.click(button(ASK_ME));
    const first = await asked(TELLING);
    sameAsOthers('first question', first);
    await engine.picture('walk');
    await engine.click('(//*[contains(@class,"answers")]//button)[1]');
    sameAsOthers('second question', await asked(first));
  });

  test('the figure of a lesson computes anew when its slider is moved by key', async () => {
    await engine.go(address + LESSON);
    const read = () => engine.evaluate(`${FIGURE}.innerText`);
    await engine.evaluate(`${FIGURE}.firstElementChild.scrollIntoView()`);
    await expect.poll(() => engine.evaluate(`${FIGURE}.hasAttribute('ssr')`), { timeout: 20_000 }).toBe(false);
    const before = await read();
    await engine.keys(SLIDER, 'ArrowRight', 'ArrowRight', 'ArrowRight');
    await expect.poll(read, { timeout: 20_000 }).not.toBe(before);
    await engine.picture('figure');
  });

  test('the search finds a page by the words of a beginner', async () => {
    await engine.go(`${address}en/search/`);
    await engine.keys('//input[@type="search"]', 'trains stop in the new bit');
    const first = await engine.text(FIRST_HIT);
    sameAsOthers('first hit', first);
    await engine.picture('search');
  });

  test('an answer goes on two sheets of paper', async () => {
    await engine.go(address + ANSWERED);
    const sheets = sheetsOf(Buffer.from(await engine.print('.steps > li')));
    expect(sheets).toBeGreaterThan(0);
    expect(sheets).toBeLessThanOrEqual(MOST_SHEETS);
  });

  test('after one visit a fix, an answer and the search are there without a line', async () => {
    await engine.go(`${address}en/`);
    expect(await engine.evaluate(KEPT)).toBe(true);
    await stop();
    await engine.go(`${address}en/fixes/more-feeders/`);
    sameAsOthers('fix', await engine.text('//h1'));
    await engine.go(address + ANSWERED);
    sameAsOthers('verdict', await engine.text(VERDICT));
    await engine.go(`${address}en/search/`);
    await engine.keys('//input[@type="search"]', 'trains stop in the new bit');
    sameAsOthers('first hit', await engine.text(FIRST_HIT));
  });
});

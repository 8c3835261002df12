// A finger finds what it aims at, and large letters push nothing off the screen.
import { expect, test } from 'vitest';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { type Opened, open } from './browser.ts';
import { nothingIsWarm } from './danger.ts';
import { overflow } from './measure.ts';

/** Nothing is left to propose. */
const EVERY_REPAIR = [...new Set(SIGN_MODEL.causes.map(({ fixClass }) => fixClass))].join('.');

/** A page of each kind, and what a wizard and a walk come to. */
const KINDS = [
  'en/',
  'en/learn/',
  'en/learn/no-single-number/',
  'en/learn/voltage-along-the-track/',
  'en/learn/drive-across-the-gap/',
  'en/work-it-out/',
  'en/work-it-out/enough-current/',
  'en/work-it-out/enough-current/?scale=h0&system=two-rail',
  'en/work-it-out/wire-it/?bus-length=12&bus-wire=0.75+mm2&feed-by=bus&scale=h0&system=two-rail&track-length=12&wire-amps=1.5&wire-trip=3&wire-volts=15&wire-way=quick',
  'en/put-it-right/',
  'en/put-it-right/trips-at-gap/',
  'en/put-it-right/trips-at-gap/?told=no',
  'en/put-it-right/trips-at-gap/?told=yes&tools=lamps.wire',
  'en/put-it-right/trips-at-gap/?when-it-happens=at-the-gap&analogue-one-at-the-gap=turned-round&meter-same-and-diagonal=same-rail-large&told=yes&tools=multimeter',
  'en/put-it-right/trips-at-gap/?told=yes&tools=none&undo=reversed',
  'en/put-it-right/now-and-then/?told=yes&tools=none&fixed=pickup',
  `en/put-it-right/jerks-at-gap/?told=yes&tools=none&tried=${EVERY_REPAIR}`,
  'en/fixes/switch-off-now/',
  'en/fixes/reversed/',
  'en/glossary/',
  'en/cautions/',
  'en/sources/',
  'en/contributors/',
  'en/privacy/',
  'en/search/',
] as const;

const LEAST = 44;
/** A pixel is lost where a box begins between two. */
const ROUNDING = 1;

/** Opens a page; a link into a walk is followed past the question of danger, and everything that unfolds is unfolded. */
async function enter(path: string): Promise<Opened> {
  const opened = await open(path, { width: 360, height: 740 });
  if (!(path.includes('put-it-right/') && path.includes('told='))) return opened;
  await nothingIsWarm(opened.page);
  await opened.page.evaluate(() => {
    for (const fold of document.querySelectorAll<HTMLDetailsElement>('.walk details')) fold.open = true;
  });
  return opened;
}

/** What can be tapped and is lower than a finger is wide; links and terms within a sentence keep to its lines. */
function tooSmall(page: Opened['page']): Promise<string[]> {
  return page.evaluate((least) => {
    const isLonger = (text: Element | null | undefined, one: Element): boolean =>
      (text?.textContent ?? '').trim().length > (one.textContent ?? '').trim().length;
    // A term is a button, which no browser lays out as plain text; what it stands in may be set in bold or kept with its comma.
    const within = (one: Element): boolean =>
      one.matches('.term')
        ? isLonger(one.parentElement?.closest('p, li, dd, td'), one)
        : getComputedStyle(one).display === 'inline' && isLonger(one.parentElement, one);
    const boxOf = (one: Element): Element =>
      one instanceof HTMLInputElement && /radio|checkbox/.test(one.type) ? (one.closest('label') ?? one) : one;
    return [...document.querySelectorAll('a[href], button, input, select, summary')]
      .filter(
        (one) => one.checkVisibility({ visibilityProperty: true }) && !one.matches('.skip, svg *') && !within(one),
      )
      .map((one) => ({ one, height: boxOf(one).getBoundingClientRect().height }))
      .filter(({ height }) => height < least)
      .map(
        ({ one, height }) =>
          `${one.tagName} ${one.className} ${height.toFixed(0)}: ${(one.textContent ?? '').slice(0, 40)}`,
      );
  }, LEAST - ROUNDING);
}

test.each(KINDS)('on a phone everything that can be tapped on /%s is as high as a finger is wide', async (path) => {
  const { page, close } = await enter(path);
  expect(await tooSmall(page)).toEqual([]);
  await close();
});

test.each(KINDS)(
  'with letters twice as large /%s does not run off a phone, and every way in is there',
  async (path) => {
    const { page, close } = await enter(path);
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    expect(await overflow(page)).toEqual([]);
    const ways = page.locator('.head nav a');
    for (const way of await ways.all()) {
      const box = await way.boundingBox();
      expect(box?.x).toBeGreaterThanOrEqual(0);
      expect((box?.x ?? 0) + (box?.width ?? 999)).toBeLessThanOrEqual(360);
    }
    await close();
  },
);

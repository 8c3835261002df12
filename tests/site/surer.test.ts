// The quick answer, and one more question that makes it surer and leads back to it.
import { describe, expect, test } from 'vitest';
import { answered, open } from './browser.ts';

const QUICK =
  'en/work-it-out/wire-it/?bus-length=12&bus-wire=0.75&feed-by=bus&scale=h0&supply-amps=4&supply-kind=dc&supply-plug=unknown' +
  '&supply-volts=15&system=two-rail&track-length=12&wire-amps=1.5&wire-trip=3&wire-volts=15';

describe('a quick answer', () => {
  test('offers what would make it surer; one question opens, is outside the count, and leads back to the answer', async () => {
    const { page, problems, close } = await open(QUICK, { width: 360 });
    await answered(page);
    const answer = page.url();
    await page.locator('.surer summary').click();
    const offered = await page.locator('.surer a').allInnerTexts();
    expect(offered.length).toBeGreaterThan(1);
    await page.locator('.surer a').first().click();
    expect(await page.locator('main h1').innerText()).toBe(offered[0]);
    expect(await page.locator('.step-of').innerText()).toMatch(/^One more question/);
    expect(new URL(page.url()).searchParams.get('ask')).not.toBeNull();

    await page.getByRole('link', { name: 'Back to your answer' }).click();
    await answered(page);
    expect(page.url()).toBe(answer);

    await page.locator('.surer summary').click();
    await page.locator('.surer a').first().click();
    for (const radio of await page.locator('fieldset.choice').all()) await radio.locator('input').last().check();
    for (const unknown of await page.locator('.unknown input').all()) await unknown.check();
    await page.getByRole('button', { name: 'Continue' }).click();
    await answered(page);
    expect(page.url()).not.toContain('ask=');
    expect(await page.locator('.surer a').allTextContents()).not.toContain(offered[0]);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('a link to one more question opens it, with or without an answer to it; a made-up one is passed over', async () => {
    const { page, close } = await open(`${QUICK}&ask=rail-kind`, { width: 360 });
    await page.locator('input[name="rail-kind"]').first().waitFor();
    const other = await open(`${QUICK}&ask=zebra`, { width: 360 });
    await answered(other.page);
    await other.close();
    await close();
  });
});

describe('what works an answer out', () => {
  test('cannot be had, or does not come: the page does it itself', async () => {
    for (const fails of ['aborted', 'held up'] as const) {
      const { page, context, close } = await open('en/work-it-out/wire-it/', { width: 360 });
      let asked = 0;
      await context.route(/reckon-worker/, (route) => {
        asked += 1;
        return fails === 'aborted' ? route.abort() : undefined;
      });
      await page.goto(new URL(QUICK.replace(/^.*\?/, '?'), page.url()).href);
      await answered(page);
      expect(asked).toBeGreaterThan(0);
      await close();
    }
  });
});

describe.each(['enough-current', 'which-supply-where', 'wire-it'])('whoever knows nothing, in %s', (wizard) => {
  test('is at an answer after at most six screens and twelve taps, and the answer takes at most four screens of a phone', async () => {
    const { page, close } = await open(`en/work-it-out/${wizard}/`, { width: 360 });
    let [screens, taps] = [0, 0];
    for (; screens < 12 && (await page.locator('h1.verdict').count()) === 0; screens++) {
      await page.locator('.wizard form').waitFor();
      const before = page.url();
      const knowsNothing = page.locator('form .acts .quiet');
      if ((await knowsNothing.count()) > 0) {
        await knowsNothing.click();
        taps += 1;
      } else {
        await page.locator('form input[value=unknown], form .unknown input').check();
        await page.getByRole('button', { name: 'Continue' }).click();
        taps += 2;
      }
      await page.waitForURL((url) => url.href !== before);
      await page.locator('.wizard form, h1.verdict').first().waitFor();
    }
    expect(screens).toBeLessThanOrEqual(6);
    expect(taps).toBeLessThanOrEqual(12);
    await answered(page);
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(4 * 800);
    const begin = await page.locator('.to-do .button').boundingBox();
    expect((begin?.y ?? 800) + (begin?.height ?? 0)).toBeLessThanOrEqual(800);
    await close();
  });
});

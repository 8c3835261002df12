// A live figure is passed on as it is set: its link, what it says as text and as Markdown, its code.
import { describe, expect, test } from 'vitest';
import { open } from './browser.ts';
import { copiedBy, linksIn } from './copied.ts';
import { readCode } from './read-code.ts';

const LESSON = 'en/learn/no-single-number/';
/** Of a typical link, on a site with a short name. */
const MOST = 120;
const SITE = 'https://both-rails.example/';

describe('The figure of a lesson', () => {
  test('is passed on as it is set, in a link that opens it so, without the answers given and the path come by', async () => {
    const opened = await open(`${LESSON}?moving=7&total=9&check-seed=5&path=divide`, { width: 360 });
    const { page, problems, close } = opened;
    const card = page.locator('[data-pass-on-figure]');
    await card.scrollIntoViewIfNeeded();
    await page.locator('#figure astro-island:not([ssr])').waitFor({ state: 'attached' });
    const says = await page.locator('#figure [role="status"]').first().innerText();
    const link = await copiedBy(opened, 'Copy the link');
    expect(link).toMatch(/\/en\/learn\/no-single-number\/\?moving=7&total=9#figure$/);
    expect(link.replace(/^https?:\/\/[^/]+\//, SITE).length).toBeLessThanOrEqual(MOST);
    for (const [button, first] of [
      ['Copy as text', /^Both Rails\. Why there is no/],
      ['Copy as Markdown', /^## Why there is no/],
    ] as const) {
      const text = await copiedBy(opened, button);
      expect(text).toMatch(first);
      expect(text.replaceAll('\\', '')).toContain(says.replace(/\s+/g, ' ').trim());
      expect(text).toMatch(/moving[^\n]*: 7/i);
      expect(linksIn(text)).toEqual([link]);
    }
    await page.getByRole('button', { name: 'Show as a code' }).click();
    await page.locator('.paper-link.shown svg.qr path').waitFor();
    expect(await page.locator('.paper-link a').getAttribute('href')).toBe(link);
    expect(await readCode(page)).toBe(link);
    // The keys that print put the code of the figure as it is now on paper, in the place of the one before.
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute('data-printed', 'yes');
    });
    await page.locator('#figure input[type="range"]').first().press('ArrowRight');
    await page.waitForURL((now) => now.searchParams.get('total') === '10');
    await page.keyboard.press('Control+p');
    await page.locator('body[data-printed]').waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await readCode(page)).toBe(link.replace('total=9', 'total=10'));
    const after = page.locator('.paper-link a');
    expect(await after.evaluate((one) => getComputedStyle(one, '::after').content)).toBe('none');
    await page.emulateMedia({ media: 'screen' });
    expect(await problems()).toEqual([]);
    await page.goto(link);
    await page.locator('#figure astro-island:not([ssr])').waitFor({ state: 'attached' });
    expect(await page.locator('#figure [role="status"]').first().innerText()).toBe(says);
    await close();
  });

  test('takes what a slider was moved to before its script was there', async () => {
    const { page, problems, close } = await open(LESSON, { width: 360 });
    const slider = page.locator('#figure input[type="range"]').first();
    expect(await page.locator('#figure astro-island[ssr]').count()).toBe(1);
    await slider.evaluate((range: HTMLInputElement) => {
      range.value = '9';
    });
    await page.locator('[data-pass-on-figure]').scrollIntoViewIfNeeded();
    await page.waitForURL((now) => now.searchParams.get('total') === '9');
    expect(await slider.inputValue()).toBe('9');
    expect(await slider.getAttribute('aria-valuetext')).toBe('9');
    expect(await problems()).toEqual([]);
    await close();
  });

  test('has nothing to press for it without script', async () => {
    const { page, close } = await open(LESSON, { javaScript: false });
    expect(await page.locator('[data-pass-on-figure] button:visible').count()).toBe(0);
    await close();
  });
});

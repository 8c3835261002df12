// What is passed on of a fix: its link, all that it says as text and as Markdown, its code.
import { describe, expect, test } from 'vitest';
import { open, site } from './browser.ts';
import { copiedBy, linksIn } from './copied.ts';
import { readCode } from './read-code.ts';

describe.each(['reversed', 'larger-supply', 'switch-off-now'])('The fix %s', (fix) => {
  test('is copied as text and as Markdown with every step, every danger and its proof', async () => {
    const opened = await open(`en/fixes/${fix}/`, { width: 360 });
    const { page, problems, close } = opened;
    expect(await copiedBy(opened, 'Copy the link')).toBe(page.url());
    const steps = await page.locator('.steps > li > p:not(.step-at)').first().textContent();
    const count = await page.locator('.steps > li').count();
    const dangers = await page.locator('.steps .caution:not(.again) > p > b').allTextContents();
    expect(count).toBeGreaterThan(2);
    expect(dangers.length).toBeGreaterThan(0);
    for (const [button, first] of [
      ['Copy as text', /^Both Rails\. /],
      ['Copy as Markdown', /^## /],
    ] as const) {
      const text = await copiedBy(opened, button);
      expect(text).toMatch(first);
      expect(text).toContain(await page.locator('h1').innerText());
      expect(text.replaceAll('\\', '')).toContain((steps ?? '').replace(/\s+/g, ' ').trim());
      expect(text.match(/^\d+\. \S/gm)).toHaveLength(count);
      for (const danger of dangers) expect(text).toContain(danger);
      expect(text).toContain('How you know it worked');
      expect(linksIn(text).at(-1)).toBe(page.url());
      expect(text).not.toContain('undefined');
      if (button === 'Copy as text') expect(text).toContain(`#step-${count} behind this one leads to step ${count}.`);
    }
    expect(await problems()).toEqual([]);
    await close();
  });

  test('is shown as a code', async () => {
    const { address } = await site();
    const { page, problems, close } = await open(`en/fixes/${fix}/`, { width: 360 });
    await page.getByRole('link', { name: 'Show as a code' }).click();
    await page.locator('svg.qr path').waitFor();
    expect(await page.locator('svg.qr').getAttribute('aria-label')).toBe(`${address}en/fixes/${fix}/`);
    expect(await readCode(page)).toBe(`${address}en/fixes/${fix}/`);
    await page.getByRole('link', { name: `${address}en/fixes/${fix}/` }).click();
    await page.waitForURL(`${address}en/fixes/${fix}/`);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('has nothing to press for it without script, and a link for every step', async () => {
    const { page, close } = await open(`en/fixes/${fix}/`, { javaScript: false });
    expect(await page.locator('.share:visible').count()).toBe(0);
    const links = await page.locator('.step-link').evaluateAll((all) => all.map((link) => link.getAttribute('href')));
    expect(links).toEqual(links.map((_, at) => `#step-${at + 1}`));
    expect(links.length).toBeGreaterThan(2);
    await close();
  });
});

test('A step’s link is seen by whoever points at it or comes by the keys, and leads to that step alone', async () => {
  const { page, close } = await open('en/fixes/larger-supply/');
  const opacity = (): Promise<string> =>
    page.locator('#step-2 > .step-link').evaluate((link) => getComputedStyle(link).opacity);
  expect(await opacity()).toBe('0');
  await page.locator('#step-2').hover();
  expect(await opacity()).toBe('1');
  await page.mouse.move(0, 0);
  await page.locator('#step-2 > .step-link').focus();
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Tab');
  expect(await opacity()).toBe('1');
  await page.keyboard.press('Enter');
  expect(new URL(page.url()).hash).toBe('#step-2');
  expect(await page.locator('.steps > li:visible').count()).toBe(1);
  await close();
});

// Every page where scripts do not run: it still says what it has to say.
import { expect, test } from 'vitest';
import { open, pages, site } from './browser.ts';
import { frame } from './measure.ts';

/** A heading and a sentence. */
const LEAST_TEXT = 60;

/** Without scripts nothing is kept from page to page: one browser goes through them all. */
const visit = open('', { width: 360, javaScript: false });

test.each(pages())('/%s without scripts shows its heading and its text', async (path) => {
  const { page, problems } = await visit;
  const { address } = await site();
  await page.goto(`${address}${path}`, { waitUntil: 'load' });
  const { headings, text } = await frame(page);
  expect(headings).toHaveLength(1);
  expect(await page.locator('h1').isVisible()).toBe(true);
  expect(text.length).toBeGreaterThan(LEAST_TEXT);
  // What asks by itself is not there; a form goes to the page that answers it.
  expect(await page.locator('astro-island :is(button:not([type=submit]), input[type=range]):visible').count()).toBe(0);
  expect(await page.locator('astro-island .choice input:visible, [data-set]:visible').count()).toBe(0);
  expect(await problems()).toEqual([]);
});

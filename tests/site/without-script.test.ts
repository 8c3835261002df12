// Every page where scripts do not run: it still says what it has to say.
import { expect, test } from 'vitest';
import { open, pages } from './browser.ts';
import { frame } from './measure.ts';

/** A heading and a sentence. */
const LEAST_TEXT = 60;

test.concurrent.each(pages())('/%s without scripts shows its heading and its text', async (path) => {
  const { page, problems, close } = await open(path, { width: 360, javaScript: false });
  const { headings, text } = await frame(page);
  expect(headings).toHaveLength(1);
  expect(await page.locator('h1').isVisible()).toBe(true);
  expect(text.length).toBeGreaterThan(LEAST_TEXT);
  expect(await problems()).toEqual([]);
  await close();
});

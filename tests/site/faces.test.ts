// The site's own faces and the first paint: on a first visit nothing waits for a face, and from the next page on they are there.
import { readFileSync } from 'node:fs';
import { parse } from 'node-html-parser';
import { expect, test } from 'vitest';
import { open } from './browser.ts';
import { foreignFaces, layoutShift, NO_SHIFT } from './measure.ts';

const FOLDER = process.env.SITE_FOLDER ?? 'dist';

test.each([
  ['home', 'en/'],
  ['a lesson', 'en/learn/no-single-number/'],
  ['a lesson whose figure has styles of its own', 'en/learn/drive-across-the-gap/'],
  ['a wizard', 'en/work-it-out/enough-current/'],
  ['a walk', 'en/put-it-right/trips-at-gap/'],
  ['a fix with a figure', 'en/fixes/reversed/'],
])('%s: nothing in the head has to be fetched before the first paint', (_, path) => {
  const head = parse(readFileSync(`${FOLDER}/${path}index.html`, 'utf8')).querySelector('head');
  expect(head?.querySelectorAll('link[as=font]').length).toBe(4);
  const waits = 'link[rel=preload], link[rel=stylesheet], script[src]:not([async], [defer], [type=module])';
  expect(head?.querySelectorAll(waits).map(String)).toEqual([]);
});

test('a first page is set in faces of the system, stays so and keeps the others; the next is set in them from the start', async () => {
  const { page, problems, close } = await open('en/fixes/larger-supply/', { width: 360, first: true });
  const own = () => page.evaluate(() => document.documentElement.dataset.faces !== undefined);
  const kept = () => page.evaluate(() => localStorage.getItem('both-rails-faces'));
  expect(await kept()).toBeNull();
  await expect.poll(kept, { timeout: 15_000 }).toBe('1');
  expect(await own()).toBe(false);
  expect(await layoutShift(page)).toBeLessThan(NO_SHIFT);
  expect(await foreignFaces(page)).toEqual([]);
  expect(await own()).toBe(true);
  expect(await layoutShift(page)).toBeLessThan(NO_SHIFT);
  expect(await problems()).toEqual([]);
  await close();
});

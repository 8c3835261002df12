// An address that leads nowhere: its words are looked for, and the ways in are there without script too.
import { expect, test } from 'vitest';
import { open } from './browser.ts';

test.each([
  ['en/fixes/larger-suply/', '/en/fixes/larger-supply/'],
  ['en/put-it-right/trips-at-the-gap/', '/en/put-it-right/trips-at-gap/'],
  ['wire-it.html', '/en/work-it-out/wire-it/'],
])('/%s offers %s among the first three', async (asked, meant) => {
  const { page, close } = await open(asked, { width: 360 });
  const hits = page.locator('#results a');
  await hits.first().waitFor();
  const found = await hits.evaluateAll((links) => links.slice(0, 3).map((link) => link.getAttribute('href')));
  expect(found).toContain(meant);
  expect(new URL(page.url()).pathname).toBe(`/${asked}`);
  await close();
});

test('an address that cannot be read, or is markup, is answered like any other', async () => {
  for (const asked of ['en/%3Cimg%20src=x%20onerror=alert(1)%3E/', 'en/zzzzqqqq/']) {
    const { page, problems, close } = await open(asked);
    await page.getByText(/Perhaps one of these was meant|Nothing here goes by these words/).waitFor();
    expect(await page.locator('main img').count()).toBe(0);
    expect((await problems()).filter((one) => !one.includes('404'))).toEqual([]);
    await close();
  }
});

test('without JavaScript the ways in are there', async () => {
  const { page, close } = await open('en/nowhere/', { javaScript: false });
  expect(await page.locator('main .says a:visible').count()).toBe(4);
  await close();
});

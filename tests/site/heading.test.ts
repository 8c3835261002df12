// Whoever takes a step is told where it led: the new heading is read out, though an answer is worked out beside the page.
import { expect, test } from 'vitest';
import { answered, type Opened, open } from './browser.ts';

const ALL_BUT_THE_LAST =
  'en/work-it-out/enough-current/?modern=4&moving=3&older=2&scale=h0&supply-amps=4&supply-kind=dc&supply-plug=unknown&supply-volts=16&system=two-rail';

const readOut = (page: Opened['page']): Promise<string> =>
  page.evaluate(() => (document.activeElement?.tagName === 'H1' ? (document.activeElement.textContent ?? '') : ''));

test('after the last question the verdict is read out, from the top of the page; at a link to an answer nothing is', async () => {
  const { page, close } = await open(ALL_BUT_THE_LAST, { width: 360 });
  await page.locator('form .acts .quiet').click();
  await answered(page);
  const verdict = (await page.locator('h1.verdict').textContent()) ?? '';
  await page.waitForFunction(() => document.activeElement?.tagName === 'H1');
  expect(await readOut(page)).toBe(verdict);
  expect(await page.evaluate(() => scrollY)).toBe(0);
  const link = new URL(page.url());
  await close();
  const other = await open(`${link.pathname.slice(1)}${link.search}`, { width: 360 });
  await answered(other.page);
  expect(await readOut(other.page)).toBe('');
  await other.close();
});

// Back from one answer to the one before: never the words of one with the numbers of the other.
import { describe, expect, test } from 'vitest';
import { answered, type Opened, open } from './browser.ts';

const ANSWERED =
  'en/work-it-out/enough-current/?accessories=0&coaches=0&evening=unknown&modern=4&moving=3&older=2&own-use=bare&scale=h0&sound=0&stored=0' +
  '&supply-amps=4&supply-kind=dc&supply-plug=unknown&supply-volts=16&system=two-rail' +
  '&unit-input=dc&unit-input-volts=18&unit-limit=3&unit-plug=unknown&unit-rails=follows';

declare global {
  interface Window {
    shown?: () => string;
    told?: Set<string>;
  }
}

/** What an answer says, in words and in the figure; empty while none stands there. */
const told = (page: Opened['page']): Promise<string> => page.evaluate(() => window.shown?.() ?? 'nobody looked');

/** Notes everything that an answer says from now on. */
async function watch(page: Opened['page']): Promise<void> {
  await page.evaluate(() => {
    const shown = (): string =>
      [...document.querySelectorAll('h1.verdict, .answer .lead, .answer .tonight, .wizard figcaption')]
        .map((one) => one.textContent)
        .join(' | ');
    const all = new Set<string>();
    new MutationObserver(() => all.add(shown())).observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
    });
    Object.assign(window, { shown, told: all });
  });
}

describe.each([
  ['a small layout', ANSWERED, '6'],
  ['a club', ANSWERED.replace('modern=4', 'modern=60').replace('moving=3', 'moving=8'), '60'],
])('on %s', (_, address, trains) => {
  test('an answer that was left by a trial is there again as a whole, and nothing of both in between', async () => {
    const { page, problems, close } = await open(address);
    await answered(page);
    await watch(page);
    const first = await told(page);
    await page.locator('input[aria-label="trains moving at once"]').fill(trains);
    await page.locator('input[aria-label="trains moving at once"]').press('Enter');
    await page.getByRole('button', { name: 'Keep this as my answer' }).click();
    await page.waitForFunction((before) => !['', before].includes(window.shown?.() ?? ''), first);
    await page.waitForTimeout(1500);
    const second = await told(page);
    await page.goBack();
    await page.waitForFunction((before) => window.shown?.() === before, first);
    const seen = await page.evaluate(() => [...(window.told ?? [])]);
    // Drawn from the top: what stands there is all of one of them, or begins it.
    expect(seen.filter((one) => !(first.startsWith(one) || second.startsWith(one)))).toEqual([]);
    expect(second).not.toBe(first);
    expect(await problems()).toEqual([]);
    await close();
  });
});

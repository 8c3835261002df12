// Five troubles in the words in which people write them, told on a phone, lead to the repair that mends them.
import { expect, test } from 'vitest';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { wordsOf } from '../content/folder.ts';
import { likeliest } from '../wizards/likeliest.ts';
import { type Opened, open } from './browser.ts';
import { nothingIsWarm } from './danger.ts';
import { overflow } from './measure.ts';

type Page = Opened['page'];

const FIVE = [
  {
    complaint: 'trips-at-gap',
    text: 'undecoded engine turns round at the gap, booster beeps',
    cause: 'feed-reversed',
  },
  {
    complaint: 'cuts-out-after-a-while',
    text: 'works for an hour, then one part is dead till I restart',
    cause: 'stage-heat',
  },
  {
    complaint: 'since-rewired',
    text: 'short since I rebuilt the yard throat, feeders are off already',
    cause: 'frog-gap-closed',
  },
  {
    complaint: 'shuts-down-after-swap',
    text: 'since I put the bigger brick on it everything goes off when it crosses',
    cause: 'unlike-supplies',
  },
  {
    complaint: 'one-locomotive-only',
    text: 'one loco hums and won’t read, everything else is fine',
    cause: 'decoder-damaged',
    // One that was just bought is opened first: has it a decoder at all? Common practice, no source.
    firstLooks: 'no-decoder',
  },
] as const;

/** Questions after which a person gives up. */
const MOST = 14;
const CHECK_BY_TITLE = new Map(wordsOf('en', 'checks').map(({ id, data }) => [String(data['title']), id]));
const LABELS = new Map(wordsOf('en', 'checks').map(({ id, data }) => [id, JSON.stringify(data['options'])]));
const FIX_TITLE = new Map(wordsOf('en', 'fixes').map(({ id, data }) => [id, String(data['title'])]));

/** How an answer is called. */
function labelOf(check: string, option: string): string {
  const options: Readonly<Record<string, { readonly label: string }>> = JSON.parse(LABELS.get(check) ?? '{}');
  return options[option]?.label ?? option;
}

/** Taps every chip that the text proposes. */
async function tapWhatWasHeard(page: Page): Promise<number> {
  await page.locator('.heard .chip').first().waitFor();
  const chips = await page.locator('.heard .chip input').all();
  for (const chip of chips) await chip.check();
  return chips.length;
}

/** Answers as one with that cause most likely would, with nothing at hand but eyes and hands; how many questions it took. */
async function answersAs(page: Page, cause: string): Promise<number> {
  for (let asked = 0; asked < MOST; asked++) {
    await page.locator('.walk h1').waitFor();
    const title = ((await page.locator('.walk h1').textContent()) ?? '').trim();
    if ((await page.getByRole('button', { name: 'I’ll do this now' }).count()) > 0) return asked;
    const before = page.url();
    const check = CHECK_BY_TITLE.get(title);
    if (check === undefined) {
      await page.getByRole('button', { name: 'None of these' }).click();
      asked -= 1;
    } else {
      const label = labelOf(check, likeliest(cause, check) ?? '');
      const answer = page.locator('.answers button').filter({ has: page.getByText(label, { exact: true }) });
      await answer.first().click();
    }
    await page.waitForURL((url) => url.href !== before);
    await page.waitForFunction((old) => document.querySelector('.walk h1')?.textContent?.trim() !== old, title);
  }
  return MOST;
}

test.each(FIVE)('“$text” leads to the repair of $cause', async ({ complaint, text, cause, ...one }) => {
  const { page, problems, close } = await open(`en/put-it-right/${complaint}/`, { width: 360, height: 740 });
  await nothingIsWarm(page);
  await page.locator('textarea').fill(text);
  expect(await tapWhatWasHeard(page)).toBeGreaterThan(0);
  expect(await overflow(page)).toEqual([]);
  await page.getByRole('button', { name: /^Go on with/ }).click();
  await page.locator('.telling').waitFor({ state: 'detached' });
  expect(await answersAs(page, cause)).toBeLessThan(MOST);
  if ('firstLooks' in one) {
    expect(await page.locator('.walk h1').textContent()).toBe(FIX_TITLE.get(one.firstLooks));
    await page.getByRole('button', { name: 'It is not that' }).click();
    await page.waitForURL(/tried=no-decoder/);
    expect(await answersAs(page, cause)).toBeLessThan(MOST);
  }
  const fixClass = SIGN_MODEL.causes.find(({ id }) => id === cause)?.fixClass ?? '';
  const title = FIX_TITLE.get(fixClass) ?? 'no page';
  // Sure of it, or on a lesser chance and so said.
  expect([title, `It may be this: ${title}`]).toContain(await page.locator('.walk h1').textContent());
  expect(page.url()).not.toContain(encodeURIComponent(text.slice(0, 12)));
  expect(await problems()).toEqual([]);
  await close();
});

// Every danger can be seen where its act is done, in each form of a built page: whole, one step at a link to it, on paper, and without colour.
import { describe, expect, test } from 'vitest';
import { stepsOf, wordsOf } from '../content/folder.ts';
import { type Opened, open } from './browser.ts';

const FIXES = new Map(wordsOf('en', 'fixes').map((page) => [page.id, page]));
const HARM = new Map(wordsOf('en', 'cautions').map(({ id, data }) => [id, String(data['harm'])]));
const LINE = new Map(wordsOf('en', 'cautions').map(({ id, data }) => [id, String(data['line'] ?? data['harm'])]));

/** A page for each kind of act that kills or hurts, the emergency page among them. */
const PAGES = [
  ...['switch-off-now', 'load-test-and-coin', 'exchange-a-supply', 'connect-a-booster', 'gap-both-rails'],
  ...['prove-the-gap', 'lay-a-feeder', 'measure-the-amperes', 'leak', 'two-sources', 'accessory-wiring'],
];

const cautionsOf = (id: string): readonly (readonly string[])[] => {
  const page = FIXES.get(id);
  return page === undefined ? [] : stepsOf(page).map(({ cautions }) => cautions);
};

/** What of a step's dangers cannot be seen, as it stands or in its one line. */
async function unseen(page: Opened['page'], step: number, cautions: readonly string[]): Promise<string[]> {
  const told = (await page.locator('.steps > li').nth(step).innerText()).replace(/\s+/g, ' ').toLowerCase();
  const has = (text: string | undefined): boolean => told.includes((text ?? '?').toLowerCase());
  return cautions.filter((id) => !(has(HARM.get(id)) || has(LINE.get(id)))).map((id) => `${id} at step ${step + 1}`);
}

describe.each(PAGES)('On the page %s', (id) => {
  const steps = cautionsOf(id);

  test('some step brings a danger', () => expect(steps.flat().length).toBeGreaterThan(0));

  test('all are seen on the whole page and on paper', async () => {
    const { page, close } = await open(`en/fixes/${id}/`, { width: 360 });
    const missing = async () => {
      const found: string[] = [];
      for (const [i, cautions] of steps.entries()) found.push(...(await unseen(page, i, cautions)));
      return found;
    };
    expect(await missing()).toEqual([]);
    await page.emulateMedia({ media: 'print' });
    expect(await missing()).toEqual([]);
    for (const caution of await page.locator('.steps .caution').all()) expect(await caution.isVisible()).toBe(true);
    await close();
  });

  test('those of a step are seen at a link to that step', async () => {
    for (const [i, cautions] of steps.entries()) {
      const { page, close } = await open(`en/fixes/${id}/#step-${i + 1}`, { width: 360, javaScript: false });
      expect(await unseen(page, i, cautions)).toEqual([]);
      expect(await page.locator('.steps > li').nth(i).isVisible()).toBe(true);
      await close();
    }
  });
});

test('the three ranks differ without colour: by frame and by word, also in forced colours', async () => {
  const { page, close } = await open('en/cautions/', { width: 360 });
  for (const forcedColors of ['none', 'active'] as const) {
    await page.emulateMedia({ forcedColors });
    const looks = await page.evaluate(() =>
      ['life', 'injury', 'damage'].map((rank) => {
        const box = document.querySelector(`.caution.${rank}`);
        if (box === null) return 'none';
        const { borderTopStyle, borderInlineStartStyle, borderInlineStartWidth } = getComputedStyle(box);
        return [borderTopStyle, borderInlineStartStyle, borderInlineStartWidth].join(' ');
      }),
    );
    expect(new Set(looks).size, looks.join(', ')).toBe(3);
  }
  const words = await page.locator('.caution em').allInnerTexts();
  expect([...new Set(words.map((word) => word.toLowerCase()))]).toEqual(['danger to life.', 'injury.', 'damage.']);
  await close();
});

// A fix on a phone: its first act stands on the first screen, and all of it, with nothing opened, is no more than six.
import { describe, expect, test } from 'vitest';
import { wordsOf } from '../content/folder.ts';
import { open } from './browser.ts';

const SCREEN = { width: 360, height: 740 };
const FIXES = wordsOf('en', 'fixes').map(({ id }) => id);

interface Measured {
  readonly id: string;
  readonly firstStep: number;
  readonly screens: number;
}

const told: Measured[] = [];

describe('At 360 by 740', () => {
  test('every fix is measured', { timeout: 180_000 }, async () => {
    const { page, close } = await open(`en/fixes/${FIXES[0]}/`, SCREEN);
    const site = page.url().replace(/en\/fixes\/.*/, '');
    for (const id of FIXES) {
      await page.goto(`${site}en/fixes/${id}/`);
      const [firstStep, below] = await page.evaluate(() => {
        const topOf = (what: string) => (document.querySelector(what)?.getBoundingClientRect().top ?? 0) + scrollY;
        // What passes it on stands below it, and is no part of it.
        return [topOf('.steps > li'), Math.min(...['.share', 'footer'].map(topOf).filter((top) => top > 0))] as const;
      });
      told.push({ id, firstStep, screens: below / 740 });
    }
    await close();
    expect(told).toHaveLength(FIXES.length);
    for (const { firstStep, screens } of told) expect(Math.min(firstStep, screens)).toBeGreaterThan(0);
  });

  test('the first step begins on the first screen', () =>
    expect(told.filter(({ firstStep }) => firstStep > SCREEN.height - 40)).toEqual([]));

  test('no fix is longer than six screens', () => expect(told.filter(({ screens }) => screens > 6)).toEqual([]));
});

// The search finds the right page from the words beginners use.
import { describe, expect, test } from 'vitest';
import { open } from './browser.ts';

/** What people say, and pages of which one must be among the first three found. */
const SAID: readonly (readonly [words: string, pages: readonly string[]])[] = [
  ['not enough juice', ['fixes/larger-supply/', 'fixes/booster-with-own-supply/', 'learn/larger-supply-first/']],
  ['underpowered', ['fixes/larger-supply/', 'learn/larger-supply-first/']],
  ['how many engines', ['learn/no-single-number/']],
  ['how many trains', ['learn/no-single-number/', 'fixes/power-is-enough/']],
  ['wall wart', ['fixes/larger-supply/', 'fixes/read-both-labels/', 'learn/larger-supply-first/']],
  ['brick', ['fixes/larger-supply/', 'fixes/read-both-labels/', 'learn/larger-supply-first/']],
  ['power pack', ['fixes/larger-supply/', 'fixes/read-both-labels/', 'learn/larger-supply-first/']],
  ['does not boost', ['learn/what-a-booster-adds/']],
  ['my booster does not boost', ['learn/what-a-booster-adds/']],
  ['which supply goes where', ['fixes/larger-to-command-station/', 'fixes/supplies-either-way/']],
  [
    'power district',
    [
      'fixes/more-districts/',
      'fixes/booster-with-own-supply/',
      'fixes/booster-with-freed-supply/',
      'learn/what-a-booster-adds/',
      'glossary/',
    ],
  ],
  ['one short stops everything', ['fixes/breakers-and-sub-districts/']],
  ['sub-district', ['fixes/breakers-and-sub-districts/', 'glossary/']],
  [
    'overload',
    ['fixes/larger-supply/', 'fixes/fewer-moving/', 'learn/no-single-number/', 'fixes/calm-the-consumption/'],
  ],
  ['power cycles', ['fixes/larger-supply/', 'fixes/put-on-in-two-groups/']],
  ['turns on and off', ['fixes/supply-too-small/', 'fixes/larger-supply/', 'fixes/put-on-in-two-groups/']],
  ['it trips at the gap', ['put-it-right/trips-at-gap/', 'fixes/reversed/']],
  ['second half is dead', ['put-it-right/stops-at-gap/', 'fixes/no-feed/']],
  ['short at a turnout', ['put-it-right/trips-at-one-spot/']],
  ['how thick wire', ['fixes/thicker-bus/', 'learn/voltage-along-the-track/', 'fixes/thin-wire/']],
  ['coach lamps', ['fixes/calm-the-consumption/', 'fixes/filament-lamps/']],
  ['current drain', ['fixes/calm-the-consumption/']],
  ['zu wenig Strom', ['fixes/larger-supply/', 'learn/larger-supply-first/', 'learn/no-single-number/']],
  [
    'Boosterkreis',
    [
      'fixes/booster-with-own-supply/',
      'fixes/booster-with-freed-supply/',
      'fixes/more-districts/',
      'learn/what-a-booster-adds/',
    ],
  ],
  // Words that differ from country to country find the same pages.
  ['house current', ['glossary/']],
  ['protective earth', ['glossary/']],
  ['fishplate', ['glossary/', 'fixes/bad-joiner/']],
  ['crosstie', ['glossary/']],
  ['set of points', ['glossary/', 'put-it-right/trips-at-one-spot/', 'put-it-right/accessories-misbehave/']],
  ['passenger car lamps', ['fixes/calm-the-consumption/', 'fixes/filament-lamps/']],
  ['short at the points', ['put-it-right/trips-at-one-spot/']],
  ['how many locomotives', ['learn/no-single-number/']],
  ['HO scale', ['glossary/', 'fixes/rail-voltage-too-high/', 'fixes/protection-set-wrong/']],
  ['00 gauge', ['glossary/']],
  // Danger leads to unplugging, whatever it is called.
  ['my rails bite', ['fixes/tingle/']],
  ['choc électrique', ['fixes/tingle/']],
  ['meterkast', ['fixes/house-protection/']],
  ['it hums', ['fixes/switch-off-now/']],
  ['2 A 4 A mean nothing to me', ['learn/no-single-number/', 'fixes/larger-supply/', 'fixes/read-both-labels/']],
];

describe('search', () => {
  test.each(SAID)('finds the right page for “%s”', async (words, expected) => {
    const { page, problems, close } = await open(`en/search/?q=${encodeURIComponent(words)}`);
    await page.locator('#results .list a').first().waitFor();
    const found = await page
      .locator('#results .list a')
      .evaluateAll((links) => links.slice(0, 3).map((link) => link.getAttribute('href') ?? ''));
    expect(
      found.some((address) => expected.some((one) => address.includes(`/en/${one}`))),
      found.join(' '),
    ).toBe(true);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('says so when nothing is found', async () => {
    const { page, close } = await open('en/search/?q=zzqxv');
    await page.getByText(/Nothing found/).waitFor();
    await close();
  });
});

test('a search that could not be loaded says so, and works with the next try once it can be had', async () => {
  const { page, context, close } = await open('en/search/');
  await context.route(/pagefind\.js$/, (route) => route.fulfill({ status: 404, body: '' }));
  await page.locator('main .ask input').fill('underpowered');
  await page.getByText('The search could not be loaded').waitFor();
  await context.unrouteAll();
  await page.locator('main .ask button').click();
  await page.locator('#results .list a').first().waitFor();
  await close();
});

// An answer copied as text: whoever reads it in a mail has the verdict, what holds tonight, every doubt, the steps with their dangers, the
// numbers, what was assumed, and the link. One case for each kind of verdict and each wizard.
import { describe, expect, test } from 'vitest';
import { WIRED_HOME } from '../wizards/homes.ts';
import { open } from './browser.ts';
import { linksIn, longOf } from './copied.ts';

type Texts = Readonly<Record<string, string>>;

const ENOUGH: Texts = {
  ...{ system: 'two-rail', scale: 'h0', modern: '4', older: '0', moving: '2' },
  ...{ 'supply-kind': 'dc', 'supply-volts': '16 V', 'supply-amps': '5 A', 'supply-plug': 'centre-plus' },
  ...{ 'unit-limit': '3 A', 'unit-input': 'dc', 'unit-input-volts': '16 V', 'unit-plug': 'centre-plus' },
};
const TOLD: Texts = {
  ...{ ...ENOUGH, sound: '0', stored: '0', coaches: '0', accessories: '0' },
  ...{ 'unit-rails': 'follows', 'own-use': 'handhelds' },
};
const CLUB: Texts = { ...ENOUGH, modern: '40', moving: '14', sound: '20', stored: '0', 'unit-limit': '5 A' };
const planned = (districts: string, amps: string): Texts => ({
  ...{ ...CLUB, divided: 'planned', 'plan-districts': districts },
  ...{ 'plan-limit': '5 A', 'plan-amps': amps, 'plan-busiest': 'unknown' },
});
const unit = (name: string, limit: string): Texts => ({
  ...{ [`${name}-input`]: 'dc', [`${name}-input-volts`]: '14-20 V', [`${name}-plug`]: 'centre-plus' },
  ...{ [`${name}-limit`]: limit, [`${name}-rails`]: 'follows' },
});
const supply = (name: string, volts: string, amps: string): Texts => ({
  ...{ [`${name}-kind`]: 'dc', [`${name}-volts`]: volts, [`${name}-amps`]: amps, [`${name}-plug`]: 'centre-plus' },
});
const TWO: Texts = { system: 'two-rail', scale: 'h0', ...unit('station', '3 A'), ...unit('booster', '5 A') };

const CASES: readonly (readonly [kind: string, wizard: string, told: Texts, chip: RegExp])[] = [
  ['surely enough', 'enough-current', TOLD, /enough|ample/],
  ['it depends, and a short may not trip', 'enough-current', { ...ENOUGH, 'supply-amps': '3 A' }, /depends/],
  ['surely not enough', 'enough-current', CLUB, /surely not/],
  ['labels first', 'enough-current', { ...ENOUGH, 'supply-amps': 'unknown' }, /labels first/],
  ['a stop', 'enough-current', { ...ENOUGH, 'supply-kind': 'ac' }, /stop/],
  ['a supply that cannot trip its unit', 'enough-current', { ...ENOUGH, 'supply-amps': '2 A' }, /trip/],
  ['a plan that holds', 'enough-current', planned('4', '5 A'), /depends/],
  ['a plan that fails', 'enough-current', planned('3', '6 A'), /not enough/],
  [
    'one supply to change',
    'which-supply-where',
    { ...TWO, ...supply('one', '16 V', '3 A'), ...supply('two', '18 V', '5 A') },
    /not yet/,
  ],
  [
    'one way round',
    'which-supply-where',
    { ...TWO, ...supply('one', '18 V', '3 A'), ...supply('two', '18 V', '5 A') },
    /one way/,
  ],
  ['wiring that will do', 'wire-it', WIRED_HOME, /./],
  [
    'wiring that fails',
    'wire-it',
    { ...WIRED_HOME, 'bus-length': '15 m', 'track-length': '20 m', 'wire-amps': '2 A' },
    /./,
  ],
  [
    'wiring that nobody knows',
    'wire-it',
    { ...WIRED_HOME, 'bus-length': 'unknown', 'bus-wire': 'unknown', 'track-length': 'unknown' },
    /not known|./,
  ],
];

/** What the page says and the copy has to say: verdict, warnings, tonight, the one thing to do, what decides, doubts, steps, dangers, assumptions. */
const SAID = [
  ...['.answer .tag', 'h1.verdict', '.answer .lead', '.answer .warning', '.answer .tonight'],
  ...[
    '.to-do > p:not(.acts)',
    '.decides > p:not(.acts)',
    '.steps > li > .step-at + p',
    '.steps .caution em',
    '.assumed li',
  ],
];

describe('copied as text', () => {
  test.each(CASES)('%s', { timeout: 60_000 }, async (_, wizard, told, chip) => {
    const { page, context, close } = await open(`en/work-it-out/${wizard}/?${new URLSearchParams(told)}`);
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.locator('#answer[aria-busy="false"]').waitFor();
    await page.locator('.share').waitFor();
    const said: Record<string, string[]> = {};
    for (const what of SAID)
      said[what] = (await page.locator(what).allTextContents())
        .map((text) => text.trim())
        .filter((text) => text !== '');
    await page.getByRole('button', { name: 'Copy as text' }).click();
    await page.getByText('Copied').waitFor();
    const text = await page.evaluate(() => navigator.clipboard.readText());
    expect(said['.answer .tag']?.[0]).toMatch(chip);
    expect(said['h1.verdict']).toHaveLength(1);
    expect(said['.steps > li > .step-at + p']?.length).toBeGreaterThan(0);
    const words = (of: string): string => of.replace(/\s+/g, ' ');
    const dropped = Object.values(said)
      .flat()
      .filter((one) => !words(text).includes(words(one)));
    expect(dropped).toEqual([]);
    expect(text).toContain('How you know it worked: ');
    const [last = ''] = linksIn(text).slice(-1);
    expect(text.trimEnd().endsWith(last)).toBe(true);
    expect(longOf(last)).toBe(page.url().split('#')[0]);
    await close();
  });
});

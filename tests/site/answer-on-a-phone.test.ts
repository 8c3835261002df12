// An answer on a phone: its first act stands on the first screen, all of it with nothing opened is no more than four, and nothing is said twice.
import { describe, expect, test } from 'vitest';
import { WIRED_HOME } from '../wizards/homes.ts';
import { TO_SHARE_OUT } from '../wizards/outcomes.ts';
import { open } from './browser.ts';

const SCREEN = { width: 360, height: 740 };
const MOST_SCREENS = 4;

type Texts = Readonly<Record<string, string>>;

const ENOUGH: Texts = {
  system: 'two-rail',
  scale: 'h0',
  modern: '4',
  older: '0',
  moving: '2',
  'supply-kind': 'dc',
  'supply-volts': '16 V',
  'supply-amps': '5 A',
  'supply-plug': 'centre-plus',
  'unit-limit': '3 A',
  'unit-input': 'dc',
  'unit-input-volts': '16 V',
  'unit-plug': 'centre-plus',
};
const TOLD: Texts = {
  ...ENOUGH,
  sound: '0',
  stored: '0',
  coaches: '0',
  accessories: '0',
  'unit-rails': 'follows',
  'own-use': 'handhelds',
};
const CLUB: Texts = {
  ...TOLD,
  modern: '30',
  older: '10',
  sound: '10',
  moving: '16',
  coaches: '20',
  lamps: 'led',
  'supply-volts': '18 V',
  'supply-amps': '8 A',
  'unit-limit': '5 A',
  'unit-input-volts': '19 V',
  'unit-rails': 'set',
  'unit-rail-volts': '15 V',
  'own-use': 'many',
};
const FORTY: Texts = {
  ...ENOUGH,
  modern: '40',
  moving: '14',
  sound: '20',
  stored: '0',
  'supply-volts': '18 V',
  'unit-limit': '5 A',
  'unit-input-volts': '14-20 V',
};
const SMALL_GARDEN: Texts = {
  ...ENOUGH,
  scale: '1',
  modern: '10',
  moving: '6',
  'supply-volts': '20 V',
  'unit-limit': '5 A',
  'unit-input-volts': '14-20 V',
};
const SIX: Texts = {
  ...CLUB,
  moving: '12',
  districts: '6',
  'traffic-a': '2',
  ...Object.fromEntries(
    [...'bcdef'].flatMap((letter) => [
      [`limit-${letter}`, letter === 'c' ? '3 A' : '5 A'],
      [`amps-${letter}`, letter === 'd' ? '4 A' : '8 A'],
      [`traffic-${letter}`, '2'],
    ]),
  ),
};
const planOf = (districts: string, limit = 'unknown', amps = 'unknown', busiest = 'unknown'): Texts => ({
  divided: 'planned',
  'plan-districts': districts,
  'plan-limit': limit,
  'plan-amps': amps,
  'plan-busiest': busiest,
});
const Z: Texts = { ...TOLD, scale: 'z', modern: '2', moving: '1', 'supply-volts': '20 V', 'unit-input-volts': '20 V' };
const GARDEN: Texts = {
  ...TOLD,
  scale: '1',
  modern: '0',
  older: '4',
  moving: '3',
  'supply-volts': '20 V',
  'unit-limit': '10 A',
  'unit-input-volts': '20 V',
  coaches: '10',
  lamps: 'filament',
};
const AC: Texts = {
  ...TOLD,
  'supply-kind': 'ac',
  'supply-volts': '18 V',
  'supply-amps': '52 VA',
  'supply-plug': 'terminals',
  'unit-input': 'either',
  'unit-input-volts': '18 V',
  'unit-plug': 'terminals',
};
const GARDEN_WIRE: Texts = {
  ...WIRED_HOME,
  scale: '1',
  'wire-volts': '20 V',
  'wire-trip': '10 A',
  'wire-amps': '6 A',
  'supply-volts': '22 V',
  'supply-amps': '12 A',
  'bus-length': '40 m',
  'bus-wire': '2.5 mm2',
  'track-length': '80 m',
  'feeder-count': '3',
  'rail-kind': 'large-brass',
};
const PLACE: Texts = {
  system: 'two-rail',
  scale: 'h0',
  ...unit('station'),
  ...unit('booster'),
  ...supply('one', '16 V', '3 A'),
  ...supply('two', '16 V', '5 A'),
};

const UNLIKE: Texts = {
  ...PLACE,
  'station-rails': 'follows',
  'booster-rails': 'follows',
  'booster-input-volts': '14-20 V',
  'booster-limit': '5 A',
  ...supply('two', '18 V', '5 A'),
};

function unit(name: string): Texts {
  return {
    [`${name}-input`]: 'dc',
    [`${name}-input-volts`]: '16 V',
    [`${name}-plug`]: 'centre-plus',
    [`${name}-limit`]: '3 A',
    [`${name}-rails`]: 'set',
    [`${name}-rail-volts`]: '14 V',
  };
}

function supply(name: string, volts: string, amps: string, kind = 'dc'): Texts {
  return {
    [`${name}-kind`]: kind,
    [`${name}-volts`]: volts,
    [`${name}-amps`]: amps,
    [`${name}-plug`]: kind === 'dc' ? 'centre-plus' : 'terminals',
  };
}

const CASES: readonly (readonly [name: string, wizard: string, told: Texts])[] = [
  ['ample, nothing more told', 'enough-current', ENOUGH],
  ['ample, all told', 'enough-current', TOLD],
  ['equal ratings', 'enough-current', { ...TOLD, 'supply-amps': '3 A' }],
  ['a supply that cannot trip its unit', 'enough-current', { ...ENOUGH, 'supply-amps': '2 A' }],
  [
    'a supply that cannot trip, and too many trains',
    'enough-current',
    { ...ENOUGH, modern: '6', older: '4', moving: '5', 'supply-amps': '2 A', 'unit-limit': '5 A' },
  ],
  [
    'the same with lit coaches, all told',
    'enough-current',
    {
      ...TOLD,
      modern: '6',
      older: '4',
      moving: '4',
      coaches: '12',
      lamps: 'filament',
      'supply-amps': '2 A',
      'unit-limit': '5 A',
    },
  ],
  [
    'thirty coaches with filament lamps',
    'enough-current',
    { ...TOLD, modern: '6', moving: '3', coaches: '30', lamps: 'filament' },
  ],
  ['fourteen trains with sound', 'enough-current', { ...TOLD, modern: '14', sound: '14' }],
  [
    'a hundred trains',
    'enough-current',
    { ...TOLD, modern: '100', moving: '100', sound: '100', coaches: '500', lamps: 'filament', 'supply-amps': '3 A' },
  ],
  ['more districts', 'enough-current', CLUB],
  [
    'a supply below its unit, five of seven moving',
    'enough-current',
    { ...TOLD, modern: '7', moving: '5', 'supply-amps': '2.5 A' },
  ],
  ['a club of forty on 5 A', 'enough-current', FORTY],
  [
    'a hundred moving of a hundred on 5 A',
    'enough-current',
    { ...FORTY, modern: '100', moving: '100', sound: 'unknown' },
  ],
  [
    'ten trains of which six have sound, equal ratings',
    'enough-current',
    { ...ENOUGH, modern: '10', moving: '5', sound: '6', stored: '0', 'supply-amps': '3 A' },
  ],
  ['a garden on a unit for 5 A', 'enough-current', SMALL_GARDEN],
  ['forty, a plan of four on equal ratings', 'enough-current', { ...FORTY, ...planOf('4', '5 A', '5 A', '3') }],
  ['forty, a plan of six', 'enough-current', { ...FORTY, ...planOf('6', '5 A', '6 A') }],
  ['forty, a plan of three', 'enough-current', { ...FORTY, ...planOf('3') }],
  ['six districts that there are', 'enough-current', SIX],
  ['three districts that are planned', 'enough-current', { ...CLUB, moving: '8', ...planOf('3') }],
  ['a plan with too few of them', 'enough-current', { ...CLUB, moving: '8', ...planOf('2', '3 A', '5 A', '7') }],
  ['a garden in scale 1', 'enough-current', GARDEN],
  ['Z on 20 V', 'enough-current', { ...Z, 'supply-amps': '2 A', 'unit-limit': '1.5 A' }],
  ['Z on 20 V, behind a unit of 3 A', 'enough-current', Z],
  ['an a.c. transformer', 'enough-current', AC],
  [
    'a wall plug of 1 A for N',
    'enough-current',
    {
      ...ENOUGH,
      scale: 'n',
      modern: '2',
      moving: '1',
      'supply-volts': '12 V',
      'supply-amps': '1 A',
      'unit-limit': '1 A',
      'unit-input-volts': '12 V',
    },
  ],
  ['24 V on an input for 16 V', 'enough-current', { ...TOLD, 'supply-volts': '24 V' }],
  ['amperes not read', 'enough-current', { ...TOLD, 'supply-amps': 'unknown' }],
  ['an oval to divide', 'share-out', TO_SHARE_OUT['divide-the-track']],
  ['two ovals to divide', 'share-out', { ...TO_SHARE_OUT['divide-the-track'], shape: 'double-oval' }],
  ['good wiring', 'wire-it', WIRED_HOME],
  ['good wiring, 5 A on 5 A', 'wire-it', { ...WIRED_HOME, 'wire-trip': '5 A' }],
  [
    'good wiring, Z on 20 V',
    'wire-it',
    {
      ...WIRED_HOME,
      scale: 'z',
      'wire-volts': '20 V',
      'wire-trip': '1.5 A',
      'wire-amps': '0.5 A',
      'supply-volts': '20 V',
      'supply-amps': '3 A',
    },
  ],
  [
    'one feeder at the end of an oval',
    'wire-it',
    {
      ...WIRED_HOME,
      'bus-length': '1 m',
      'bus-wire': '0.75 mm2',
      'track-length': '8 m',
      'feed-by': 'pair',
      'track-shape': 'ends',
      joints: 'sectional',
    },
  ],
  [
    'a long bus',
    'wire-it',
    { ...WIRED_HOME, 'bus-length': '15 m', 'track-length': '20 m', 'feeder-count': '4', 'wire-amps': '2 A' },
  ],
  [
    'a bus that wants its unit in the middle, equal ratings',
    'wire-it',
    {
      ...{ system: 'two-rail', scale: 'h0', 'wire-amps': '2', 'wire-trip': '3', 'wire-volts': '16' },
      ...{ 'bus-length': '14 m', 'bus-wire': '0.75 mm2', 'track-length': '14 m', 'feed-by': 'bus' },
      ...supply('supply', '16 V', '3 A'),
    },
  ],
  ['a garden of 80 m', 'wire-it', GARDEN_WIRE],
  ['a supply on which the unit cannot trip', 'wire-it', { ...WIRED_HOME, 'supply-amps': '2 A' }],
  ['two supplies for two units', 'which-supply-where', PLACE],
  ['two supplies of which one suits both units', 'which-supply-where', UNLIKE],
  [
    'two supplies that may not trip their units',
    'which-supply-where',
    { ...UNLIKE, 'one-volts': '18 V', 'station-input-volts': '14-20 V' },
  ],
  [
    'two supplies that must not go into their units',
    'which-supply-where',
    { ...PLACE, ...supply('one', '16 V', '3 A', 'ac'), ...supply('two', '18 V', '5 A') },
  ],
  [
    'two supplies above the range of N',
    'which-supply-where',
    {
      ...PLACE,
      scale: 'n',
      'station-rail-volts': '18 V',
      'booster-rail-volts': '18 V',
      'station-limit': '2 A',
      'booster-limit': '2 A',
      ...supply('one', '16 V', '3 A'),
    },
  ],
];

interface Measured {
  readonly name: string;
  /** Of the whole page, its foot with it. */
  readonly screens: number;
  /** Where the button of the first step ends, or the first step begins where steps stand open; pixels. */
  readonly firstAct: number;
  readonly headline: string;
  readonly toDo: string;
  /** The picture of a division: pixels of it that are out of sight, and how large its smallest letters are. */
  readonly picture: { readonly hidden: number; readonly letters: number } | undefined;
}

const measured: Measured[] = [];
/** Where “Continue” ends on a question with one choice once something is chosen, pixels. */
let onward = Number.POSITIVE_INFINITY;
let lateSaid: readonly number[] = [];

describe('At 360 by 740, nothing opened', () => {
  test('every case is measured', { timeout: 180_000 }, async () => {
    const { page, close } = await open('en/privacy/', SCREEN);
    const site = page.url().replace(/en\/privacy\/.*/, 'en/work-it-out/');
    for (const [name, wizard, told] of CASES) {
      await page.goto(`${site}${wizard}/?${new URLSearchParams(told)}`);
      await page.locator('#answer[aria-busy="false"]').waitFor();
      await page.locator('.share').waitFor();
      await page.locator('.share-picture:empty').waitFor({ state: 'detached' });
      const found = await page.evaluate(() => {
        const box = (what: string) => document.querySelector(what)?.getBoundingClientRect();
        const text = (what: string) => document.querySelector(what)?.textContent?.trim().replace(/\.$/, '') ?? '';
        return {
          screens: document.documentElement.scrollHeight / 740,
          firstAct: scrollY + (box('.to-do .button')?.bottom ?? box('.steps > li')?.top ?? Number.POSITIVE_INFINITY),
          headline: text('h1'),
          toDo: text('.to-do h2'),
          picture: [...document.querySelectorAll('.picture .diagram-view')].map((view) => ({
            hidden: view.scrollWidth - view.clientWidth,
            letters: Math.min(
              ...[...view.querySelectorAll<SVGTextElement>('.letter')].map(
                (one) => Number.parseFloat(getComputedStyle(one).fontSize) * (one.getScreenCTM()?.a ?? 0),
              ),
            ),
          }))[0],
        };
      });
      measured.push({ name, ...found });
    }
    await page.goto(`${site}share-out/`);
    await page.getByRole('radio').first().check();
    const box = await page.getByRole('button', { name: 'Continue' }).boundingBox();
    if (box !== null) onward = box.y + box.height;
    // Without a worker, and without what would work it out in its place: said, and tried again.
    await page.addInitScript(() => Reflect.deleteProperty(window, 'Worker'));
    const sharing = /\/sharing\.[^/]*\.js/;
    // Nothing comes: what takes so long is said, and not before eight seconds have passed.
    await page.clock.install();
    await page.route(sharing, () => undefined);
    await page.goto(`${site}share-out/?${new URLSearchParams(TO_SHARE_OUT['divide-the-track'])}`);
    const late = page.getByText('It takes longer than usual.');
    await page.getByText('Working it out').waitFor();
    await page.clock.fastForward(4000);
    const early = await late.count();
    await page.clock.fastForward(4000);
    await late.waitFor();
    lateSaid = [early, await late.count()];
    await page.unroute(sharing);
    await page.route(sharing, (route) => route.abort());
    await page.goto(`${site}share-out/?${new URLSearchParams(TO_SHARE_OUT['divide-the-track'])}`);
    await page.getByText('This part could not be loaded.').waitFor();
    await page.unroute(sharing);
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.locator('#answer').waitFor();
    await close();
    expect(measured).toHaveLength(CASES.length);
    for (const { screens, firstAct } of measured) expect(Math.min(screens, firstAct / 100)).toBeGreaterThan(1);
  });

  test('no answer is longer than four screens', () =>
    expect(measured.filter(({ screens }) => screens > MOST_SCREENS)).toEqual([]));

  test('a division is seen whole, with letters of 12 pixels and more', () => {
    const pictures = measured.flatMap(({ name, picture }) => (picture === undefined ? [] : [{ name, ...picture }]));
    expect(pictures).toHaveLength(2);
    expect(pictures.filter(({ hidden, letters }) => hidden > 0 || !(letters >= 11.9))).toEqual([]);
  });

  test('after eight seconds, and not after four, it is said that it takes longer', () =>
    expect(lateSaid).toEqual([0, 1]));

  test('whoever has chosen sees how to go on', () => expect(onward).toBeLessThan(SCREEN.height));

  test('the first act is on the first screen', () =>
    expect(measured.filter(({ firstAct }) => firstAct > SCREEN.height)).toEqual([]));

  test('what to do does not say the headline again', () => {
    const told = measured.filter(({ toDo }) => toDo !== '');
    expect(told.length).toBeGreaterThan(15);
    expect(told.filter(({ headline, toDo }) => headline.startsWith(toDo))).toEqual([]);
  });
});

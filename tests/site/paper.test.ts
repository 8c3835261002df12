// On paper: an answer with all its steps, or a fix, takes two sheets at the most and few bytes, and nothing stands there that can only be pressed.
import { expect, test } from 'vitest';
import { open } from './browser.ts';

const TRAINS = 'modern=4&moving=3&older=2&scale=h0&system=two-rail';
const UNIT = 'unit-input=dc&unit-input-volts=18&unit-limit=3&unit-plug=unknown&unit-rails=follows';
const COUNTS = 'accessories=0&coaches=0&evening=unknown&own-use=bare&sound=0&stored=0';

const ANSWERS = {
  'a supply that cannot trip its unit': `enough-current/?${COUNTS}&${TRAINS}&supply-amps=2&supply-kind=dc&supply-plug=unknown&supply-volts=16&${UNIT}`,
  'power that is enough': `enough-current/?${TRAINS}&supply-amps=4&supply-kind=dc&supply-plug=unknown&supply-volts=16&${UNIT}`,
  'wiring that must be changed':
    'wire-it/?bus-length=12&bus-wire=0.75&feed-by=bus&scale=h0&supply-amps=4&supply-kind=dc&supply-plug=unknown&supply-volts=15&system=two-rail' +
    '&track-length=12&wire-amps=1.5&wire-trip=3&wire-volts=15',
  'two supplies that differ':
    'which-supply-where/?booster-input=dc&booster-input-volts=19&booster-limit=3&booster-plug=unknown&booster-rails=follows&busier=same&evening=2' +
    `&${TRAINS}&one-amps=4&one-kind=dc&one-plug=unknown&one-volts=18&sound=0&station-input=dc&station-input-volts=19&station-limit=3` +
    '&station-plug=unknown&station-rails=follows&stored=0&two-amps=5&two-kind=dc&two-plug=unknown&two-volts=15',
};

const PAGES = [
  ...Object.entries(ANSWERS).map(([what, path]) => [`the answer to ${what}`, `en/work-it-out/${path}`] as const),
  ...['more-feeders', 'reversed', 'larger-supply', 'switch-off-now'].map(
    (fix) => [`the fix ${fix}`, `en/fixes/${fix}/`] as const,
  ),
];

const MOST_SHEETS = 2;
const MOST_BYTES = 300 * 1024;

test.each(PAGES)('%s', async (_, path) => {
  const { page, close } = await open(path);
  if (path.includes('work-it-out')) await page.locator('.share').waitFor();
  const pdf = await page.pdf({ format: 'A4' });
  const sheets = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? [];
  expect(sheets.length).toBeGreaterThan(0);
  expect(sheets.length).toBeLessThanOrEqual(MOST_SHEETS);
  expect(pdf.length).toBeLessThanOrEqual(MOST_BYTES);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.steps > li:visible').count()).toBeGreaterThan(2);
  const pressed =
    'button, input, select, details:not([open], .said) > summary, .share, .step-ways, .step-at, a[href^="#"]';
  expect(await page.locator(`main :is(${pressed}):visible`).allTextContents()).toEqual([]);
  // What was said has no addresses beside it.
  const afterKnown = await page
    .locator('.known a')
    .evaluateAll((links) =>
      links.map((link) => getComputedStyle(link, '::after').content).filter((content) => content !== 'none'),
    );
  expect(afterKnown).toEqual([]);
  await close();
});

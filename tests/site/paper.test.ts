// On paper: an answer with all its steps, or a fix, takes two sheets at the most, a walk one; few bytes, the link and its code, what was said,
// every danger of every step, and nothing that can only be pressed.
import { describe, expect, test } from 'vitest';
import { TO_ENOUGH_CURRENT, TO_WHICH_SUPPLY, TO_WIRE_IT } from '../wizards/outcomes.ts';
import { open } from './browser.ts';
import { found } from './copied.ts';
import { nothingIsWarm, type Page } from './danger.ts';
import { readCode } from './read-code.ts';
import { someOf } from './some.ts';

const TRAINS = 'modern=4&moving=3&older=2&scale=h0&system=two-rail';
const UNIT = 'unit-input=dc&unit-input-volts=18&unit-limit=3&unit-plug=unknown&unit-rails=follows';

/** As they are told in few words: most stands on assumptions, which are on paper too. */
const QUICK = {
  'what was told quickly': `enough-current/?${TRAINS}&supply-amps=4&supply-kind=dc&supply-plug=unknown&supply-volts=16&${UNIT}`,
  'a plan of three districts': `enough-current/?aim=enough&divided=planned&draw=count&${TRAINS.replace('moving=3', 'moving=6').replace('modern=4', 'modern=8')}&plan-amps=4&plan-busiest=5&plan-districts=3&plan-limit=3&supply-amps=4&supply-kind=dc&supply-plug=unknown&supply-volts=16&${UNIT}`,
};

const WIZARDS = { 'enough-current': TO_ENOUGH_CURRENT, 'which-supply-where': TO_WHICH_SUPPLY, 'wire-it': TO_WIRE_IT };

const ANSWERS = [
  ...Object.entries(QUICK).map(([what, path]) => [what, path] as const),
  ...Object.entries(WIZARDS).flatMap(([wizard, outcomes]) =>
    Object.entries(outcomes).map(
      ([outcome, told]) => [`${wizard}: ${outcome}`, `${wizard}/?${new URLSearchParams(told)}`] as const,
    ),
  ),
];

const GAP = '?when-it-happens=at-the-gap&analogue-one-at-the-gap=turned-round&meter-same-and-diagonal=same-rail-large';
/** What it is, where, the sheets it may take, the pictures on them. */
const WALKS = [
  ['that asks with a picture', 'trips-at-gap/?when-it-happens=at-the-gap&told=yes&tools=lamps.multimeter', 1, 1],
  ['with a repair already tried', `trips-at-gap/${GAP}&told=yes&tools=multimeter&tried=reversed`, 1, 0],
  ['that asks what is at hand', `trips-at-gap/${GAP}&told=yes`, 1, 0],
  ['that proposes a repair', `trips-at-gap/${GAP}&told=yes&tools=multimeter`, 1, 0],
  ['that is solved', `trips-at-gap/${GAP}&told=yes&tools=multimeter&fixed=reversed&isolation=fine&phase=fine`, 1, 0],
  ['whose repair is being done, with its steps', `trips-at-gap/${GAP}&told=yes&tools=multimeter&doing=reversed`, 2, 0],
] as const;

const MOST_SHEETS = 2;
const MOST_BYTES = 300 * 1024;

/** Prints as the button does: once the code is there. */
async function print(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.print = () => {
      document.body.dataset['printed'] = 'yes';
    };
  });
  await page.getByRole('button', { name: 'Print', exact: true }).first().click();
  await page.locator('body[data-printed]').waitFor();
}

async function expectOnPaper(page: Page, sheets: number): Promise<void> {
  const pdf = await page.pdf({ format: 'A4' });
  const found = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? [];
  expect(found.length).toBeGreaterThan(0);
  expect(found.length).toBeLessThanOrEqual(sheets);
  expect(pdf.length).toBeLessThanOrEqual(MOST_BYTES);
  await page.emulateMedia({ media: 'print' });
  const pressed =
    'button:not(.known *), input, select, details:not([open], .said) > summary, .share, .step-ways, .step-at, .step-link, a[href^="#"]';
  expect(await page.locator(`main :is(${pressed}):visible`).allTextContents()).toEqual([]);
  expect(await page.locator('.progress-line:visible, .trial:visible').count()).toBe(0);
  // What was said has no addresses beside it.
  const afterKnown = await page
    .locator('.known a')
    .evaluateAll((links) =>
      links.map((link) => getComputedStyle(link, '::after').content).filter((content) => content !== 'none'),
    );
  expect(afterKnown).toEqual([]);
  await expectNoLineCut(page);
}

/** WebKit draws a line of a grid or a flexible box half on one sheet and half on the next. */
async function expectNoLineCut(page: Page): Promise<void> {
  const around = await page.locator('.steps > li').evaluateAll((steps) =>
    steps.flatMap((step) => {
      const boxes: string[] = [];
      for (let box: Element | null = step; box !== null; box = box.parentElement) {
        const { display } = getComputedStyle(box);
        if (/grid|flex/.test(display)) boxes.push(`${box.localName}.${box.className}: ${display}`);
      }
      return boxes;
    }),
  );
  expect([...new Set(around)]).toEqual([]);
}

/** The short link, and the code that says the same. */
async function expectLinkAndCode(page: Page): Promise<void> {
  expect(await page.locator('.paper-link:visible').innerText()).toMatch(/\/en\/a\/\?1[\w-]+$/);
  expect(await page.locator('.paper-link .qr:visible').count()).toBe(1);
}

describe('On paper the answer to', () => {
  test.concurrent.each(someOf(ANSWERS, 3))('%s', async (_, path) => {
    const { page, problems, close } = await open(`en/work-it-out/${path}`);
    await found(page);
    await page.locator('.share').waitFor();
    await print(page);
    await expectOnPaper(page, MOST_SHEETS);
    await expectLinkAndCode(page);
    const { length: told } = [...new URL(page.url()).searchParams.keys()];
    expect(told).toBeGreaterThan(1);
    expect(await page.locator('.wizard > .said li:visible').count()).toBeGreaterThan(0);
    expect(await page.locator('h1.verdict:visible').count()).toBe(1);
    const steps = page.locator('.steps > li');
    // Where all is well, or nothing here applies, two steps say so.
    expect(await steps.count()).toBeGreaterThan(1);
    expect(await page.locator('.steps > li:visible').count()).toBe(await steps.count());
    expect(await page.locator('.steps .caution:visible').count()).toBe(await page.locator('.steps .caution').count());
    expect(await problems()).toEqual([]);
    await close();
  });
});

describe('On paper a walk', () => {
  test.each(WALKS)('%s', async (_, path, sheets, pictures) => {
    const { page, problems, close } = await open(`en/put-it-right/${path}`);
    await nothingIsWarm(page);
    await page.locator('.share').waitFor();
    await print(page);
    await expectOnPaper(page, sheets);
    await expectLinkAndCode(page);
    expect(await page.locator('.check-picture:visible').count()).toBe(pictures);
    expect(await page.locator('.on-paper:visible, .known:visible').first().innerText()).toMatch(/\S/);
    if (sheets === MOST_SHEETS) expect(await page.locator('.steps > li:visible').count()).toBeGreaterThan(2);
    expect(await problems()).toEqual([]);
    await close();
  });
});

describe('On paper the fix', () => {
  test.each(['more-feeders', 'reversed', 'larger-supply', 'switch-off-now', 'more-districts'])('%s', async (fix) => {
    const { page, problems, close } = await open(`en/fixes/${fix}/`);
    await print(page);
    await expectOnPaper(page, MOST_SHEETS);
    expect(await page.locator('.steps > li:visible').count()).toBeGreaterThan(2);
    expect(await page.locator('.paper-link:visible').innerText()).toBe(page.url());
    expect(await readCode(page)).toBe(page.url());
    expect(await problems()).toEqual([]);
    await close();
  });
});

test('On paper a lesson has its words of the glossary and how its figure is set, and nothing to press, to move or to try', async () => {
  const { page, close } = await open('en/learn/no-single-number/?total=6&moving=3');
  await page.locator('[data-pass-on-figure]').scrollIntoViewIfNeeded();
  await page.locator('#figure astro-island:not([ssr])').waitFor({ state: 'attached' });
  await page.emulateMedia({ media: 'print' });
  const pressed =
    'button:not(.term), input:not([type="text"]), summary:not(.answers summary), .set, .tries, .mark, .check > .small';
  expect(await page.locator(`main :is(${pressed}):visible`).count()).toBe(0);
  const text = await page.locator('.prose').first().innerText();
  expect(text).toMatch(/The line beside it is the usable current\./);
  expect(await page.locator('.live label:visible').allInnerTexts()).toContain('modern motors');
  expect(await page.locator('.live label:visible').allInnerTexts()).not.toContain('older motors');
  const values = await page
    .locator('.live input:visible')
    .evaluateAll((all) => all.map((one) => (one instanceof HTMLInputElement ? one.value : '')));
  expect(values.slice(0, 2)).toEqual(['6', '3']);
  await close();
});

test('The keys that print wait for the code too', async () => {
  const { page, close } = await open(`en/work-it-out/${QUICK['what was told quickly']}`);
  await page.locator('.share').waitFor();
  await page.evaluate(() => {
    window.print = () => {
      document.body.dataset['printed'] = String(document.querySelectorAll('.paper-link .qr').length);
    };
  });
  await page.keyboard.press('Control+p');
  await page.locator('body[data-printed="1"]').waitFor();
  await close();
});

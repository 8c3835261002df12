// Steps that are followed one at a time, with dirty hands: on the page of a fix and at an answer.
import { describe, expect, test } from 'vitest';
import { answered, type Opened, open } from './browser.ts';
import { linksIn, longOf } from './copied.ts';
import { overflow } from './measure.ts';

const FIX = 'en/fixes/more-feeders/';
const PLACED =
  'en/work-it-out/which-supply-where/?booster-input=dc&booster-input-volts=19&booster-limit=3&booster-plug=unknown&booster-rails=follows' +
  '&busier=same&evening=2&modern=4&moving=3&older=2&one-amps=4&one-kind=dc&one-plug=unknown&one-volts=18&scale=h0&sound=0' +
  '&station-input=dc&station-input-volts=19&station-limit=3&station-plug=unknown&station-rails=follows&stored=0&system=two-rail' +
  '&two-amps=5&two-kind=dc&two-plug=unknown&two-volts=15';

type Page = Opened['page'];
const shown = (page: Page): Promise<number> => page.locator('.steps > li:visible').count();

/** Goes from the first step on to the proof; what each step said. */
async function follow(page: Page): Promise<string[]> {
  const told: string[] = [];
  for (;;) {
    expect(await shown(page)).toBe(1);
    const step = page.locator('.steps > li:visible');
    told.push(await step.innerText());
    const next = step.locator('.step-ways .button');
    expect((await next.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    const last = (await next.getAttribute('href')) === '#proof';
    await next.click();
    if (last) return told;
  }
}

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('the page of a fix, %s', (_, javaScript) => {
  test('can be followed step by step to its proof, and each step says its own number, dangers and what comes then', async () => {
    const { page, close } = await open(FIX, { width: 360, javaScript });
    const all = await shown(page);
    expect(all).toBeGreaterThan(3);
    await page.getByRole('link', { name: 'One step at a time' }).click();
    const told = await follow(page);
    expect(told).toHaveLength(all);
    told.forEach((text, index) => {
      expect(text).toContain(`Step ${index + 1} of ${all}`);
    });
    expect(await page.getByRole('heading', { name: 'How you know it worked' }).isVisible()).toBe(true);
    expect(await shown(page)).toBe(0);
    await close();
  });

  test('opened at a step shows that step, whole again when it is left, and whole on paper', async () => {
    const { page, close } = await open(`${FIX}#step-2`, { width: 360, javaScript });
    expect(await shown(page)).toBe(1);
    expect(await page.locator('#step-2').isVisible()).toBe(true);
    expect(await page.locator('h1:visible').innerText()).toBe('Put in more feeders');
    expect(await page.locator('#step-2').innerText()).toMatch(/^Step 2 of \d+\n/);
    expect(await page.locator('.lead:visible').count()).toBe(0);
    expect(await overflow(page)).toEqual([]);
    await page.emulateMedia({ media: 'print' });
    expect(await shown(page)).toBeGreaterThan(3);
    await page.emulateMedia({ media: 'screen' });
    await page.getByRole('link', { name: 'Leave the steps' }).click();
    expect(await shown(page)).toBeGreaterThan(3);
    await close();
  });

  test('has every danger of a step in its one-step form', async () => {
    const { page, close } = await open(FIX, { width: 360, javaScript });
    const whole = await page
      .locator('.steps > li')
      .evaluateAll((steps) => steps.map((step) => step.querySelectorAll('.caution').length));
    for (const [index, count] of whole.entries()) {
      await page.goto(`${page.url().split('#')[0]}#step-${index + 1}`);
      expect(await page.locator('.steps > li:visible .caution:visible').count()).toBe(count);
    }
    await close();
  });
});

describe('an answer', () => {
  test('has its steps one tap away, one at a time, and Back leads to the answer again', async () => {
    const { page, problems, close } = await open(PLACED, { width: 360 });
    await answered(page);
    expect(await shown(page)).toBe(0);
    await page.getByRole('link', { name: 'Start with the first step' }).click();
    const told = await follow(page);
    expect(told.length).toBeGreaterThan(2);
    for (const _ of ['the proof', ...told]) await page.goBack();
    expect(await page.locator('h1.verdict').isVisible()).toBe(true);
    expect(await shown(page)).toBe(0);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('opened at a step shows that step', async () => {
    const { page, close } = await open(`${PLACED}#step-2`, { width: 360 });
    await page.locator('#step-2').waitFor();
    expect(await shown(page)).toBe(1);
    expect(page.url()).toMatch(/#step-2$/);
    expect(await page.locator('#steps h2:visible').innerText()).toMatch(/^Use two supplies alike/);
    expect(await page.locator('#step-2').innerText()).toMatch(/^Step 2 of 6\n/);
    expect(await page.locator('.lead:visible, .said:visible').count()).toBe(0);
    await page.getByRole('link', { name: 'Leave the steps' }).click();
    expect(await page.locator('h1.verdict').isVisible()).toBe(true);
    await close();
  });

  test('copied as text holds the verdict, each step, its dangers, the proof and the link', async () => {
    const { page, context, close } = await open(PLACED);
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await answered(page);
    const verdict = await page.locator('h1.verdict').innerText();
    const steps = await page.locator('.steps > li > .step-at + p').allTextContents();
    const dangers = await page.locator('.steps .caution em').allTextContents();
    await page.getByRole('button', { name: 'Copy as text' }).click();
    await page.getByText('Copied').waitFor();
    const text = await page.evaluate(() => navigator.clipboard.readText());
    expect(text).toContain(verdict);
    expect(steps.length).toBeGreaterThan(2);
    for (const step of steps) expect(text).toContain(step.trim());
    expect(dangers.length).toBeGreaterThan(0);
    for (const danger of dangers) expect(text).toContain(danger);
    expect(text).toContain('How you know it worked: ');
    const [last = ''] = linksIn(text).slice(-1);
    expect(text.trimEnd().endsWith(last)).toBe(true);
    expect(longOf(last)).toBe(page.url());
    await close();
  });
});

test('An answer on paper has its steps, what was said and its link, no empty trial and no folded workings', async () => {
  const { page, close } = await open(PLACED);
  await answered(page);
  await page.emulateMedia({ media: 'print' });
  expect(await shown(page)).toBeGreaterThan(2);
  expect(await page.locator('.paper-link').innerText()).toContain('two-volts=15');
  expect(await page.locator('.known').isVisible()).toBe(true);
  for (const left of ['.trial', '.share', '.folded', '.ways'])
    expect(await page.locator(`${left}:visible`).count()).toBe(0);
  await close();
});

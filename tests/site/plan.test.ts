// From a sheet in a link to the plan on the screen, on paper and as tables; and one test of it after the other, until something differs.
import { readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import { expect, test } from 'vitest';
import type { Sheet } from '../../src/wizards/sheet/index.ts';
import { DEMO_CLUB, DEMO_OVAL } from '../../src/wizards/sheet/index.ts';
import { CLUB, OVAL } from '../wizards/sheets.ts';
import { open } from './browser.ts';
import { accessibilityFaults, overflow } from './measure.ts';

/** Screens of 360 by 740 that the plan of a small layout may have. */
const MOST_SCREENS = 12;

const linked = (path: string, sheet: Sheet): string =>
  `${path}#sheet=${deflateRawSync(JSON.stringify(sheet)).toString('base64url')}`;

test('an oval with six trains has its two gaps, its steps and its tests on one page, on a phone and on paper', async () => {
  const { page, problems, close } = await open(linked('en/plan/', OVAL), { width: 360 });
  await page.getByText('Every district has enough power.').waitFor();
  expect(await page.locator('#plan-gaps .plan-gaps > li').count()).toBe(2);
  expect(await page.locator('#plan-steps .steps > li').count()).toBeGreaterThan(15);
  expect(await overflow(page)).toEqual([]);
  expect(await accessibilityFaults(page)).toEqual([]);
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Test sheet as a table (CSV)' }).click();
  const saved = readFileSync(await (await saving).path(), 'utf8');
  expect(saved.startsWith('\uFEFF"What","Where"')).toBe(true);
  expect(saved.split('\r\n').length).toBe(2 + (await page.locator('.plan-tests .places > li').count()));
  // A way within the page leaves the sheet in its address, and so the plan on the screen.
  await page.locator('.contents a').nth(4).click();
  await page.locator('#plan-steps .caution.again a').first().click();
  expect(await page.locator('#plan-steps .steps > li').count()).toBeGreaterThan(15);
  // Ten screens of a phone, as tall as most (common practice, no source).
  expect((await page.evaluate(() => document.documentElement.scrollHeight)) / 740).toBeLessThan(MOST_SCREENS);
  const pdf = await page.pdf({ format: 'A4' });
  expect((pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length).toBeLessThanOrEqual(6);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('main :is(button, .contents):visible').allTextContents()).toEqual([]);
  expect(await page.locator('.steps .caution:visible').count()).toBe(await page.locator('.steps .caution').count());
  expect(await problems()).toEqual([]);
  await close();
});

test('the demonstration of a club is planned, and says what comes first', async () => {
  const { page, problems, close } = await open(linked('en/plan/', DEMO_CLUB), { dark: true });
  await page.locator('.plan-verdict').waitFor();
  expect(await page.locator('#plan-gaps .plan-gaps > li').count()).toBe(8);
  expect(await overflow(page)).toEqual([]);
  expect(await problems()).toEqual([]);
  await close();
});

test('the demonstration of an oval, which nobody has divided, is divided by one tap, taken by another, and then planned', async () => {
  const { page, problems, close } = await open(linked('en/plan/', DEMO_OVAL), { width: 360 });
  await page.getByRole('link', { name: 'Divide it now' }).click();
  await page.getByText(/found\. The drawing shows/).waitFor();
  expect(new URL(page.url()).search).toBe('');
  expect(
    await page.getByRole('heading', { name: 'Where to divide it' }).evaluate((one) => one.getBoundingClientRect().top),
  ).toBeLessThan(740);
  await page.getByRole('button', { name: 'Take this division' }).first().click();
  await page.getByRole('link', { name: 'The whole plan of your layout' }).first().click();
  await page.locator('#plan-gaps .plan-gaps > li').first().waitFor();
  expect(await problems()).toEqual([]);
  await close();
});

test('a device without a sheet is led to one, and a link that holds none is told so', async () => {
  const { page, close } = await open('en/plan/');
  await page.getByText('No layout sheet is open on this device yet.').waitFor();
  await close();
  const broken = await open('en/plan/#sheet=abc');
  await broken.page.getByText('The link holds no layout sheet that can be read.').waitFor();
  await broken.close();
});

test('a test that shows something else ends the walk, and the way on knows what was seen at that gap', async () => {
  const { page, problems, close } = await open(linked('en/work-it-out/first-power-up/', CLUB), { width: 360 });
  for (let gap = 1; gap <= 3; gap += 1) await page.getByRole('button', { name: 'It stops as it enters' }).click();
  await page.getByText('Test 4 of').waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await overflow(page)).toEqual([]);
  // One test back, by the page or by the browser, and a page loaded anew loses nothing.
  await page.getByRole('button', { name: 'One test back' }).click();
  await page.getByText('Test 3 of').waitFor();
  await page.reload();
  await page.getByText('Test 3 of').waitFor();
  await page.getByRole('button', { name: 'It stops as it enters' }).click();
  await page.getByRole('button', { name: /^It comes alive with one of the two/ }).click();
  await page.getByRole('heading', { name: 'Stop here. Do not go on to the next test.' }).waitFor();
  const way = await page.getByRole('link', { name: 'Find the fault' }).getAttribute('href');
  expect(way).toBe(
    '/en/put-it-right/since-rewired/?other-locomotive-runs-on=stops&jumper-test=alive-with-one&what-happens=just-testing&how-many-parts=several&what-feeds-accessories=own-supply&told=yes',
  );
  expect(await problems()).toEqual([]);
  await close();
});

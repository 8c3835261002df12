// Links to answers carry the release and the verdict: in the address line of an answer, and nowhere on the way.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { answered, type Opened, open } from './browser.ts';
import { copiedBy, found, longOf } from './copied.ts';
import { nothingIsWarm } from './danger.ts';

type Page = Opened['page'];

const { version }: { version: string } = JSON.parse(readFileSync('package.json', 'utf8'));
const SCOPE = 'en/work-it-out/wire-it/';
const WIRE = `${SCOPE}?bus-length=10+m&bus-wire=2.5+mm2&feed-by=pair&joints=fed&rail-kind=code-100&scale=h0&system=two-rail&track-length=5+m&track-shape=ends&supply-amps=4+A&supply-kind=dc&supply-plug=centre-plus&supply-volts=16+V&wire-amps=1+A&wire-trip=3+A&wire-volts=15+V`;
const WALK =
  'en/put-it-right/trips-at-gap/?when-it-happens=at-the-gap&analogue-one-at-the-gap=turned-round&meter-same-and-diagonal=same-rail-large&told=yes&tools=multimeter';

const made = (page: Page): string | null => new URL(page.url()).searchParams.get('made');
const verdict = async (page: Page): Promise<void> => answered(page);
const said = async (page: Page): Promise<string[]> => page.locator('.made-then').allTextContents();

test('whoever answers has it in the address of the answer only', async () => {
  const { page, problems, close } = await open(SCOPE);
  await page.locator('form').waitFor();
  expect(made(page)).toBeNull();
  await page.getByLabel(/three/i).first().check();
  await page.getByRole('button', { name: 'Continue' }).click();
  await verdict(page);
  await found(page);
  expect(made(page)).toBe(`${version}-out-of-scope-three-rail`);
  expect(await said(page)).toEqual([]);
  await page.getByRole('link', { name: /Back/ }).first().click();
  await page.locator('form').waitFor();
  expect(made(page)).toBeNull();
  await page.goBack();
  await verdict(page);
  expect(made(page)).toBe(`${version}-out-of-scope-three-rail`);
  expect(await problems()).toEqual([]);
  await close();
});

test('an old link without it works as ever, and carries it from then on', async () => {
  const { page, close } = await open(WIRE);
  await verdict(page);
  await found(page);
  expect(made(page)).toMatch(new RegExp(`^${version}-[a-z-]+$`));
  expect(await said(page)).toEqual([]);
  await close();
});

test('a link of an earlier release says what it said, also when it is opened anew; what is passed on says what is said now', async () => {
  const { page, context, problems, close } = await open(`${WIRE}&made=0.0.1-booster-near-load`);
  await verdict(page);
  const sentence = /^This link was made with an earlier release, which said: “.+”\.$/;
  await page.locator('.made-then').waitFor();
  expect((await said(page))[0]).toMatch(sentence);
  expect(made(page)).toMatch(new RegExp(`^${version}-`));
  await page.reload();
  await page.locator('.made-then').waitFor();
  expect((await said(page))[0]).toMatch(sentence);
  expect(await copiedBy({ page, context }, 'Copy the long link')).toBe(page.url());
  expect(longOf(await copiedBy({ page, context }, 'Copy the link'))).toBe(page.url());
  expect(await problems()).toEqual([]);
  await close();
});

test('a verdict that no release gives any more is said to be one', async () => {
  const { page, close } = await open(`${WIRE}&made=0.0.1-more-gremlins`);
  await page.locator('.made-then').waitFor();
  expect((await said(page))[0]).toMatch(/not said any more/);
  await close();
});

test('what can not be read is no problem of the link', async () => {
  for (const address of [`${WIRE}&made=%3Cscript%3E`, `${WALK}&made=yesterday`]) {
    const { page, problems, close } = await open(address);
    if (address.startsWith(WALK)) await nothingIsWarm(page);
    await verdict(page);
    await found(page);
    expect(await page.getByRole('alert').count()).toBe(0);
    expect(await said(page)).toEqual([]);
    expect(await problems()).toEqual([]);
    await close();
  }
});

test('a walk has it where it proposes and where it is solved, not while one mends', async () => {
  const { page, problems, close } = await open(`${WALK}&made=0.0.1-dirty`);
  await nothingIsWarm(page);
  await verdict(page);
  await page.locator('.made-then').waitFor();
  expect((await said(page))[0]).toMatch(/^This link was made with an earlier release, which said: “.*[Dd]irt.*”\.$/);
  expect(made(page)).toBe(`${version}-reversed`);
  await page.getByRole('button', { name: 'I’ll do this now' }).click();
  await page.locator('.steps').waitFor();
  expect(made(page)).toBeNull();
  expect(await said(page)).toEqual([]);
  await page.goBack();
  await page.locator('.made-then').waitFor();
  expect(made(page)).toBe(`${version}-reversed`);
  expect(await problems()).toEqual([]);
  await close();
});

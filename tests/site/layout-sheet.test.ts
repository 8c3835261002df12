// The layout sheet in a browser: begun from a shape, changed by keyboard, pasted, undone, carried in a file and a link; and what happens to a
// device meanwhile (two tabs, no room, damage) loses nothing.
import { readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DEMO_CLUB, SHAPES, writeSheet } from '../../src/wizards/sheet/index.ts';
import { type Opened, open, site } from './browser.ts';
import { accessibilityFaults, overflow } from './measure.ts';

type Page = Opened['page'];

const SHEET = 'en/layout-sheet/';
const WIRE =
  'en/work-it-out/wire-it/?bus-length=10+m&bus-wire=2.5+mm2&feed-by=pair&joints=fed&rail-kind=code-100&scale=h0&system=two-rail&track-length=5+m&track-shape=ends&supply-amps=4+A&supply-kind=dc&supply-plug=centre-plus&supply-volts=16+V&wire-amps=1+A&wire-trip=3+A&wire-volts=15+V';

const start = (page: Page, what: string): Promise<void> =>
  page.getByRole('button', { name: what, exact: true }).click();
const kept = (page: Page): Promise<void> => page.getByText('Kept on this device.').waitFor();
const name = (page: Page) => page.getByLabel('Name of the layout');
const openTables = (page: Page): Promise<void> => page.getByRole('button', { name: 'Open the tables' }).click();
const importText = async (page: Page, file: string, text: string): Promise<void> => {
  const path = join(tmpdir(), file);
  writeFileSync(path, text);
  await page.locator('input[type=file]').setInputFiles(path);
};

/** Puts a text where the sheets lie, past everything that guards it. */
const spoil = (page: Page, text: string): Promise<void> =>
  page.evaluate(
    (text) =>
      new Promise<void>((done, fail) => {
        const opening = indexedDB.open('both-rails / layout-sheets');
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const step = opening.result.transaction('layout-sheets', 'readwrite');
          step.objectStore('layout-sheets').put(text, 'now');
          step.oncomplete = () => done();
        };
      }),
    text,
  );

test('a beginner starts from a shape and only counts trains; it is kept, opened again, changed and undone', async () => {
  const { page, problems, close } = await open(SHEET, { width: 360 });
  expect(await accessibilityFaults(page)).toEqual([]);
  await page.getByLabel('How many trains').fill('6');
  await start(page, 'Oval');
  await kept(page);
  expect(await page.getByLabel('Modern trains').inputValue()).toBe('6');
  await page.getByLabel('It gives the track at most, A').fill('3 A');
  await page.getByLabel('Its supply, V').fill('230');
  await page.keyboard.press('Tab');
  await page.getByText('“230” is on the line for the wall socket.').waitFor();
  await page.getByRole('button', { name: 'One more booster' }).click();
  await page.getByRole('group', { name: 'Booster 1' }).waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('group', { name: 'Booster 1' }).waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Redo' }).click();
  await page.getByRole('group', { name: 'Booster 1' }).waitFor();
  await kept(page);
  await page.reload();
  expect(await page.getByLabel('It gives the track at most, A').first().inputValue()).toBe('3');
  await page.getByRole('group', { name: 'Booster 1' }).waitFor();
  expect(await overflow(page)).toEqual([]);
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await problems()).toEqual([]);
  await close();
});

test('what was typed last is kept, however soon the page is left', async () => {
  const { page, problems, close } = await open(SHEET);
  await start(page, 'Oval');
  await kept(page);
  await page.getByLabel('It gives the track at most, A').fill('3');
  await page.locator('main a[href$="/plan/"]').first().click();
  await page.waitForURL(/\/plan\//);
  await page.goto((await site()).address + SHEET);
  expect(await page.getByLabel('It gives the track at most, A').first().inputValue()).toBe('3');
  expect(await problems()).toEqual([]);
  await close();
});

test('whoever knows goes through the tables by keyboard and pastes rows; what is not read is told', async () => {
  const { page, problems, close } = await open(SHEET);
  await start(page, 'Oval');
  await openTables(page);
  const length = page.getByLabel('Length, m, Left curve, back half');
  await length.focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('70,5 cm');
  await page.keyboard.press('Enter');
  await expect.poll(() => length.inputValue()).toBe('0.705');
  await page.locator(':focus[aria-label="Length, m, Back straight, left"]').waitFor();
  await page.keyboard.press('ArrowUp');
  await page.locator(':focus[aria-label="Length, m, Left curve, back half"]').waitFor();
  await page.keyboard.press('ArrowRight');
  await page.locator(':focus[aria-label="Share of the traffic, Left curve, back half"]').waitFor();
  await page.keyboard.press('Control+Z');
  await expect.poll(() => length.inputValue()).toBe('0.7');
  await page.getByText('Paste from a spreadsheet').first().click();
  await page.getByLabel('Rows').first().fill('Name\tLength\nMill\t2,4\nHill\tlong\nWharf\t1,5');
  await page.getByRole('button', { name: 'Read these rows' }).first().click();
  await page.getByText('2 rows added.').waitFor();
  await page.getByText('Line 3 was not read').waitFor();
  expect(await page.getByLabel('Length, m, Wharf').inputValue()).toBe('1.5');
  await page.getByRole('button', { name: 'Remove: Wharf' }).click();
  await page.getByLabel('Length, m, Wharf').waitFor({ state: 'detached' });
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await problems()).toEqual([]);
  await close();
});

test('a file comes back on another device as it was; what is no sheet is told and changes nothing', async () => {
  const one = await open(SHEET);
  await start(one.page, 'A club layout');
  await kept(one.page);
  const saving = one.page.waitForEvent('download');
  await one.page.getByRole('button', { name: 'Save as a file' }).click();
  const saved = readFileSync(await (await saving).path(), 'utf8');
  await one.close();
  const { page, problems, close } = await open(SHEET);
  const files = [
    ['letter.json', 'Dear Anna', '“letter.json” is not a layout sheet.'],
    ['huge.json', ' '.repeat(50_000_000), '“huge.json” is larger than a layout sheet can be'],
    ['cut.json', saved.slice(0, 900), '“cut.json” is broken at character 901'],
    ['later.json', '{"form":"both-rails-layout-sheet","version":2}', 'saved by a later release'],
  ] as const;
  for (const [file, text, said] of files) {
    await importText(page, file, text);
    await page.getByText(said).waitFor();
  }
  await importText(page, 'club.json', saved);
  await kept(page);
  const again = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  expect(readFileSync(await (await again).path(), 'utf8')).toBe(saved);
  const odd = { ...SHAPES.oval(2), name: '<img src=x onerror=alert(1)>', trains: [{ kind: 'steam', count: 1 }] };
  await importText(page, 'odd.json', JSON.stringify(odd));
  await page.getByText('Train row 1, Kind: “steam” cannot stand there, so this entry was left out.').waitFor();
  expect(await name(page).inputValue()).toBe(odd.name);
  await page.getByRole('button', { name: 'Other sheets' }).click();
  await page.getByRole('button', { name: `Open: ${odd.name}` }).waitFor();
  expect(await page.locator('.sheet img').count()).toBe(0);
  expect(await problems()).toEqual([]);
  await close();
});

test('what one tab changes the other shows; what both change at once is kept twice', async () => {
  const { page, context, close } = await open(SHEET);
  await start(page, 'Oval');
  await kept(page);
  const tab = await context.newPage();
  await tab.goto((await site()).address + SHEET, { waitUntil: 'networkidle' });
  await name(tab).fill('Loft');
  await kept(tab);
  await expect.poll(() => name(page).inputValue()).toBe('Loft');
  await Promise.all([name(page).fill('Loft, mine'), name(tab).fill('Loft, hers')]);
  await expect
    .poll(async () => (await page.getByText('Both are kept').count()) + (await tab.getByText('Both are kept').count()))
    .toBe(1);
  await page.getByRole('button', { name: 'Other sheets' }).click();
  for (const one of ['Loft, mine', 'Loft, hers']) await page.getByRole('button', { name: `Open: ${one}` }).waitFor();
  await close();
});

test('damage gives the last good sheets and offers the damaged text as a file', async () => {
  const { page, close } = await open(SHEET);
  await start(page, 'Oval');
  await kept(page);
  await name(page).fill('Loft');
  await page.waitForTimeout(400);
  await kept(page);
  await spoil(page, '{"both-rails-layout-sheets":1,"she');
  await page.reload();
  await page.getByText('These are your sheets as they were before it.').waitFor();
  expect(await name(page).inputValue()).toBe('Oval');
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the damaged text' }).click();
  expect(readFileSync(await (await saving).path(), 'utf8')).toBe('{"both-rails-layout-sheets":1,"she');
  await close();
});

test('without room on the device the sheet is not lost: it can be saved as a file', async () => {
  const { page, context, close } = await open('en/');
  const devtools = await context.newCDPSession(page);
  await devtools.send('Storage.overrideQuotaForOrigin', { origin: (await site()).origin, quotaSize: 1 });
  await page.goto((await site()).address + SHEET, { waitUntil: 'networkidle' });
  await start(page, 'Oval');
  await page.getByText('This browser has no room left.').waitFor();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).first().click();
  expect(readFileSync(await (await saving).path(), 'utf8')).toContain('"left-back"');
  await close();
});

test('a link opens the sheet elsewhere, is kept once it is changed, and one that is none says so', async () => {
  const one = await open(SHEET);
  await one.context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await start(one.page, 'A club layout');
  await kept(one.page);
  await one.page.getByRole('button', { name: 'Copy a link' }).click();
  await one.page.getByText('The link is copied.').waitFor();
  const link = await one.page.evaluate(() => navigator.clipboard.readText());
  await one.close();
  const { page, problems, close } = await open(link.slice((await site()).address.length));
  await page.getByText('This sheet came with a link.').waitFor();
  expect(await name(page).inputValue()).toBe('A club layout');
  await name(page).fill('Ours');
  await kept(page);
  expect(new URL(page.url()).hash).toBe('');
  await page.goto(`${(await site()).address}en/privacy/`, { waitUntil: 'networkidle' });
  await page.locator('[data-stored=layout-sheets]', { hasText: '1 sheet' }).waitFor();
  await page.locator('[data-clear=layout-sheets]').click();
  await page.locator('[data-stored=layout-sheets]', { hasText: 'Nothing is kept.' }).waitFor();
  await page.goto(`${(await site()).address}${SHEET}#sheet=abc`, { waitUntil: 'networkidle' });
  await page.getByText('The link is not whole. It may have been cut').waitFor();
  const long = { ...DEMO_CLUB, sections: DEMO_CLUB.sections.map((section, at) => ({ ...section, name: hardly(at) })) };
  await importText(page, 'long.json', writeSheet({ ...long, trains: Array.from({ length: 60 }, group) }));
  await page.getByRole('button', { name: 'Copy a link' }).click();
  await page.getByText('This sheet is too large for a link.').waitFor();
  expect(await problems()).toEqual([]);
  await close();
});

/** Sixty signs that hardly anything makes shorter. */
function hardly(seed: number): string {
  let state = seed + 1;
  return Array.from({ length: 60 }, () => {
    state = (state * 48_271) % 2_147_483_647;
    return String.fromCharCode(0x4e00 + (state % 8000));
  }).join('');
}
const group = (_: unknown, at: number) => ({ kind: 'modern' as const, count: 1, name: hardly(1000 + at) });

test('an answer is taken into the sheet and back, and the sheet answers a wizard', async () => {
  const { page, problems, close } = await open(WIRE);
  await page.getByRole('button', { name: 'Take into my layout sheet' }).click();
  await page.getByText('What you told here now stands in your layout sheet.').waitFor();
  await page.getByRole('link', { name: 'To your layout sheet' }).click();
  expect(await page.getByLabel('Its supply, V').inputValue()).toBe('16');
  await page.getByRole('link', { name: 'How thick must the wire be?' }).click();
  await page.waitForURL(/bus-length=10/);
  expect(new URL(page.url()).searchParams.get('supply-amps')).toBe('4');
  expect(await problems()).toEqual([]);
  await close();
});

test('from the home page to a division, which comes into the sheet with its track, so that the plan has its gaps; and a second one beside it', async () => {
  const { page, problems, close } = await open('en/');
  await page.getByRole('link', { name: 'Where do I divide the layout?' }).click();
  await page.waitForURL(/work-it-out\/share-out\//);
  for (const option of ['Two rails, digital', 'H0', 'An oval']) {
    await page.getByRole('radio', { name: option }).first().check();
    await page.getByRole('button', { name: 'Continue' }).click();
  }
  // No older ones: nothing is typed there.
  await page.getByLabel('Locomotives with modern motors').fill('6');
  await page.getByRole('button', { name: 'Continue' }).click();
  await page.getByLabel('The supply of the command station').fill('3 A');
  await page.getByLabel('The supply of the booster').fill('2 A');
  await page.getByRole('button', { name: 'Continue' }).click();
  await page.getByRole('heading', { name: /^One unit carries all of this/ }).waitFor();
  await page.getByText('cut both rails at 2 places').waitFor();
  await page.locator('.picture svg[role=img]').waitFor();
  expect(await page.locator('.picture svg[role=img] .numbered').allTextContents()).toEqual(['1', '2']);
  const answer = page.url();
  await page.getByRole('button', { name: 'Take into my layout sheet' }).click();
  await page.getByText('What you told here now stands in your layout sheet.').waitFor();
  await page.goto(new URL('../../plan/', answer).href);
  await page.getByText('Back straight, left').first().waitFor();
  expect(await page.getByText('Nothing has to be cut.').count()).toBe(0);
  await page.goto(answer);
  await page.getByRole('button', { name: 'Take into my layout sheet' }).click();
  await page.getByText('The sheet that was open has a layout of its own').waitFor();
  expect(await problems()).toEqual([]);
  await close();
});

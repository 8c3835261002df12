// The case notebook in a browser: an answer is kept, found, changed, deleted and carried in a file; and what happens to a device meanwhile
// (two tabs, no room, a crash, damage) loses nothing that was kept.
import { readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Opened, open, site } from './browser.ts';
import { accessibilityFaults, overflow } from './measure.ts';

type Page = Opened['page'];

const NOTEBOOK = 'en/notebook/';
const OUT_OF_SCOPE = 'en/work-it-out/wire-it/?system=three-rail';
const WIRE =
  'en/work-it-out/wire-it/?bus-length=10+m&bus-wire=2.5+mm2&feed-by=pair&joints=fed&rail-kind=code-100&scale=h0&system=two-rail&track-length=5+m&track-shape=ends&supply-amps=4+A&supply-kind=dc&supply-plug=centre-plus&supply-volts=16+V&wire-amps=1+A&wire-trip=3+A&wire-volts=15+V';

async function keep(page: Page, name: string, note = ''): Promise<void> {
  await page.getByRole('button', { name: 'Keep this' }).click();
  await page.getByLabel('Name, as you will look for it').fill(name);
  await page.getByLabel('Your note').fill(note);
  await page.getByRole('button', { name: 'Keep on this device' }).click();
}

async function keepAnswer(page: Page, path: string, name: string, note = ''): Promise<void> {
  await page.goto((await site()).address + path, { waitUntil: 'networkidle' });
  await keep(page, name, note);
  await page.getByText('Kept.', { exact: true }).waitFor();
}

const names = (page: Page): Promise<string[]> => page.locator('.kept > li > a').allTextContents();
const openNotebook = async (page: Page): Promise<void> => {
  await page.goto((await site()).address + NOTEBOOK, { waitUntil: 'networkidle' });
};
const importText = async (page: Page, name: string, text: string): Promise<void> => {
  const file = join(tmpdir(), name);
  writeFileSync(file, text);
  await page.locator('input[type=file]').setInputFiles(file);
};
const fileOf = (...kept: readonly object[]): string => JSON.stringify({ 'both-rails-notebook': 1, kept });
const answer = (part: object): object => ({
  ...{ id: 'x', name: 'Yard', note: '', path: 'en/', verdict: '', on: '2026-11-01T10:00:00.000Z' },
  ...part,
});

/** Puts a text where the notebook lies, past everything that guards it. */
const spoil = (page: Page, text: string): Promise<void> =>
  page.evaluate(
    (text) =>
      new Promise<void>((done, fail) => {
        const opening = indexedDB.open('both-rails /');
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const step = opening.result.transaction('notebook', 'readwrite');
          step.objectStore('notebook').put(text, 'now');
          step.oncomplete = () => done();
        };
      }),
    text,
  );

test('an answer is kept with name, note, link and verdict, found by words, opened, renamed, deleted and put back', async () => {
  const { page, problems, close } = await open(WIRE, { width: 360 });
  const verdict = (await page.locator('h1.verdict').textContent()) ?? '';
  await page.waitForURL(/made=/);
  const address = page.url();
  await keep(page, 'Hall, eastern district', 'Anna asked on Thursday.');
  await page.getByRole('link', { name: 'To your notebook' }).click();
  await page.getByText('1 answer kept').waitFor();
  await keepAnswer(page, OUT_OF_SCOPE, 'An old toy');
  await openNotebook(page);
  await page.getByText('2 answers kept').waitFor();
  await page.getByLabel('Find by words').fill('anna hall');
  expect(await names(page)).toEqual(['Hall, eastern district']);
  await page.getByText('1 of 2 kept answers').waitFor();
  expect(await page.locator('.kept').textContent()).toContain(verdict);
  expect(await overflow(page)).toEqual([]);
  expect(await accessibilityFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Change name and note: Hall' }).click();
  await page.getByLabel('Name', { exact: true }).fill('Hall, solved');
  await page.getByLabel('Your note').fill('Anna: fed twice now.');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText('“Hall, solved” is saved.').waitFor();
  const focused = page.locator(':focus');
  await expect.poll(() => focused.getAttribute('aria-label')).toBe('Change name and note: Hall, solved');
  await page.getByRole('button', { name: 'Delete: Hall, solved' }).click();
  await page.getByText('“Hall, solved” is deleted.').waitFor();
  expect(await focused.textContent()).toBe('Put it back');
  await page.reload();
  await page.getByText('1 answer kept').waitFor();
  await page.getByRole('button', { name: 'Delete: An old toy' }).click();
  await page.getByRole('button', { name: 'Put it back' }).click();
  await page.getByText('1 answer kept').waitFor();
  expect(await names(page)).toEqual(['An old toy']);
  await page.goto(address);
  expect(await page.locator('h1.verdict').textContent()).toBe(verdict);
  expect(await problems()).toEqual([]);
  await close();
});

test('a walk is kept in the middle and at its proposal, and its link leads back to it', async () => {
  const proposal =
    'en/put-it-right/trips-at-gap/?when-it-happens=at-the-gap&analogue-one-at-the-gap=turned-round&meter-same-and-diagonal=same-rail-large&told=yes&tools=multimeter';
  for (const path of ['en/put-it-right/trips-at-gap/?told=yes&tools=', proposal]) {
    const { page, close } = await open(path);
    await page.locator('.walk input, .walk button').first().waitFor();
    const safe = page.getByRole('radio', { name: /^No/ }).or(page.getByRole('button', { name: /^No/ }));
    await safe.first().click();
    const go = page.getByRole('button', { name: 'Continue' });
    if (await go.isVisible()) await go.click();
    await page.getByRole('button', { name: 'Keep this' }).waitFor();
    const heading = (await page.locator('main h1').first().textContent())?.trim() ?? '';
    await keep(page, 'Case 12');
    await page.getByRole('link', { name: 'To your notebook' }).click();
    await page.getByText('1 answer kept').waitFor();
    expect(await page.locator('.kept').textContent()).toContain(heading);
    expect(await page.locator('.kept > li > a').getAttribute('href')).toContain('en/put-it-right/trips-at-gap/?');
    await close();
  }
});

test('the file of a notebook is taken in on another device, word for word, and twice adds nothing', async () => {
  const one = await open(NOTEBOOK);
  await keepAnswer(one.page, OUT_OF_SCOPE, 'A <b>toy</b> & "more"', '<img src=x onerror=alert(1)>');
  await openNotebook(one.page);
  const saving = one.page.waitForEvent('download');
  await one.page.getByRole('button', { name: 'Save all as a file' }).click();
  const saved = readFileSync(await (await saving).path(), 'utf8');
  await one.close();
  const { page, problems, close } = await open(NOTEBOOK);
  await importText(page, 'club.json', saved);
  await page.getByText('1 answer taken in.').waitFor();
  expect(await names(page)).toEqual(['A <b>toy</b> & "more"']);
  expect(await page.locator('.kept .note').textContent()).toBe('<img src=x onerror=alert(1)>');
  expect(await page.locator('.kept img, .kept b').count()).toBe(0);
  await importText(page, 'club.json', saved);
  await page.getByText('0 answers taken in. 1 was here already, word for word.').waitFor();
  await importText(page, 'club.json', saved.replace('A <b>toy', 'The <b>toy'));
  await page.getByText('0 answers taken in. 1 is here with another name or note: both are kept.').waitFor();
  expect(await names(page)).toHaveLength(2);
  expect(await problems()).toEqual([]);
  await close();
});

test('a file that is no notebook is told what and where, and changes nothing', async () => {
  const { page, problems, close } = await open(NOTEBOOK);
  await importText(page, 'one.json', fileOf(answer({})));
  await page.getByText('1 answer taken in.').waitFor();
  const files = [
    ['letter.json', 'Dear Anna', '“letter.json” is not a case notebook. Nothing was taken in.'],
    ['huge.json', ' '.repeat(50_000_000), '“huge.json” is larger than a notebook can be'],
    ['cut.json', fileOf(answer({})).slice(0, 60), '“cut.json” is broken at character 61'],
    ['away.json', fileOf(answer({}), answer({ path: '//elsewhere.example/' })), 'the link of answer 2'],
    ['later.json', '{"both-rails-notebook":2,"kept":[]}', 'saved by a later release'],
  ] as const;
  for (const [name, text, said] of files) {
    await importText(page, name, text);
    await page.getByText(said).waitFor();
    expect(await names(page), name).toEqual(['Yard']);
  }
  expect(await problems()).toEqual([]);
  await close();
});

test('two tabs that keep at once lose nothing, and each sees what the other keeps', async () => {
  const { page, context, close } = await open(NOTEBOOK);
  const tabs = await Promise.all([context.newPage(), context.newPage()]);
  await Promise.all(tabs.map((tab, at) => keepAnswer(tab, OUT_OF_SCOPE, `Tab ${at + 1}`)));
  await page.getByText('2 answers kept').waitFor();
  const many = Array.from({ length: 20 }, (_, at) => answer({ id: `n${at}`, name: `Many ${at}` }));
  const [first, second] = tabs;
  await Promise.all(tabs.map(openNotebook));
  await Promise.all([
    first && importText(first, 'first.json', fileOf(...many.slice(0, 10))),
    second && importText(second, 'second.json', fileOf(...many.slice(10))),
  ]);
  await page.getByText('22 answers kept').waitFor();
  await first?.getByRole('button', { name: 'Change name and note: Tab 1' }).click();
  await first?.getByLabel('Your note').fill('Long words');
  await second?.getByRole('button', { name: 'Delete: Tab 1' }).click();
  await page.getByText('21 answers kept').waitFor();
  await first?.getByRole('button', { name: 'Save', exact: true }).click();
  await first?.getByText('“Tab 1” had been deleted in another tab.').waitFor();
  await page.getByText('Long words').waitFor();
  await close();
});

test('a tab that crashes while it keeps leaves the notebook as it was or with the new answer, never less', async () => {
  const { page, context, close } = await open(NOTEBOOK);
  await importText(page, 'one.json', fileOf(answer({})));
  await page.getByText('1 answer taken in.').waitFor();
  const tab = await context.newPage();
  await tab.goto((await site()).address + OUT_OF_SCOPE, { waitUntil: 'networkidle' });
  await tab.getByRole('button', { name: 'Keep this' }).click();
  const devtools = await context.newCDPSession(tab);
  await tab.getByRole('button', { name: 'Keep on this device' }).click({ noWaitAfter: true });
  await Promise.race([devtools.send('Page.crash').catch(() => undefined), tab.waitForEvent('crash')]);
  await page.reload();
  await page.locator('.kept > li').first().waitFor();
  expect(await names(page)).toContain('Yard');
  expect(await page.getByRole('alert').count()).toBe(0);
  await close();
});

test('a damaged notebook gives the last good one, and the damaged text can be saved and is not written over', async () => {
  const { page, close } = await open(NOTEBOOK);
  await importText(page, 'one.json', fileOf(answer({})));
  await page.getByText('1 answer taken in.').waitFor();
  await importText(page, 'two.json', fileOf(answer({ id: 'y', name: 'Loop' })));
  await page.getByText('2 answers kept').waitFor();
  const damaged = '{"both-rails-notebook":1,"kept":[{"id":"x","na';
  await spoil(page, damaged);
  await page.reload();
  await page.getByText('This is the notebook as it was before the last change.').waitFor();
  expect(await names(page)).toEqual(['Yard']);
  await keepAnswer(page, OUT_OF_SCOPE, 'New');
  await openNotebook(page);
  await page.getByText('Something damaged lies beside your notebook.').waitFor();
  expect((await names(page)).toSorted()).toEqual(['New', 'Yard']);
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the damaged text' }).click();
  expect(readFileSync(await (await saving).path(), 'utf8')).toBe(damaged);
  await page.getByRole('button', { name: 'Delete the damaged text' }).click();
  await page.getByRole('alert').waitFor({ state: 'detached' });
  expect((await names(page)).toSorted()).toEqual(['New', 'Yard']);
  await close();
});

test('a browser without room says so, and the answer can be had as a file that the notebook takes in later', async () => {
  const { page, context, close } = await open(OUT_OF_SCOPE);
  const { origin } = await site();
  const devtools = await context.newCDPSession(page);
  await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  await keep(page, 'Too much');
  await page.getByText('This browser has no room left.').waitFor();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  const saved = readFileSync(await (await saving).path(), 'utf8');
  await devtools.send('Storage.overrideQuotaForOrigin', { origin });
  await openNotebook(page);
  await page.getByText('Nothing is kept yet.').waitFor();
  await importText(page, 'later.json', saved);
  await page.getByText('1 answer taken in.').waitFor();
  expect(await names(page)).toEqual(['Too much']);
  await close();
});

test('a notebook that finds no room for more stays as it was', async () => {
  const { page, context, close } = await open('en/');
  const devtools = await context.newCDPSession(page);
  await devtools.send('Storage.overrideQuotaForOrigin', { origin: (await site()).origin, quotaSize: 600_000 });
  await openNotebook(page);
  await importText(page, 'one.json', fileOf(answer({})));
  await page.getByText('1 answer taken in.').waitFor();
  const long = Array.from({ length: 300 }, (_, at) => answer({ id: `n${at}`, name: `${at}`, note: 'n'.repeat(5000) }));
  await importText(page, 'long.json', fileOf(...long));
  await page.getByText('Nothing was changed and nothing was lost.').waitFor();
  expect(await names(page)).toEqual(['Yard']);
  await page.reload();
  await page.getByText('1 answer kept').waitFor();
  await close();
});

test('the privacy page counts what is kept and clears it', async () => {
  const { page, problems, close } = await open(NOTEBOOK);
  await importText(page, 'one.json', fileOf(answer({}), answer({ id: 'y', name: 'Loop' })));
  await page.getByText('2 answers taken in.').waitFor();
  await page.goto(`${(await site()).address}en/privacy/`, { waitUntil: 'networkidle' });
  await page.locator('[data-stored=notebook]', { hasText: '2 answers' }).waitFor();
  await page.locator('[data-clear=notebook]').click();
  await page.locator('[data-stored=notebook]', { hasText: 'Nothing is kept.' }).waitFor();
  await openNotebook(page);
  await page.getByText('Nothing is kept yet.').waitFor();
  expect(await problems()).toEqual([]);
  await close();
});

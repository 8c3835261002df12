// The screen on which everything can be told, on a phone.
import { expect, test } from 'vitest';
import { open } from './browser.ts';
import { linksIn, longOf } from './copied.ts';
import { answer, nothingIsWarm, TELLING } from './danger.ts';

const PHONE = { width: 360, height: 740 };
const FOUR_LINES =
  'Two old engines, and since last week the unit shuts down on the hill whenever they run together. It comes back by itself, and other engines run fine. Is it the decoder, or what else could it be?';

test('what was heard is not covered by the way past it, and the way on comes back with the first tap', async () => {
  const { page, close } = await open('en/put-it-right/trips-with-traffic/', PHONE);
  await nothingIsWarm(page);
  await page.locator('textarea').fill(FOUR_LINES);
  const chip = page.locator('.heard .chip').first();
  await chip.waitFor();
  const isOnTop = (): Promise<boolean> =>
    chip.evaluate((element) => {
      element.scrollIntoView({ block: 'end' });
      const { left, top, height } = element.getBoundingClientRect();
      return element.contains(document.elementFromPoint(left + 20, top + height / 2));
    });
  expect(await isOnTop()).toBe(true);
  expect(await page.getByRole('button', { name: 'None of these, ask me' }).count()).toBe(1);
  await chip.evaluate((element) => element.scrollIntoView({ block: 'end' }));
  await chip.click();
  await page.waitForFunction(() => {
    const [tapped, bar] = [document.querySelector('.heard .chip'), document.querySelector('.telling > .acts')];
    return tapped !== null && bar !== null && tapped.getBoundingClientRect().bottom <= bar.getBoundingClientRect().top;
  });
  const on = page.getByRole('button', { name: 'Go on with 1 fact' });
  expect(await on.evaluate((element) => element.getBoundingClientRect().bottom <= innerHeight)).toBe(true);
  await close();
});

test('a text of which nothing is understood is told so', async () => {
  const { page, close } = await open('en/put-it-right/trips-with-traffic/', PHONE);
  await nothingIsWarm(page);
  await page.locator('textarea').fill('My grey boxcars have their moods with me');
  await page.getByText('Not understood').waitFor();
  expect(await page.locator('.heard .chip').count()).toBe(0);
  // What is dangerous comes first, and the way on invites nobody past it; of two answers to one question the second says that the first is off.
  await page.locator('textarea').fill('The RCD of the house trips when I plug in the booster.');
  await page.locator('.heard .problem').getByText('This first').waitFor();
  expect(await page.locator('.telling > .acts .button').allInnerTexts()).toEqual(['No such danger here: go on']);
  await page
    .locator('textarea')
    .fill('The RCD of the house trips when I plug in the booster. I feel a tingle from the rails.');
  await expect.poll(() => page.locator('.heard .problem button').count()).toBe(2);
  await page.locator('textarea').fill('The booster trips, then the train stutters.');
  for (const chip of ['Something switches off', 'It jerks'])
    await page.locator('.heard .chip', { hasText: chip }).click();
  expect(await page.locator('.heard .chip', { hasText: 'It jerks' }).innerText()).toContain('the other is off');
  await close();
});

test('whoever has something browned is told to leave it off, before anything else is told', async () => {
  const { page, close } = await open('en/put-it-right/trips-with-traffic/', PHONE);
  await answer(page, { check: 'danger-now', option: 'browned', fixClass: '', first: true });
  await page.getByRole('heading', { name: TELLING }).waitFor();
  expect(await page.locator('.telling .problem').innerText()).toMatch(
    /Leave off what is browned.*too small for its load/,
  );
  // That it smelled is answered: the story is heard for what else it says. What was dealt with is no longer what comes first.
  const box = page.locator('textarea');
  await box.fill(
    'There was a smell of burning and some smoke, and the plastic of a sleeper has melted. The trains stutter.',
  );
  await page.locator('.heard .chip', { hasText: 'It jerks' }).waitFor();
  expect(await page.locator('.heard .problem').count()).toBe(0);
  await box.fill('I feel a tingle from the rails. The trains stutter.');
  await page.locator('.heard .problem button').click();
  await page.getByRole('button', { name: 'It is off and cold' }).click();
  await page.locator('.heard .chip', { hasText: 'It jerks' }).waitFor();
  expect(await page.locator('.heard .problem').count()).toBe(0);
  await close();
});

test('what is tapped can be passed on before anything is asked: its link goes on with it', async () => {
  const { page, context, problems, close } = await open('en/put-it-right/trips-with-traffic/', PHONE);
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await nothingIsWarm(page);
  await page.locator('textarea').fill(FOUR_LINES);
  await page.locator('.heard .chip').first().click();
  await page.getByRole('button', { name: 'Copy as text' }).click();
  await page.getByText('Copied').waitFor();
  const card = await page.evaluate(() => navigator.clipboard.readText());
  expect(card).toMatch(/^Told: .+: .+$/m);
  const link = longOf(linksIn(card).at(-1) ?? '');
  await page.goto(link);
  await nothingIsWarm(page);
  await page.locator('.said .known').waitFor({ state: 'attached' });
  expect(await page.locator('.telling').count()).toBe(0);
  expect(await problems()).toEqual([]);
  await close();
});

test.each([
  ['tried=tingle', 'I feel a tingle from the rails.'],
  ['danger-now=browned', 'There is smoke from the booster right now.'],
])('what somebody else has dealt with is no answer for whoever opens the link: ?%s', async (told, text) => {
  const { page, close } = await open(`en/put-it-right/trips-with-traffic/?${told}`, PHONE);
  if (!told.startsWith('danger-now')) {
    await nothingIsWarm(page);
    await page.getByRole('button', { name: 'I have seen something else' }).click();
  }
  await page.locator('textarea').fill(text);
  await page.locator('.heard .problem').getByText('This first').waitFor();
  await close();
});

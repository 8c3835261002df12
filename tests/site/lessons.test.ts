// A lesson as it is used: what is expected is said first, a link sets the figure, questions explain, terms open in place, and what is done
// is kept on this device only.
import AxeBuilder from '@axe-core/playwright';
import { describe, expect, test } from 'vitest';
import { type Opened, open, pages } from './browser.ts';
import { someOf } from './some.ts';

type Page = Opened['page'];

const LESSON = 'en/learn/no-single-number/';
const KEPT = 'both-rails-lessons';
const LESSONS = pages().filter((path) => /^en\/learn\/./.test(path));

const kept = (page: Page): Promise<string | null> => page.evaluate((key) => localStorage.getItem(key), KEPT);
const status = (page: Page): Promise<string> => page.locator('#figure [role="status"]').first().innerText();

/** Until it lives, a part of a page that waits to be asked for stands as it was built. */
const ASLEEP = 'astro-island[ssr]';
const others = (page: Page) => page.getByRole('button', { name: 'Other numbers' }).first();
const question = (page: Page) => page.locator('.check astro-island .asked').first();

/** The figure comes alive once it is in sight. */
async function figureLives(page: Page): Promise<void> {
  await page.locator('#figure .live').scrollIntoViewIfNeeded();
  await page.locator('#figure astro-island:not([ssr])').waitFor({ state: 'attached' });
}

/** Reaches for the question with new numbers, and waits until it lives. */
async function reach(page: Page): Promise<void> {
  await others(page).hover();
  await page.locator('.check astro-island:not([ssr])').first().waitFor();
}

/** Waits until it asks something else than that. */
const otherThan = (page: Page, text: string) =>
  page.waitForFunction((was) => {
    const now = document.querySelector<HTMLElement>('.check astro-island .asked')?.innerText;
    return now !== undefined && now !== was;
  }, text);

/** Holds scripts up, as a slow line does, until told to let them come. */
async function hold(page: Page): Promise<() => void> {
  let go = (): void => undefined;
  const told = new Promise<void>((done) => {
    go = done;
  });
  await page.route(/\.js$/, async (route) => {
    await told;
    await route.continue();
  });
  return go;
}

/** Opens the right answer of each question. */
async function answerAll(page: Page): Promise<void> {
  for (const question of await page.locator('[data-question]').all())
    await question.locator('details[data-right] > summary').first().click();
}

describe('What is expected', () => {
  test('is said before anything is shown, and then the reasons for it stand beside what happens', async () => {
    const { page, problems, close } = await open(LESSON);
    const run = page.locator('details.run');
    await run.locator('> summary').click();
    expect(await run.getAttribute('open')).toBeNull();
    expect(await page.locator('.predict [role="status"]').innerText()).toMatch(/Choose one first/);
    await page.locator('.predict label').first().click();
    await run.locator('> summary').click();
    expect(await run.getAttribute('open')).not.toBeNull();
    await run.locator('details > summary').click();
    expect(await page.locator('[data-reason]:visible').count()).toBe(2);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('can be said and shown with the keyboard alone', async () => {
    const { page, close } = await open(LESSON);
    await page.locator('.predict input').first().focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await page.locator('details.run').getAttribute('open')).not.toBeNull();
    await close();
  });
});

describe('A link', () => {
  test('opens the figure as it says, and “set the figure so” does the same without leaving the page', async () => {
    const { page, close } = await open(`${LESSON}?moving=5&total=5`);
    await figureLives(page);
    await page.waitForFunction(() => document.querySelector('#figure [role="status"]')?.textContent?.includes('40'));
    await page.locator('.tries a[data-set]').first().click();
    await page.waitForFunction(() => !document.querySelector('#figure [role="status"]')?.textContent?.includes('40'));
    expect(new URL(page.url()).search).toContain('moving=1');
    await page.goBack();
    await page.waitForFunction(() => document.querySelector('#figure [role="status"]')?.textContent?.includes('40'));
    expect(await status(page)).toMatch(/40/);
    await close();
  });

  test('holds what was moved with the keys', async () => {
    const { page, close } = await open(LESSON);
    await figureLives(page);
    await page.locator('#figure input[type="range"]').nth(1).focus();
    await page.keyboard.press('ArrowLeft');
    await page.waitForFunction(() => location.search.includes('moving=3'));
    await close();
  });

  test('asks with the numbers it names, and others are one tap away', async () => {
    const plain = await open(LESSON);
    const builtWith = await question(plain.page).innerText();
    await plain.close();
    const { page, close } = await open(`${LESSON}?check-seed=7`);
    await otherThan(page, builtWith);
    const named = await question(page).innerText();
    await others(page).click();
    await page.waitForFunction(() => location.search.includes('check-seed=8'));
    await otherThan(page, named);
    const next = await question(page).innerText();
    expect(next).not.toBe(builtWith);
    await page.reload();
    await page.getByText(next).waitFor();
    await close();
  });

  test('opens at the question whose numbers it holds', async () => {
    const { page, close } = await open(LESSON, { width: 360, height: 740 });
    await page.locator('.check').scrollIntoViewIfNeeded();
    const to = (await page.getByRole('link', { name: 'Link to these numbers' }).first().getAttribute('href')) ?? '';
    await close();
    const fresh = await open(`${LESSON}${to.replace('seed=1', 'seed=7')}`, { width: 360, height: 740 });
    await fresh.page.waitForFunction(() => {
      const box = document.querySelector('.check .asked')?.getBoundingClientRect();
      return box !== undefined && box.top >= 0 && box.bottom <= innerHeight;
    });
    await fresh.close();
  });

  test('says so where other numbers cannot be had, keeps the question, and can be asked again', async () => {
    const { page, context, close } = await open(LESSON);
    await reach(page);
    const first = await question(page).innerText();
    await context.setOffline(true);
    await others(page).click();
    await page.getByRole('alert').getByText('could not be loaded').waitFor();
    expect(await question(page).innerText()).toBe(first);
    await context.setOffline(false);
    await page.getByRole('button', { name: 'Try again' }).click();
    await otherThan(page, first);
    await close();
  });
});

describe('A part that waits to be asked for', () => {
  const DRIVE = 'en/learn/gap-both-rails/';
  const drive = '.drive select';

  test('stands there as it was built: a question can be answered, and no script came for it', async () => {
    const { page, problems, close } = await open(LESSON);
    await page.locator('.check').scrollIntoViewIfNeeded();
    expect(await page.locator(`.check ${ASLEEP}`).count()).toBe(1);
    expect(await question(page).innerText()).toMatch(/\d/);
    const answer = page.locator('.check astro-island details').first();
    await answer.locator('summary').click();
    expect(await answer.locator('p').isVisible()).toBe(true);
    await reach(page);
    expect(await answer.locator('p').isVisible()).toBe(true);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('does what was tapped before it lived', async () => {
    const { page, close } = await open(LESSON);
    const first = await question(page).innerText();
    const go = await hold(page);
    await others(page).click();
    expect(await page.locator(`.check ${ASLEEP}`).count()).toBe(1);
    go();
    await otherThan(page, first);
    expect(new URL(page.url()).search).toBe('?check-seed=2');
    await close();
  });

  test('does what was chosen before it lived', async () => {
    const { page, close } = await open(DRIVE);
    const before = await page.locator('.drive .why').innerText();
    const go = await hold(page);
    await page.locator(drive).first().selectOption('feed-reversed');
    expect(await page.locator(`#figure ${ASLEEP}`).count()).toBe(1);
    go();
    await page.waitForFunction(() => location.search.includes('fault=feed-reversed'));
    await page.waitForFunction((was) => document.querySelector<HTMLElement>('.drive .why')?.innerText !== was, before);
    expect(await page.locator(drive).first().inputValue()).toBe('feed-reversed');
    await close();
  });

  test('comes once the line is back, where it could not be had', async () => {
    const { page, context, close } = await open(LESSON);
    const first = await question(page).innerText();
    await context.setOffline(true);
    await others(page).click();
    expect(await question(page).innerText()).toBe(first);
    await context.setOffline(false);
    await others(page).click();
    await otherThan(page, first);
    await close();
  });
});

describe('What is done', () => {
  test('is marked once every question was answered right, is shown on the list, and can be cleared there', async () => {
    const { page, context, problems, close } = await open(LESSON);
    expect(await kept(page)).toBeNull();
    await answerAll(page);
    await page.waitForFunction((key) => localStorage.getItem(key) === 'no-single-number', KEPT);
    expect(await page.locator('input[data-done]').isChecked()).toBe(true);
    const list = await context.newPage();
    await list.goto(page.url().replace(/no-single-number.*/, ''));
    expect(await list.locator('#lessons-done [role="status"]').innerText()).toMatch(/^Lessons done: 1 of \d+\.$/);
    expect(await list.locator('.doors [data-mark]:visible').count()).toBe(1);
    await list.getByRole('button', { name: 'Take all marks off' }).click();
    expect(await kept(list)).toBeNull();
    expect(await list.locator('#lessons-done [role="status"]').innerText()).toBe('All marks are off.');
    expect(await list.evaluate(() => document.activeElement?.textContent)).toBe('Put them back');
    await page.waitForFunction(() => document.querySelector<HTMLInputElement>('input[data-done]')?.checked === false);
    expect(await problems()).toEqual([]);
    await close();
  });

  test('adds up over two tabs', async () => {
    const { page, context, close } = await open(LESSON);
    const other = await context.newPage();
    await other.goto(page.url().replace('no-single-number', 'will-it-trip'));
    // A browser tells its other tabs of what one has kept a moment later.
    const told = (tab: Page, value: string): Promise<unknown> =>
      tab.waitForFunction(([key, text]) => localStorage.getItem(key) === text, [KEPT, value] as const);
    await page.locator('input[data-done]').check();
    await told(other, 'no-single-number');
    await other.locator('input[data-done]').check();
    await told(page, 'no-single-number will-it-trip');
    await page.locator('input[data-done]').uncheck();
    expect(await kept(page)).toBe('will-it-trip');
    await close();
  });

  test.each(['{"a":1}', '<b>', '  ', 'UPPER case'])(
    'damaged as %j counts as nothing and breaks nothing',
    async (text) => {
      const { page, problems, close } = await open(LESSON);
      await page.evaluate(([key, value]) => localStorage.setItem(key, value), [KEPT, text] as const);
      await page.reload();
      expect(await page.locator('input[data-done]').isChecked()).toBe(false);
      await page.locator('input[data-done]').check();
      expect(await kept(page)).toBe('no-single-number');
      expect(await problems()).toEqual([]);
      await close();
    },
  );

  test('is forgotten where the device keeps nothing, and the lesson goes on', async () => {
    const { page, problems, close } = await open(LESSON);
    await page.evaluate(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
    await page.locator('input[data-done]').click();
    expect(await kept(page)).toBeNull();
    expect(await page.locator('input[data-done]').isChecked()).toBe(false);
    expect(await problems()).toEqual([]);
    await close();
  });
});

describe('A number field of a figure', () => {
  test.each([
    [360, 'en/learn/voltage-along-the-track/'],
    [1280, 'en/learn/voltage-along-the-track/'],
    [1280, 'en/learn/one-train-two-supplies/'],
  ] as const)('at %i pixels shows all of its value in %s', async (width, path) => {
    const { page, close } = await open(path, { width });
    await figureLives(page);
    const cut = await page
      .locator('#figure .slider input[type="text"]')
      .evaluateAll((all) =>
        all.flatMap((one) => (one instanceof HTMLInputElement && one.scrollWidth > one.clientWidth ? [one.value] : [])),
      );
    expect(cut).toEqual([]);
    await close();
  });
});

describe('The ways to drive a train', () => {
  test.each([360, 768, 1280])('at %i pixels stand beside each other, all of one height', async (width) => {
    const { page, close } = await open('en/learn/gap-both-rails/', { width });
    const boxes = await page
      .locator('.drive-train .acts button')
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect()).map(({ top, height }) => [top, height]));
    expect(boxes).toHaveLength(3);
    expect(new Set(boxes.map(String)).size).toBe(1);
    expect(boxes[0]?.[1]).toBeLessThan(60);
    await close();
  });
});

describe('Without script', () => {
  test('terms open in place, questions explain, reasons can be read, and nothing is promised that cannot be kept', async () => {
    const { page, close } = await open(LESSON, { javaScript: false });
    await page.locator('.prose button.term').first().click();
    expect(await page.locator('.meaning:visible').count()).toBe(1);
    await page.keyboard.press('Escape');
    expect(await page.locator('.meaning:visible').count()).toBe(0);
    const answer = page.locator('.check details').first();
    await answer.locator('summary').click();
    expect(await answer.locator('p').isVisible()).toBe(true);
    await page.locator('details.run > summary').click();
    await page.locator('details.run details > summary').click();
    expect(await page.locator('[data-reason]:visible').count()).toBeGreaterThan(2);
    expect(await page.locator('input[data-done]').isVisible()).toBe(false);
    await close();
  });

  test('the list shows the course and its paths with their minutes', async () => {
    const { page, close } = await open('en/learn/', { javaScript: false });
    expect(await page.locator('.paths > details').count()).toBe(4);
    await page.locator('.paths summary').first().click();
    expect(await page.locator('.paths li:visible').count()).toBeGreaterThan(1);
    expect(await page.locator('.paths summary').first().innerText()).toMatch(/\d+ minutes in all/);
    expect(await page.locator('.doors > li').count()).toBe(LESSONS.length);
    await close();
  });
});

describe('What is expected, once it is decided,', () => {
  test('finds the figure set up as the text says, whatever was tried before', async () => {
    const { page, close } = await open(`${LESSON}?older=yes&total=2&check-seed=3`);
    await figureLives(page);
    await page.locator('.predict label').first().click();
    await page.locator('details.run > summary').click();
    await page.waitForFunction(() => document.querySelector('#figure figcaption')?.textContent?.includes('5'));
    const { search } = new URL(page.url());
    expect(search).toBe('?check-seed=3&moving=4&total=5');
    expect(await status(page)).toMatch(/1\.7\s%/);
    await close();
  });
});

describe('“Set the figure so” on a phone', () => {
  test.each([LESSON, 'en/learn/two-labels/', 'en/learn/gap-both-rails/'])(
    'brings what is to be read and moved into sight in %s',
    async (path) => {
      const { page, close } = await open(path, { width: 360, height: 740 });
      await page.locator('.tries a[data-set]').first().click();
      await page.waitForFunction(() => {
        const top = document.querySelector('#figure .live')?.getBoundingClientRect().top ?? -999;
        return top > -2 && top < 300;
      });
      await close();
    },
  );
});

describe('A path', () => {
  const STEPS = 6;

  test('is kept from lesson to lesson, to its end and back to its list', async () => {
    const { page, problems, close } = await open('en/learn/');
    await page.locator('.paths summary').first().click();
    await page
      .locator('.paths details[open] li a')
      .nth(STEPS - 2)
      .click();
    await page.getByText(`${STEPS - 1} of ${STEPS} on the path “I want to run more trains”`).waitFor();
    await page.getByRole('link', { name: 'Next lesson: Turnouts and lamps' }).click();
    await page.getByText(`${STEPS} of ${STEPS} on the path`).waitFor();
    expect(await page.getByText('This was the last lesson on the path “I want to run more trains”.').isVisible()).toBe(
      true,
    );
    expect(await page.getByRole('link', { name: /^Next lesson:/ }).count()).toBe(0);
    await page.locator('p.back a').click();
    await page.locator('.paths details[open]').waitFor();
    expect(await page.locator('.paths details[open] summary').innerText()).toContain('I want to run more trains');
    await page.reload();
    await page.locator('.paths details[open]').waitFor();
    expect(await problems()).toEqual([]);
    await close();
  });

  test('is not told to whoever came by none', async () => {
    const { page, close } = await open('en/learn/what-a-booster-adds/');
    expect(await page.getByText('on the path').count()).toBe(
      await page.locator('[data-on-path][hidden]').getByText('on the path').count(),
    );
    expect(await page.getByRole('link', { name: /^Next lesson:/ }).count()).toBe(1);
    await close();
  });
});

describe('Marks that were taken off', () => {
  test('can be put back at once, and are gone for good once the page is left', async () => {
    const { page, close } = await open(LESSON);
    await page.locator('input[data-done]').check();
    await page.goto(new URL('../', page.url()).href);
    const button = page.locator('#lessons-done button');
    await button.click();
    expect(await kept(page)).toBeNull();
    await button.click();
    expect(await kept(page)).toContain('no-single-number');
    expect(await button.innerText()).toBe('Take all marks off');
    await button.click();
    await page.reload();
    expect(await page.locator('#lessons-done').isHidden()).toBe(true);
    await close();
  });
});

describe('A term', () => {
  test('opens with a key beside its word, and closes again', async () => {
    const { page, close } = await open(LESSON, { width: 360 });
    const term = page.locator('.prose button.term').first();
    await term.focus();
    await page.keyboard.press('Enter');
    const meaning = page.locator('.meaning:visible');
    expect(await meaning.count()).toBe(1);
    const box = await meaning.boundingBox();
    expect(box?.x ?? -1).toBeGreaterThanOrEqual(0);
    expect((box?.x ?? 0) + (box?.width ?? 999)).toBeLessThanOrEqual(360);
    await page.keyboard.press('Escape');
    expect(await page.locator('.meaning:visible').count()).toBe(0);
    await close();
  });
});

// Each lesson in one or two of the four; EVERYTHING=1 looks at all of them in all.
describe.each([
  [360, false, 0],
  [360, true, 1],
  [1280, false, 2],
  [1280, true, 0],
] as const)('At %i pixels, dark: %s', (width, dark, from) => {
  test.each(['en/learn/', ...someOf(LESSONS, 3, from)])(
    '%s is open to everybody, with all that folds opened',
    async (path) => {
      const { page, problems, close } = await open(path, { width, dark });
      await page.evaluate(() => {
        for (const one of document.querySelectorAll('details')) one.open = true;
      });
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(await problems()).toEqual([]);
      await close();
    },
  );
});

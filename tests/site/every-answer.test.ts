// Each question of the course, answered in each wrong way: what is said then explains, and it is about this answer and no other.
import { expect, test } from 'vitest';
import { type Opened, open, pages } from './browser.ts';

type Page = Opened['page'];

const LESSONS = pages().filter((path) => /^en\/learn\/./.test(path));

interface Said {
  readonly question: string;
  readonly answer: string;
  readonly right: boolean;
  /** How it begins: that it is right, or is not. */
  readonly verdict: string;
  readonly why: string;
}

/** Taps each answer of each question, and reads what opens. */
async function answerEach(page: Page): Promise<Said[]> {
  const all: Said[] = [];
  for (const question of await page.locator('[data-question]').all()) {
    const asked = await question.locator('.asked').innerText();
    for (const answer of await question.locator('.answers details').all()) {
      await answer.locator('summary').click();
      const [verdict, told] = [await answer.locator('p b').first().innerText(), await answer.locator('p').innerText()];
      all.push({
        question: asked,
        answer: await answer.locator('summary').innerText(),
        right: (await answer.getAttribute('data-right')) !== null,
        verdict,
        why: told.replace(verdict, '').trim(),
      });
    }
  }
  return all;
}

/** Decides for each outcome in turn, and reads the reasons that then stand there. */
async function predictEach(page: Page): Promise<string[][]> {
  const reasons: string[][] = [];
  for (const label of await page.locator('.predict label').all()) {
    await label.click();
    const run = page.locator('details.run');
    if ((await run.getAttribute('open')) === null) await run.locator('> summary').click();
    const why = run.locator('details');
    if ((await why.getAttribute('open')) === null) await why.locator('summary').click();
    reasons.push(await page.locator('[data-reason]:visible').allInnerTexts());
  }
  return reasons;
}

function explainsAnswers(said: readonly Said[]): void {
  const questions = [...new Set(said.map(({ question }) => question))];
  expect(questions).toHaveLength(3);
  for (const question of questions) {
    const answers = said.filter((one) => one.question === question);
    expect(answers.filter(({ right }) => right)).toHaveLength(1);
    expect(answers.length).toBeGreaterThanOrEqual(3);
    expect(new Set(answers.map(({ why }) => why)).size, question).toBe(answers.length);
    for (const { answer, right, verdict, why } of answers) {
      expect(verdict, answer).toBe(right ? 'Right.' : 'Not quite.');
      expect(why.length, `${question} ${answer}`).toBeGreaterThan(15);
      expect(why, answer).not.toMatch(/[{}]|undefined|NaN/);
    }
  }
}

function explainsExpectations(options: readonly string[], reasons: readonly string[][]): void {
  expect(reasons).toHaveLength(options.length);
  expect(
    reasons.filter((shown) => shown.length === 1),
    'the right one stands alone',
  ).toHaveLength(1);
  for (const [place, shown] of reasons.entries()) {
    expect(shown.length).toBeLessThanOrEqual(2);
    expect(shown.some((reason) => reason.startsWith(`“${options[place]?.trim()}”`))).toBe(true);
    expect(shown.every((reason) => reason.length > 40)).toBe(true);
  }
}

test.each(LESSONS)('%s explains each answer by itself, and each expectation beside what happens', async (path) => {
  const { page, problems, close } = await open(path, { width: 360, height: 740 });
  explainsAnswers(await answerEach(page));
  const options = await page.locator('.predict label').allInnerTexts();
  explainsExpectations(options, await predictEach(page));
  expect(await problems()).toEqual([]);
  await close();
});

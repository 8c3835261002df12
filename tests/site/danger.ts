// Answers that mean danger, and what a page shows then.
import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { parse } from 'yaml';
import * as z from 'zod/mini';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { ACTS } from '../../src/wizards/safety/acts.ts';
import { dangersOf, rankOf } from '../../src/wizards/safety/dangers.ts';
import type { Opened } from './browser.ts';

export type Page = Opened['page'];

const FIX = z.object({
  title: z.string(),
  steps: z.array(z.object({ do: z.string(), acts: z._default(z.array(z.enum(ACTS)), []) })),
});
const CAUTION = z.object({ harm: z.string() });
const CHECK = z.object({ options: z.record(z.string(), z.object({ label: z.string() })) });

/** What is written at the head of a content file. */
function written(path: string): unknown {
  const text = readFileSync(`src/content/en/${path}`, 'utf8');
  return parse(/^---\n([\s\S]*?)\n---/.exec(text)?.[1] ?? text);
}

export const fixOf = (fixClass: string) => FIX.parse(written(`fixes/${fixClass}.mdx`));
const harmOf = (caution: string): string => CAUTION.parse(written(`cautions/${caution}.yaml`)).harm;
const labelOf = (check: string, option: string): string =>
  CHECK.parse(written(`checks/${check}.yaml`)).options[option]?.label ?? option;

export interface Danger {
  readonly check: string;
  readonly option: string;
  readonly fixClass: string;
  /** Asked before everything else. */
  readonly first: boolean;
}

export const DANGERS = SIGN_MODEL.checks.flatMap(({ id, first, danger }) =>
  Object.entries(danger ?? {}).map(
    ([option, fixClass]): Danger => ({ check: id, option, fixClass, first: first === true }),
  ),
);
export const FIRST_DANGERS = DANGERS.filter(({ first }) => first);

export const AGAIN = 'Try again';
export const MISSING = 'could not be loaded';
/** What stands on a page where words are missing. */
export const HOLES = /\[[a-z]+(-[\w-]+)?\]|undefined/;

export const question = (complaint: string): string => `en/put-it-right/${complaint}/`;
const inOneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();
export const main = async (page: Page): Promise<string> => inOneLine(await page.locator('main').innerText());

/** By which nothing is dangerous: the walk goes on. */
export const NOTHING_WARM = labelOf('danger-now', 'none');
export const TELLING = 'What do you know already?';
/** Passes the telling over. */
export const ASK_ME = 'Nothing yet, ask me';

/** Answers the question of danger, and waits for what comes after it. */
export async function nothingIsWarm(page: Page): Promise<void> {
  await page.getByRole('button', { name: NOTHING_WARM }).first().click();
  await page.locator('.walk .acts').first().waitFor();
}

export const answer = (page: Page, { check, option }: Danger): Promise<void> =>
  page.getByRole('button', { name: labelOf(check, option) }).click();

/** The whole danger page: its name, every step in order, and at each step its cautions. */
export async function showsDanger(page: Page, { fixClass }: Danger): Promise<void> {
  const { title, steps } = fixOf(fixClass);
  await page.getByRole('heading', { level: 1, name: title }).waitFor({ timeout: 5_000 });
  expect(inOneLine(await page.locator('.walk').innerText()).startsWith(inOneLine(`${title} ${steps[0]?.do}`))).toBe(
    true,
  );
  const told = (await page.locator('.steps > li').allInnerTexts()).map(inOneLine);
  expect(told).toHaveLength(steps.length);
  for (const [index, step] of steps.entries()) {
    expect(told[index]).toContain(inOneLine(step.do));
    // What can kill or hurt stands in full at each step that brings it.
    for (const danger of dangersOf(step.acts).filter((id) => rankOf(id) !== 'damage'))
      expect(told[index]).toContain(inOneLine(harmOf(danger)));
  }
  expect(await main(page)).not.toMatch(HOLES);
}

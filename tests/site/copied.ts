// What a button copied, and the long link that a short one stands for.

import { unfolded } from '../../src/wizards/short-links/index.ts';
import type { Opened } from './browser.ts';

type Page = Opened['page'];

export async function copiedBy({ page, context }: Pick<Opened, 'page' | 'context'>, button: string): Promise<string> {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.evaluate(() => navigator.clipboard.writeText('nothing yet'));
  await page.getByRole('button', { name: button, exact: true }).first().click();
  await page.waitForFunction(async () => (await navigator.clipboard.readText()) !== 'nothing yet');
  return page.evaluate(() => navigator.clipboard.readText());
}

/** The address that opens behind a short link to this site. */
export function longOf(link: string): string {
  const { origin, pathname, search, hash } = new URL(link);
  const read = unfolded(search.slice(1));
  if (!pathname.endsWith('/a/') || read.kind !== 'whole') throw new Error(`no short link: ${link}`);
  return `${origin}${pathname.slice(0, -'a/'.length)}${read.state.page}/${read.state.search}${hash}`;
}

/** The addresses in a text. */
export const linksIn = (text: string): string[] => text.match(/https?:\/\/[^\s)]+/g) ?? [];

/** Waits until the address says what the answer is. */
export const found = async (page: Page): Promise<void> => page.waitForURL(/[?&]made=/);

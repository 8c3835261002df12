// What a button copied, and the long link that a short one stands for.

import { unfolded } from '../../src/wizards/short-links/index.ts';
import type { Opened } from './browser.ts';

type Page = Opened['page'];

/** What a button of the page hands to the clipboard, once the clipboard has taken it. */
export async function copiedBy({ page, context }: Pick<Opened, 'page' | 'context'>, button: string): Promise<string> {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  // The clipboard itself, read while it is being written, can be found empty.
  const taken = page.evaluate(
    () =>
      new Promise<string>((told) => {
        const { clipboard } = navigator;
        const { write, writeText } = Clipboard.prototype;
        clipboard.writeText = async (text) => {
          await writeText.call(clipboard, text);
          told(text);
        };
        clipboard.write = async (items) => {
          await write.call(clipboard, items);
          const [item] = items;
          told(item === undefined ? '' : await (await item.getType('text/plain')).text());
        };
      }),
  );
  await page.getByRole('button', { name: button, exact: true }).first().click();
  return taken;
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

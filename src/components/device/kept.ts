// The list of all that may be kept on a device, for the privacy page.
import { FACES } from './faces.ts';
import { type Entry, LESSONS, readStored, textStored, UNITS } from './stored.ts';
import { TESTS, testsInTab } from './tests-in-tab.ts';

/** Kept once a person cleared the copy of the site, so that it is not made again. */
export const COPY_WISH: Entry<'none'> = {
  id: 'copy-wish',
  read: (text) => (text === 'none' ? text : undefined),
  write: (wish) => wish,
};

/** The copy of the site itself: no word but many files, kept by the worker (copy.ts). */
export const COPY = 'copy';

/** The case notebook: a text in a database of its own (notebook.ts). */
export const NOTEBOOK = 'notebook';

/** The layout sheets: a text in a database of their own (src/components/kept-sheets). */
export const SHEETS = 'layout-sheets';

/** All words that may be kept. */
const ENTRIES: readonly { readonly id: string; readonly read: (text: string) => unknown }[] = [
  UNITS,
  LESSONS,
  COPY_WISH,
  FACES,
];
/** All that may be kept, in the order in which the privacy page tells it. */
export const STORED_IDS: readonly string[] = [
  ...[UNITS.id, LESSONS.id, NOTEBOOK, SHEETS, TESTS],
  ...[COPY, COPY_WISH.id, FACES.id],
];

/** What the privacy page tells of one: whether anything lies there, and its text where it can be read. */
export interface StoredNow {
  readonly kept: boolean;
  readonly text: string | undefined;
}

export function storedNow(id: string): StoredNow {
  if (id === TESTS) {
    const tests = testsInTab();
    return { kept: tests !== undefined, text: tests?.place };
  }
  const text = textStored(id);
  const entry = ENTRIES.find((one) => one.id === id);
  const readable = text !== undefined && entry?.read(text) !== undefined;
  return { kept: text !== undefined, text: readable ? text : undefined };
}

export const copyWanted = (): boolean => readStored(COPY_WISH) === undefined;

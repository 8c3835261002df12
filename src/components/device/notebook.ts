// The case notebook on this device.
import { BASE } from '../words/index.ts';
import { type Kept, readBook, writeBook } from './book.ts';
import { type Found, KeptText } from './kept-text.ts';

const BOOK = /* @__PURE__ */ new KeptText<readonly Kept[]>({
  store: 'notebook',
  empty: [],
  read: (text) => {
    const read = readBook(text);
    return 'kept' in read ? read.kept : undefined;
  },
  write: writeBook,
});

/** What a person finds when the notebook is opened. */
export type Book = Omit<Found<readonly Kept[]>, 'value'> & { readonly kept: readonly Kept[] };
const bookOf = ({ value, ...rest }: Found<readonly Kept[]>): Book => ({ kept: value, ...rest });

/** The notebook as it lies there. Rejects where the browser keeps nothing for this site. */
export const openBook = (): Promise<Book> => BOOK.open().then(bookOf);

/** Changes the notebook in one step, and gives it as it is then; rejects, with nothing changed, as `KeptText.change` does. */
export const changeBook = (how: (kept: readonly Kept[]) => readonly Kept[]): Promise<Book> =>
  BOOK.change(how).then(bookOf);

/** What could not be read is not wanted any more. */
export const forgetSpoilt = (): Promise<void> => BOOK.forgetSpoilt();

/** Takes everything off the device, the former notebook and what was spoilt too. */
export const clearBook = (): Promise<void> => BOOK.clear();

/** How many answers are kept; undefined where nothing at all lies there, or nothing can. */
export const keptInBook = (): Promise<number | undefined> => BOOK.lying().then((kept) => kept?.length);

/** Calls when the notebook was changed, in this tab or another. Gives what ends that. */
export const onBook = (listener: () => void): (() => void) => BOOK.onChange(listener);

/** The address of this page as the notebook keeps it. */
export const pathHere = (search: string): string => location.pathname.slice(BASE.length) + search + location.hash;

/** The address of a kept answer on this site. */
export const linkOf = ({ path }: Kept): string => location.origin + BASE + path;

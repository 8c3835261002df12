// The case notebook on this device: one text and the one before it, in a database of the browser, changed in one step or not at all.
// A change reads what lies there inside its own step, so that two tabs never lose each other's answers, and a crash leaves the last good one.
import { createStore, promisifyRequest, type UseStore } from 'idb-keyval';
import { BASE } from '../words/index.ts';
import { type Kept, readBook, writeBook } from './book.ts';

/** The notebook as it is now, as it was before the last change, and what lay there and could not be read. */
const NOW = 'now';
const BEFORE = 'before';
const SPOILT = 'spoilt';

/** What a person finds when the notebook is opened. */
export interface Book {
  readonly kept: readonly Kept[];
  /** Texts that cannot be read: kept for as long as nobody takes them away. */
  readonly spoilt: readonly string[];
  /** Whether `kept` is the notebook before the last change, since the last one cannot be read. */
  readonly before: boolean;
}

const CHANGED = `both-rails-notebook ${BASE}`;

let opened: UseStore | undefined;
function shelf(): UseStore {
  // More than one site may stand on a host, each in its folder.
  opened ??= createStore(`both-rails ${BASE}`, 'notebook');
  return opened;
}

interface Lying {
  readonly now: unknown;
  readonly before: unknown;
  readonly spoilt: unknown;
}

async function lyingIn(store: IDBObjectStore): Promise<Lying> {
  const [now, before, spoilt] = await Promise.all(
    [NOW, BEFORE, SPOILT].map((key) => promisifyRequest<unknown>(store.get(key))),
  );
  return { now, before, spoilt };
}

/** Nothing counts as an empty notebook; what is there and cannot be read gives undefined. */
function keptIn(text: unknown): readonly Kept[] | undefined {
  if (text === undefined) return [];
  const read = typeof text === 'string' ? readBook(text) : undefined;
  return read !== undefined && 'kept' in read ? read.kept : undefined;
}

const textOf = (value: unknown): string => (typeof value === 'string' ? value : String(JSON.stringify(value)));

function bookOf({ now, before, spoilt }: Lying): Book {
  const put = Array.isArray(spoilt) ? spoilt.map(textOf) : [];
  const kept = keptIn(now);
  if (kept !== undefined) return { kept, spoilt: put, before: false };
  const former = keptIn(before);
  const bad = [now, ...(former === undefined ? [before] : [])].map(textOf);
  return { kept: former ?? [], spoilt: [...put, ...bad], before: true };
}

/** The notebook as it lies there. Rejects where the browser keeps nothing for this site. */
export const openBook = (): Promise<Book> => shelf()('readonly', lyingIn).then(bookOf);

/**
 * Changes the notebook in one step, and gives it as it is then. What could not be read is put aside first, never written over.
 * Rejects, with nothing changed, where the browser has no room (isFull) or keeps nothing.
 */
export async function changeBook(how: (kept: readonly Kept[]) => readonly Kept[]): Promise<Book> {
  const book = await shelf()('readwrite', async (store) => {
    const lying = await lyingIn(store);
    const was = bookOf(lying);
    const kept = how(was.kept);
    if (was.before) store.put(was.spoilt, SPOILT);
    store.put(was.before ? writeBook(was.kept) : (lying.now ?? writeBook([])), BEFORE);
    store.put(writeBook(kept), NOW);
    await promisifyRequest(store.transaction);
    return { kept, spoilt: was.spoilt, before: false };
  });
  tell();
  return book;
}

/** What could not be read is not wanted any more. */
export async function forgetSpoilt(): Promise<void> {
  await shelf()('readwrite', async (store) => {
    const was = bookOf(await lyingIn(store));
    if (was.before) store.put(writeBook(was.kept), NOW);
    store.delete(SPOILT);
    await promisifyRequest(store.transaction);
  });
  tell();
}

/** Takes everything off the device, the former notebook and what was spoilt too. */
export async function clearBook(): Promise<void> {
  await shelf()('readwrite', (store) => {
    store.clear();
    return promisifyRequest(store.transaction);
  });
  tell();
}

/** How many answers are kept; undefined where nothing at all lies there, or nothing can. */
export async function keptInBook(): Promise<number | undefined> {
  try {
    const lying = await shelf()('readonly', lyingIn);
    if (Object.values(lying).every((one) => one === undefined)) return undefined;
    return bookOf(lying).kept.length;
  } catch {
    return undefined;
  }
}

/** Whether a change failed for want of room. */
export const isFull = (error: unknown): boolean => error instanceof DOMException && error.name === 'QuotaExceededError';

function tell(): void {
  const channel = new BroadcastChannel(CHANGED);
  channel.postMessage('');
  channel.close();
}

/** Calls when the notebook was changed, in this tab or another, and when a page is gone back to. Gives what ends that. */
export function onBook(listener: () => void): () => void {
  const channel = new BroadcastChannel(CHANGED);
  channel.addEventListener('message', listener);
  addEventListener('pageshow', listener);
  return () => {
    channel.close();
    removeEventListener('pageshow', listener);
  };
}

/** The address of this page as the notebook keeps it. */
export const pathHere = (search: string): string => location.pathname.slice(BASE.length) + search + location.hash;

/** The address of a kept answer on this site. */
export const linkOf = ({ path }: Kept): string => location.origin + BASE + path;

/** A mark for a kept answer that no other has. `randomUUID` is not there where an address is not secure. */
export const freshMark = (): string =>
  [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('');

// One text of ours in a database of the browser, with the one before it, changed in one step or not at all. A change reads what lies there
// inside its own step, so that two tabs never lose each other's, and a crash leaves the last good one.
import { createStore, promisifyRequest, type UseStore } from 'idb-keyval';
import { BASE } from '../words/index.ts';

/** The text as it is now, as it was before the last change, and what lay there and could not be read. */
const NOW = 'now';
const BEFORE = 'before';
const SPOILT = 'spoilt';

/** What is kept: where, and how it is written. `read` gives undefined for what cannot be read. */
export interface Form<Value> {
  /** The database’s name after that of the site, if it has one, and the name of its store. */
  readonly database?: string;
  readonly store: string;
  /** What nothing at all stands for. */
  readonly empty: Value;
  readonly read: (text: string) => Value | undefined;
  readonly write: (value: Value) => string;
}

/** What a person finds. */
export interface Found<Value> {
  readonly value: Value;
  /** Texts that cannot be read: kept for as long as nobody takes them away. */
  readonly spoilt: readonly string[];
  /** Whether `value` is what was before the last change, since the last one cannot be read. */
  readonly before: boolean;
}

interface Lying {
  readonly now: unknown;
  readonly before: unknown;
  readonly spoilt: unknown;
}

const textOf = (value: unknown): string => (typeof value === 'string' ? value : String(JSON.stringify(value)));

async function lyingIn(store: IDBObjectStore): Promise<Lying> {
  const [now, before, spoilt] = await Promise.all(
    [NOW, BEFORE, SPOILT].map((key) => promisifyRequest<unknown>(store.get(key))),
  );
  return { now, before, spoilt };
}

export class KeptText<Value> {
  readonly #form: Form<Value>;
  readonly #channel: string;
  #opened: UseStore | undefined;

  constructor(form: Form<Value>) {
    this.#form = form;
    this.#channel = `both-rails-${form.store} ${BASE}`;
  }

  #shelf(): UseStore {
    const { database, store } = this.#form;
    // More than one site may stand on a host, each in its folder.
    this.#opened ??= createStore(['both-rails', BASE, ...(database === undefined ? [] : [database])].join(' '), store);
    return this.#opened;
  }

  /** Nothing counts as empty; what is there and cannot be read gives undefined. */
  #valueIn(text: unknown): Value | undefined {
    if (text === undefined) return this.#form.empty;
    return typeof text === 'string' ? this.#form.read(text) : undefined;
  }

  #foundIn({ now, before, spoilt }: Lying): Found<Value> {
    const put = Array.isArray(spoilt) ? spoilt.map(textOf) : [];
    const value = this.#valueIn(now);
    if (value !== undefined) return { value, spoilt: put, before: false };
    const former = this.#valueIn(before);
    const bad = [now, ...(former === undefined ? [before] : [])].map(textOf);
    return { value: former ?? this.#form.empty, spoilt: [...put, ...bad], before: true };
  }

  /** What lies there. Rejects where the browser keeps nothing for this site. */
  open(): Promise<Found<Value>> {
    return this.#shelf()('readonly', lyingIn).then((lying) => this.#foundIn(lying));
  }

  /**
   * Changes it in one step, and gives what is there then. What could not be read is put aside first, never written over. Rejects, with
   * nothing changed, where the browser has no room (isFull) or keeps nothing.
   */
  async change(how: (value: Value) => Value): Promise<Found<Value>> {
    const { write, empty } = this.#form;
    const found = await this.#shelf()('readwrite', async (store) => {
      const lying = await lyingIn(store);
      const was = this.#foundIn(lying);
      const value = how(was.value);
      if (was.before) store.put(was.spoilt, SPOILT);
      store.put(was.before ? write(was.value) : (lying.now ?? write(empty)), BEFORE);
      store.put(write(value), NOW);
      await promisifyRequest(store.transaction);
      return { value, spoilt: was.spoilt, before: false };
    });
    this.#tell();
    return found;
  }

  /** What could not be read is not wanted any more. */
  async forgetSpoilt(): Promise<void> {
    await this.#shelf()('readwrite', async (store) => {
      const was = this.#foundIn(await lyingIn(store));
      if (was.before) store.put(this.#form.write(was.value), NOW);
      store.delete(SPOILT);
      await promisifyRequest(store.transaction);
    });
    this.#tell();
  }

  /** Takes everything off the device, what was before and what was spoilt too. */
  async clear(): Promise<void> {
    await this.#shelf()('readwrite', (store) => {
      store.clear();
      return promisifyRequest(store.transaction);
    });
    this.#tell();
  }

  /** What lies there; undefined where nothing at all does, or nothing can. */
  async lying(): Promise<Value | undefined> {
    try {
      const lying = await this.#shelf()('readonly', lyingIn);
      if (Object.values(lying).every((one) => one === undefined)) return undefined;
      return this.#foundIn(lying).value;
    } catch {
      return undefined;
    }
  }

  #tell(): void {
    const channel = new BroadcastChannel(this.#channel);
    channel.postMessage('');
    channel.close();
  }

  /** Calls when it was changed, in this tab or another, and when a page is gone back to. Gives what ends that. */
  onChange(listener: () => void): () => void {
    const channel = new BroadcastChannel(this.#channel);
    channel.addEventListener('message', listener);
    addEventListener('pageshow', listener);
    return () => {
      channel.close();
      removeEventListener('pageshow', listener);
    };
  }
}

/** Whether a change failed for want of room. */
export const isFull = (error: unknown): boolean => error instanceof DOMException && error.name === 'QuotaExceededError';

/** A mark that nothing else that is kept has. `randomUUID` is not there where an address is not secure. */
export const freshMark = (): string =>
  [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('');

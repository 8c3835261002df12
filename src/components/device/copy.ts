// The copy of the site that the worker keeps (src/offline): how large it is, and how it is cleared.
import { BASE } from '../words/index.ts';
import { COPY_WISH } from './kept.ts';
import { store } from './stored.ts';

export interface Copy {
  readonly files: number;
  readonly bytes: number;
}

/** The names that src/offline/shelf.ts gives its caches begin so. */
const OURS = `both-rails ${BASE} `;
const CONTENTS = `${BASE}_kept`;

async function names(): Promise<readonly string[]> {
  // Browsers have no caches where an address is not secure.
  if (!('caches' in globalThis)) return [];
  return (await caches.keys()).filter((name) => name.startsWith(OURS));
}

interface Contents {
  readonly files: Readonly<Record<string, readonly [bytes: number, digest: string]>>;
}

async function sizeOf(cacheName: string): Promise<Copy> {
  const list = await caches.match(CONTENTS, { cacheName });
  const contents: Contents = (await list?.json()) ?? { files: {} };
  const files = Object.values(contents.files);
  return { files: files.length, bytes: files.reduce((sum, [bytes]) => sum + bytes, 0) };
}

/** All that is kept, of every release; undefined where nothing is. */
export async function copyKept(): Promise<Copy | undefined> {
  const kept = await names().catch(() => []);
  if (kept.length === 0) return;
  const sizes = await Promise.all(kept.map((name) => sizeOf(name).catch(() => ({ files: 0, bytes: 0 }))));
  const sum = (part: keyof Copy): number => sizes.reduce((total, size) => total + size[part], 0);
  return { files: sum('files'), bytes: sum('bytes') };
}

/** A copy that is cleared is not made again. */
export async function clearCopy(): Promise<void> {
  store(COPY_WISH, 'none');
  const worker = await navigator.serviceWorker?.getRegistration(BASE);
  await worker?.unregister();
  for (const name of await names()) await caches.delete(name);
}

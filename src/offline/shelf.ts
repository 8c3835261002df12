// What is kept on the device: the files of each release in a cache of its own, with a list of them and their digests, and which open page
// belongs to which release.
import { addressOf, BUILT } from './built.ts';
import { unpack } from './pack.ts';

/** The list of what a cache holds. It is written last: a cache without it was not filled to the end. */
export interface Contents {
  /** Size in bytes and SHA-256 of each file, by its path below the base. */
  readonly files: Readonly<Record<string, readonly [bytes: number, digest: string]>>;
  readonly pack: string;
  readonly digest: string;
  /** Releases that were kept when this one came. */
  readonly before: readonly string[];
}

/** Several sites may share a host: each has its own names. The privacy page finds them by the same beginning (components/device/copy.ts). */
const OURS = `both-rails ${new URL('.', location.href).pathname} `;
const PAGES = `${OURS}pages`;
const CONTENTS = addressOf('_kept');

const nameOf = (release: string): string => OURS + release;

/** Every release of which something is kept, the whole or a part. */
export async function releasesKept(): Promise<readonly string[]> {
  const names = await caches.keys();
  return names.filter((name) => name.startsWith(OURS) && name !== PAGES).map((name) => name.slice(OURS.length));
}

const read = new Map<string, Contents>();

export async function contentsOf(release: string): Promise<Contents | undefined> {
  const contents = read.get(release) ?? (await contentsKept(release));
  if (contents !== undefined) read.set(release, contents);
  return contents;
}

async function contentsKept(release: string): Promise<Contents | undefined> {
  const found = await caches.match(CONTENTS, { cacheName: nameOf(release) });
  try {
    return await found?.json();
  } catch {
    return undefined;
  }
}

export async function digestOf(bytes: BufferSource): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** What a host says beside each file, and a kept one therefore says too. */
const SAID_BY_HOST = /^(?:content-security-policy|referrer-policy|permissions-policy|x-|cross-origin-|origin-agent-)/;

interface Fetched {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly headers: readonly (readonly [string, string])[];
}

/** What is at an address, if it has this digest. The browser's own cache may be damaged too: then it is passed by. */
async function fetchExactly(file: string, digest: string, cache: RequestCache = 'default'): Promise<Fetched> {
  const response = await fetch(addressOf(file), { cache, priority: 'low' });
  const bytes = new Uint8Array(response.ok ? await response.arrayBuffer() : new ArrayBuffer());
  const headers = [...response.headers].filter(([name]) => SAID_BY_HOST.test(name));
  if ((await digestOf(bytes)) === digest) return { bytes, headers };
  if (cache === 'default') return fetchExactly(file, digest, 'reload');
  throw new Error(`${file} is not what this release has`);
}

/** Fetches the pack of a release and lays out what is in it: all of it, or nothing. */
export async function fill(release: string, { pack, digest, before }: Omit<Contents, 'files'>): Promise<void> {
  const { bytes: all, headers } = await fetchExactly(pack, digest);
  const packed = unpack(all);
  const complete = (await contentsOf(release)) !== undefined;
  try {
    const cache = await caches.open(nameOf(release));
    const files = await Promise.all(
      packed.map(async ({ path, bytes }) => {
        await cache.put(addressOf(path), fileOf(path, bytes, headers));
        return [path, [bytes.length, await digestOf(bytes)]] as const;
      }),
    );
    const contents: Contents = { files: Object.fromEntries(files), pack, digest, before };
    await cache.put(CONTENTS, Response.json(contents));
    read.set(release, contents);
  } catch (error) {
    if (!complete) await caches.delete(nameOf(release));
    throw error;
  }
}

const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json',
  svg: 'image/svg+xml',
  woff2: 'font/woff2',
  webmanifest: 'application/manifest+json',
};

const fileOf = (path: string, body: BodyInit, headers: Fetched['headers']): Response =>
  new Response(body, {
    headers: [
      ...headers.map(([name, value]): [string, string] => [name, value]),
      ['content-type', TYPES[path.slice(path.lastIndexOf('.') + 1)] ?? 'application/octet-stream'],
    ],
  });

/** A kept file, if it is whole. */
async function whole(release: string, path: string, digest: string): Promise<Response | undefined> {
  const found = await caches.match(addressOf(path), { cacheName: nameOf(release) });
  const bytes = await found?.clone().arrayBuffer();
  return bytes !== undefined && (await digestOf(bytes)) === digest ? found : undefined;
}

const mending = new Map<string, Promise<void>>();

/** One mending at a time for a release, however many of its files are asked for. */
function mend(release: string, contents: Omit<Contents, 'files'>): Promise<void> {
  const now = mending.get(release) ?? fill(release, contents).finally(() => mending.delete(release));
  mending.set(release, now);
  return now;
}

/** The list of a release; where it is lost, that of this worker's own is made anew. */
async function contentsMended(release: string): Promise<Contents | undefined> {
  const contents = await contentsOf(release);
  if (contents !== undefined || release !== BUILT.release) return contents;
  await mend(release, { ...BUILT, before: [] }).catch(() => undefined);
  return contentsOf(release);
}

export type Found = Response | 'not of this release' | 'lost';

/** A file of a release. What is missing or damaged is fetched again, and is only taken if it is what that release had. */
export async function take(release: string, path: string): Promise<Found> {
  const contents = await contentsMended(release);
  if (contents === undefined) return 'lost';
  const [, digest] = contents.files[path] ?? [];
  if (digest === undefined) return 'not of this release';
  const kept = await whole(release, path, digest);
  if (kept !== undefined) return kept;
  try {
    await mend(release, contents);
    return (await whole(release, path, digest)) ?? 'lost';
  } catch {
    return takeAlone(release, path, digest);
  }
}

/** The pack of an old release may be gone from the host; a file that did not change since is there still. */
async function takeAlone(release: string, path: string, digest: string): Promise<Found> {
  try {
    const { bytes, headers } = await fetchExactly(path.replace(/(^|\/)index\.html$/, '$1'), digest);
    const cache = await caches.open(nameOf(release));
    await cache.put(addressOf(path), fileOf(path, bytes, headers));
    return fileOf(path, bytes, headers);
  } catch {
    return 'lost';
  }
}

export const has = async (release: string, path: string): Promise<boolean> =>
  Object.hasOwn((await contentsOf(release))?.files ?? {}, path);

const releases = new Map<string, string>();
const pageAddress = (id: string): string => addressOf(`_kept?page=${id}`);

/** Notes to which release an open page belongs. The browser may end the worker at any time, so that it is written down. */
export async function belongs(page: string, release: string): Promise<void> {
  releases.set(page, release);
  const cache = await caches.open(PAGES);
  await cache.put(pageAddress(page), new Response(release));
}

export async function releaseOf(page: string): Promise<string | undefined> {
  const known = releases.get(page) ?? (await (await caches.match(pageAddress(page), { cacheName: PAGES }))?.text());
  if (known !== undefined) releases.set(page, known);
  return known;
}

/** Lets go of releases before `release` that no open page belongs to, and of what is known of pages that are closed. */
export async function tidy(release: string, open: readonly string[]): Promise<void> {
  const inUse = new Set(await Promise.all(open.map(releaseOf)));
  for (const old of (await contentsOf(release))?.before ?? []) {
    if (inUse.has(old)) continue;
    await caches.delete(nameOf(old));
    read.delete(old);
  }
  const pages = await caches.open(PAGES);
  const still = new Set(open.map(pageAddress));
  for (const { url } of await pages.keys()) if (!still.has(url)) await pages.delete(url);
}

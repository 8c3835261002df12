/// <reference lib="webworker" />
// The service worker: answers from the files of the release that a page belongs to, so that the site is there without a line and no page
// ever gets files of two releases. docs/decisions/022-offline.md says why it is as it is.
import { addressOf, BUILT, safetyOf } from './built.ts';
import { belongs, fill, has, releaseOf, releasesKept, take, tidy } from './shelf.ts';

declare const self: ServiceWorkerGlobalScope;

const OWN = BUILT.release;
const BASE = new URL('.', location.href).pathname;
/** Files with a hash in their name: what they hold is the same in every release that has them. */
const HASHED = '_astro/';

async function install(): Promise<void> {
  const before = (await releasesKept()).filter((release) => release !== OWN);
  await fill(OWN, { ...BUILT, before });
  // What is for safety waits for nobody. A browser may let it wait all the same while the worker before has work: the pages ask once more.
  if (before.length > 0 && before.every((release) => safetyOf(release) < safetyOf(OWN))) await self.skipWaiting();
}

async function tidyUp(): Promise<void> {
  const open = await self.clients.matchAll({ includeUncontrolled: true, type: 'all' });
  await tidy(
    OWN,
    open.map(({ id }) => id),
  );
}

self.addEventListener('install', (event) => event.waitUntil(install()));

self.addEventListener('activate', (event) => event.waitUntil(tidyUp()));

self.addEventListener('message', (event) => {
  const { data, source } = event;
  if (data === 'switch') event.waitUntil(self.skipWaiting());
  if (typeof data?.shown === 'string') waits(event, data.shown);
  if (typeof data?.release === 'string' && source instanceof Client) {
    event.waitUntil(greet(source, data.release));
  }
});

/** A page that shows an older release sees this one wait: it is told so, unless this one is for safety. */
function waits(event: ExtendableMessageEvent, shown: string): void {
  if (safetyOf(shown) < safetyOf(OWN)) event.waitUntil(self.skipWaiting());
  else event.source?.postMessage('waits');
}

/** A page says which release it is of, and is only then answered from here: so it never gets a file of another one. */
async function greet(page: Client, release: string): Promise<void> {
  await belongs(page.id, release);
  page.postMessage({ release: OWN });
  await self.clients.claim();
  await tidyUp();
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin || !pathname.startsWith(BASE)) return;
  const path = decodeURIComponent(pathname.slice(BASE.length));
  if (request.mode === 'navigate') event.respondWith(page(event, path.replace(/(^|\/)$/, '$1index.html')));
  else if (path.startsWith(HASHED)) event.respondWith(hashed(request, path));
  else event.respondWith(file(event, path));
});

/** A page is always one of this worker's own release. */
async function page(event: FetchEvent, path: string): Promise<Response> {
  const { request, resultingClientId } = event;
  const found = await take(OWN, path);
  if (found instanceof Response) {
    event.waitUntil(belongs(resultingClientId, OWN));
    return found;
  }
  const { pathname, search } = new URL(request.url);
  if (await has(OWN, `${path}/index.html`)) return Response.redirect(`${pathname}/${search}`, 301);
  try {
    return await fetch(request);
  } catch {
    const missing = found === 'lost' ? found : await take(OWN, '404.html');
    if (!(missing instanceof Response)) return lostPage(path);
    // Its search is of this release too.
    event.waitUntil(belongs(resultingClientId, OWN));
    return new Response(missing.body, { status: 404, headers: missing.headers });
  }
}

/** Of whatever release it is, only the right file has that name. */
async function hashed(request: Request, path: string): Promise<Response> {
  for (const release of new Set([OWN, ...(await releasesKept())])) {
    const found = (await has(release, path)) ? await take(release, path) : undefined;
    if (found instanceof Response) return found;
  }
  return fetch(request);
}

/** What a page fetches by a name that is the same in every release, such as its words: from its own release or not at all. */
async function file({ request, clientId }: FetchEvent, path: string): Promise<Response> {
  const release = await releaseOf(clientId);
  const found = release === undefined ? 'not of this release' : await take(release, path);
  if (found instanceof Response) return found;
  if (release === undefined || found === 'not of this release') return fetch(request);
  return fromHostOf(release, request);
}

/** A page that came from the host before its release was kept: what the host gives is right as long as it still gives that release. */
async function fromHostOf(release: string, request: Request): Promise<Response> {
  const response = await fetch(request);
  const now = await fetch(addressOf('sw.js'), { cache: 'no-store' });
  return (await now.text()).includes(release) ? response : Response.error();
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** In the system's own face: the styles of the site may be lost with the page. */
const LOOK =
  'body{font:1.1rem/1.5 system-ui;max-width:40rem;margin:2rem auto;padding:0 1rem}h1{line-height:1.2}a{display:inline-block;padding:.6rem 0}';

/** Neither on the device nor to be had: says so. */
function lostPage(path: string): Response {
  const asked = path.split('/')[0] ?? '';
  const [first = ''] = Object.keys(BUILT.lost);
  const language = Object.hasOwn(BUILT.lost, asked) ? asked : first;
  const { title = '', lead = '', again = '' } = BUILT.lost[language] ?? {};
  const [heading, text, link] = [title, lead, again].map(escaped);
  return new Response(
    `<!doctype html><html lang="${language}"><meta charset="utf-8"><meta name="viewport" content="width=device-width">` +
      `<meta name="color-scheme" content="light dark"><title>${heading}</title><style>${LOOK}</style>` +
      `<main><h1>${heading}</h1><p>${text}</p><p><a href="">${link}</a></p></main></html>`,
    { status: 503, headers: { 'content-type': 'text/html; charset=utf-8' } },
  );
}

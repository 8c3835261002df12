// Starts the worker that keeps a copy of the site (src/offline), says what is new, and switches to a new release: asked, or unasked where
// it is one for safety. A page that was loaded again by that says so; nothing is lost, since answers stand in the address.
import { copyWanted } from '../device/index.ts';

/** The name that a tab has while its page loads itself again; a walk writes the history anew as it begins. */
const FOR_SAFETY = 'for-safety';

const { serviceWorker: worker } = navigator;
const own = document.documentElement.dataset.release ?? '';
let asked = false;

const safetyOf = (release: string): number => Number(release.split('.')[1]);

/** The address of a file in the root of the site, where the picture of the page stands too. */
const inRoot = (file: string): string =>
  new URL(file, document.querySelector<HTMLLinkElement>('link[rel=icon]')?.href ?? location.href).href;

/** In no page, since most never show it. */
const LOOK = `
.news { position: sticky; inset-block-end: 0.6rem; z-index: 1; }
.news p {
  display: flex; flex-wrap: wrap; gap: 0.4rem 1rem; align-items: center; inline-size: fit-content;
  padding: 0.4rem 0.4rem 0.4rem 1rem; background: var(--sheet); border: 2.5px solid var(--copper);
}
@media print { .news { display: none; } }`;

interface News {
  readonly kept: string;
  readonly ready: string;
  readonly switch: string;
  readonly safety: string;
  readonly understood: string;
}

async function newsWords(): Promise<News | undefined> {
  const response = await fetch(inRoot('offline.json'));
  const { news }: { readonly news: Readonly<Record<string, News>> } = await response.json();
  return news[document.documentElement.lang] ?? Object.values(news)[0];
}

const told = new Set<string>();

/** Shows a line at the foot of the screen, once; its button does `act`. */
async function tell(what: 'ready' | 'safety', act: (box: HTMLElement) => void): Promise<void> {
  if (told.has(what)) return;
  told.add(what);
  const words = await newsWords();
  if (words === undefined) return;
  const look = new CSSStyleSheet();
  look.replaceSync(LOOK);
  document.adoptedStyleSheets.push(look);
  const box = document.createElement('div');
  const line = document.createElement('p');
  const button = document.createElement('button');
  box.className = 'news wrap';
  line.dataset.news = what;
  line.role = what === 'safety' ? 'alert' : 'status';
  button.className = 'button quiet';
  button.type = 'button';
  button.textContent = what === 'safety' ? words.understood : words.switch;
  button.onclick = () => act(box);
  line.append(words[what], button);
  box.append(line);
  document.body.append(box);
}

/** At the foot of the page, whether one looks or not: a club room may have no line. */
async function sayKept(): Promise<void> {
  const words = await newsWords();
  const foot = document.querySelector('.foot .wrap');
  if (words === undefined || foot === null) return;
  const line = document.createElement('p');
  line.dataset.kept = '';
  line.textContent = words.kept;
  foot.append(line);
}

/** Lets the site be installed. */
function linkManifest(): void {
  for (const [rel, file] of [
    ['manifest', 'manifest.webmanifest'],
    ['apple-touch-icon', 'icons/180.png'],
  ] as const) {
    const link = document.createElement('link');
    link.rel = rel;
    link.href = inRoot(file);
    document.head.append(link);
  }
}

/** Offers to switch: to a release that waits, or to the one that is there by now. */
function offer(registration: ServiceWorkerRegistration): void {
  tell('ready', () => {
    asked = true;
    if (registration.waiting === null) location.reload();
    else registration.waiting.postMessage('switch');
  });
}

/** New pages are of `release` by now, this one is not. */
function outdated(release: string, registration: ServiceWorkerRegistration): void {
  if (safetyOf(release) > safetyOf(own)) {
    window.name = FOR_SAFETY;
    location.reload();
  } else if (asked) location.reload();
  else offer(registration);
}

const greet = (to: ServiceWorker | null): void => to?.postMessage({ release: own });

function watch(registration: ServiceWorkerRegistration): void {
  const look = (): void => {
    if (registration.active !== null) registration.waiting?.postMessage({ shown: own });
  };
  registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
  look();
  worker.addEventListener('message', ({ data }: MessageEvent<'waits' | { readonly release?: unknown }>) => {
    if (data === 'waits') offer(registration);
    else if (typeof data.release === 'string' && data.release !== own) outdated(data.release, registration);
  });
  worker.addEventListener('controllerchange', () => greet(worker.controller));
  addEventListener('pageshow', ({ persisted }) => persisted && greet(worker.controller));
}

/** The address of the worker; the policy of the page lets this one start and no other. */
function workerAddress(): string {
  const address = inRoot('sw.js');
  const rules = { createScriptURL: (given: string) => (given === address ? address : null) };
  return window.trustedTypes?.createPolicy('own-copy', rules).createScriptURL(address) ?? address;
}

async function begin(): Promise<void> {
  linkManifest();
  if (window.name === FOR_SAFETY) {
    window.name = '';
    tell('safety', (box) => box.remove());
  }
  if (worker === undefined || !copyWanted()) return;
  watch(await worker.register(workerAddress()));
  greet((await worker.ready).active);
  // It is active once all is kept.
  await sayKept();
}

// Where a browser keeps nothing, or the line is gone, the page goes on without.
begin().catch(() => undefined);

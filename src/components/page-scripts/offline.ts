// Starts the worker that keeps a copy of the site (src/offline), says what is new, and switches to a new release: asked, or unasked where
// it is one for safety. A page that was loaded again by that says so; nothing is lost, since answers stand in the address.
import { copyWanted } from '../device/index.ts';

/** Left in the history by a page that loads itself again. */
const FOR_SAFETY = 'for-safety';

const { serviceWorker: worker } = navigator;
const own = document.documentElement.dataset.release ?? '';
let asked = false;

const safetyOf = (release: string): number => Number(release.split('.')[1]);

/** Shows a line at the foot of the screen; its button does `act`. */
function tell(news: 'ready' | 'safety', act: (line: HTMLElement) => void): void {
  const line = document.querySelector<HTMLElement>(`[data-news="${news}"]`);
  const button = line?.querySelector('button');
  if (!(line && button)) return;
  line.hidden = false;
  button.onclick = () => act(line);
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
    history.replaceState(FOR_SAFETY, '');
    location.reload();
  } else if (asked) location.reload();
  else offer(registration);
}

const greet = (to: ServiceWorker | null): void => to?.postMessage({ release: own });

function watch(registration: ServiceWorkerRegistration): void {
  const look = (): void => {
    if (registration.waiting !== null && registration.active !== null) offer(registration);
  };
  registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
  look();
  worker.addEventListener('message', ({ data }: MessageEvent<{ readonly release?: unknown }>) => {
    if (typeof data.release === 'string' && data.release !== own) outdated(data.release, registration);
  });
  worker.addEventListener('controllerchange', () => greet(worker.controller));
  addEventListener('pageshow', ({ persisted }) => persisted && greet(worker.controller));
}

/** The address of the worker, beside the manifest; the policy of the page lets this one start and no other. */
function workerAddress(): string {
  const manifest = document.querySelector<HTMLLinkElement>('link[rel=manifest]');
  const address = new URL('sw.js', manifest?.href ?? location.href).href;
  const rules = { createScriptURL: (given: string) => (given === address ? address : null) };
  return window.trustedTypes?.createPolicy('own-copy', rules).createScriptURL(address) ?? address;
}

async function begin(): Promise<void> {
  if (history.state === FOR_SAFETY) {
    history.replaceState(null, '');
    tell('safety', (line) => {
      line.hidden = true;
    });
  }
  if (!copyWanted()) return;
  watch(await worker.register(workerAddress()));
  greet((await worker.ready).active);
}

// Where a browser keeps nothing, or the line is gone, the page goes on without.
begin().catch(() => undefined);

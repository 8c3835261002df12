// The built site in a real browser, for every test that looks at pages.
import { existsSync, globSync } from 'node:fs';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll } from 'vitest';
import { manyVisitsOptions } from '../../scripts/machine.mjs';
import { serve } from '../../scripts/serve.mjs';

/** The folder of the built site that is looked at, and the sub-path it was built for. */
const FOLDER = process.env.SITE_FOLDER ?? 'dist';
const BASE = process.env.SITE_BASE ?? '/';

/** What a request ends with when its page leads on to another one meanwhile. */
const LEFT_BEHIND = 'net::ERR_ABORTED';

interface Site {
  /** With the final slash, so that `${address}en/` is a page. */
  readonly address: string;
  readonly origin: string;
  readonly browser: Browser;
}

interface Look {
  /** CSS pixels; 1280 by default. */
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly javaScript?: boolean;
  /** Whether nothing is on the device yet, the faces of the site neither: on all visits but the first they are. */
  readonly first?: boolean;
}

export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Sentences about console errors, policy violations, failed requests, requests to other hosts and cookies so far. */
  readonly problems: () => Promise<readonly string[]>;
  readonly close: () => Promise<void>;
}

declare global {
  interface Window {
    seen?: { readonly violations: string[]; shift: number };
  }
}

/** Addresses of all pages below the base, read from the built files: '', 'en/', 'en/…/'. */
export function pages(): readonly string[] {
  const files = globSync('**/index.html', { cwd: FOLDER });
  return files.map((file) => file.replaceAll('\\', '/').replace(/index\.html$/, '')).sort();
}

async function start(): Promise<Site> {
  if (!existsSync(FOLDER)) throw new Error(`There is no built site in ${FOLDER}: run npm run build first`);
  const [{ address, origin, close }, browser] = await Promise.all([
    serve({ folder: FOLDER, base: BASE }),
    chromium.launch(manyVisitsOptions()),
  ]);
  ending.push(() => browser.close(), close);
  return { address, origin, browser };
}

const ending: (() => Promise<void>)[] = [];
let started: Promise<Site> | undefined;

/** The served site and the browser, started once per test file and taken down after it. */
export function site(): Promise<Site> {
  started ??= start();
  return started;
}

afterAll(async () => {
  for (const end of ending.splice(0)) await end();
});

/** Runs in the page: the word that a page before this one has kept the faces of the site. */
export function keepFaces(): void {
  try {
    localStorage.setItem('both-rails-faces', '1');
  } catch {
    // A page that may keep nothing.
  }
}

/** Notes what a page does behind the back of a test: policy violations and shifts of the layout. */
function watch(): void {
  const seen = { violations: [] as string[], shift: 0 };
  window.seen = seen;
  addEventListener('securitypolicyviolation', (event) => {
    seen.violations.push(`${event.violatedDirective} blocked ${event.blockedURI}`);
  });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      if ('value' in entry && typeof entry.value === 'number') seen.shift += entry.value;
    }
  }).observe({ type: 'layout-shift', buffered: true });
}

function collect(page: Page, origin: string): string[] {
  const found: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') found.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => found.push(`script: ${error.message}`));
  page.on('request', (request) => {
    const address = request.url();
    if (/^https?:/.test(address) && new URL(address).origin !== origin) found.push(`another host: ${address}`);
  });
  page.on('requestfailed', (request) => {
    const why = request.failure()?.errorText ?? '';
    if (why !== LEFT_BEHIND) found.push(`not loaded (${why}): ${request.url()}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) found.push(`${response.status()}: ${response.url()}`);
  });
  return found;
}

/** Opens a page of the site, such as 'en/' or 'en/work-it-out/enough-current/?scale=n', and waits until it is still. */
export async function open(path: string, look: Look = {}): Promise<Opened> {
  const { address, origin, browser } = await site();
  const { width = 1280, height = 800, dark = false, javaScript = true, first = false } = look;
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: 'reduce',
    javaScriptEnabled: javaScript,
    serviceWorkers: 'block',
    locale: 'en-GB',
  });
  await context.addInitScript(watch);
  if (!first) await context.addInitScript(keepFaces);
  const page = await context.newPage();
  const found = collect(page, origin);
  await page.goto(`${address}${path}`, { waitUntil: javaScript ? 'networkidle' : 'load' });
  const problems = async () => {
    const violations = javaScript
      ? await page.evaluate(() => window.seen?.violations ?? ['the page was not watched'])
      : [];
    const cookies = await context.cookies();
    return [...found, ...violations, ...cookies.map(({ name }) => `cookie: ${name}`)];
  };
  return { page, context, problems, close: () => context.close() };
}

/** Goes to another search of the same page as a link within it does. What a browser itself refuses leaves the page as it is. */
export const goWithin = (page: Page, search: string): Promise<void> =>
  page.evaluate((text) => {
    try {
      history.pushState(null, '', location.pathname + text);
    } catch {
      return;
    }
    dispatchEvent(new PopStateEvent('popstate'));
  }, search);

/** Waits until an answer is there with all that stands below its verdict; that comes one drawing of the page later. */
export const answered = (page: Page): Promise<void> => page.locator('h1.verdict:not([aria-busy="true"] h1)').waitFor();

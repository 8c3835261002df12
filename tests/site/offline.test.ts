// Without a line: after one visit everything is there, a page never gets files of two releases, and what is kept can be seen and cleared.
import { cpSync, globSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import { writeOffline } from '../../scripts/build/offline.mjs';
import { manyVisitsOptions } from '../../scripts/machine.mjs';
import { serve } from '../../scripts/serve.mjs';
import { shortened } from '../../src/wizards/short-links/index.ts';
import { answered } from './browser.ts';
import { nothingIsWarm } from './danger.ts';
import { accessibilityFaults } from './measure.ts';

const FOLDER = process.env.SITE_FOLDER ?? 'dist';
const MIB = 1024 * 1024;

const ANSWERED =
  'en/work-it-out/enough-current/?modern=4&moving=3&older=2&scale=h0&supply-amps=2&supply-kind=dc&supply-plug=unknown&supply-volts=16' +
  '&system=two-rail&unit-input=dc&unit-input-volts=18&unit-limit=3&unit-plug=unknown&unit-rails=follows';
const WORDS = 'en/put-it-right/words.json';
const READY = 'A new release is ready.';
const SAFETY = 'A new release corrects something about safety, so this page switched to it.';

const made: string[] = [];
const browser = chromium.launch(manyVisitsOptions());
afterAll(async () => {
  await (await browser).close();
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true });
});

interface Release {
  readonly folder: string;
  readonly release: string;
}

/** The built site as the next release, with `mark` in the name of every page and in every sentence that is fetched for walks. */
async function nextRelease(mark: string, safety: number): Promise<Release> {
  const folder = mkdtempSync(join(tmpdir(), 'release-'));
  made.push(folder);
  const twin = /\.(?:br|gz)$/;
  cpSync(FOLDER, folder, { recursive: true, filter: (path) => !twin.test(path) });
  for (const file of globSync('en/**/*.html', { cwd: folder })) {
    const page = readFileSync(join(folder, file), 'utf8');
    writeFileSync(join(folder, file), page.replace('<title>', `<title>${mark} `));
  }
  const words = JSON.parse(readFileSync(join(folder, WORDS), 'utf8'));
  writeFileSync(join(folder, WORDS), JSON.stringify({ ...words, mark }));
  const { release } = await writeOffline(new URL(`${pathToFileURL(folder).href}/`), safety);
  return { folder, release };
}

let second: Release;
let third: Release;
beforeAll(async () => {
  second = await nextRelease('Second', 0);
  third = await nextRelease('Third', 1);
}, 240_000);

const open: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of open.splice(0).reverse()) await close();
});

interface Visit {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly address: string;
  /** Another release, or a damaged folder, takes the place of what the host has. */
  readonly replace: (folder: string) => Promise<void>;
  /** The host is gone for the pages of the browser and for its worker. */
  readonly cut: () => Promise<void>;
  readonly problems: readonly string[];
}

/** A first visit of a page in a new browser profile, until all is kept. */
async function visit(path: string, { kept = true, width = 1280 } = {}): Promise<Visit> {
  let server = await serve({ folder: FOLDER });
  const { address, port } = server;
  const context = await (await browser).newContext({ serviceWorkers: 'allow', viewport: { width, height: 800 } });
  const problems: string[] = [];
  let up = true;
  open.push(
    () => context.close(),
    async () => {
      if (up) await server.close();
    },
  );
  const page = await context.newPage();
  page.on('pageerror', (error) => problems.push(error.message));
  await page.goto(`${address}${path}`);
  if (kept) await allKept(page);
  return {
    context,
    page,
    address,
    problems,
    replace: async (folder) => {
      await server.close();
      server = await serve({ folder, port });
    },
    cut: async () => {
      await context.setOffline(true);
      await server.close();
      up = false;
    },
  };
}

/** The page is answered by the worker, and the list that is written last is there. */
const allKept = (page: Page): Promise<void> =>
  expect
    .poll(
      () =>
        page.evaluate(
          async () => navigator.serviceWorker.controller !== null && (await caches.match('/_kept')) !== undefined,
        ),
      { timeout: 30_000 },
    )
    .toBe(true);

/** The same site by way of a line that counts what the host sends, every header included. */
async function counted({ port, close }: Awaited<ReturnType<typeof serve>>) {
  let bytes = 0;
  const line = createServer((near) => {
    const far = connect(port, '127.0.0.1');
    far.on('data', (part) => {
      bytes += part.length;
    });
    for (const end of [near, far]) end.on('error', () => undefined);
    near.pipe(far).pipe(near);
  });
  await new Promise<void>((done) => line.listen(0, '127.0.0.1', done));
  const at = line.address();
  if (at === null || typeof at === 'string') throw new Error('the line has no port');
  return {
    address: `http://127.0.0.1:${at.port}/`,
    bytes: () => bytes,
    close: () => {
      line.close();
      return close();
    },
  };
}

const releaseOf = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.documentElement.dataset.release);

/** What the page gets when it fetches the words of walks: the mark of the release that they are of. */
const markFetched = (page: Page): Promise<string> =>
  page.evaluate(async (words) => {
    const answer = await fetch(`/${words}`);
    return String((await answer.json()).mark ?? 'First');
  }, WORDS);

const releasesKept = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => (await caches.keys()).filter((name) => !name.endsWith(' pages')));

/** Asks the host for a new worker, as the browser does by itself from time to time. */
const lookForRelease = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    (await navigator.serviceWorker.ready).update();
  });

describe('after one visit, with the line cut', () => {
  test('pages, a lesson with its figure, an answer by its link and its short link, a walk, a fix and the search are there', async () => {
    const { page, address, cut, problems } = await visit('en/');
    await page.getByText('A copy of this site is on this device').waitFor();
    await cut();

    await page.goto(`${address}en/`);
    expect(await page.locator('h1').count()).toBe(1);
    await page.getByText('A copy of this site is on this device').waitFor();

    await page.goto(`${address}en/learn/voltage-along-the-track/`);
    await page.locator('astro-island figure, astro-island .figure').first().scrollIntoViewIfNeeded();
    await page.locator('astro-island:not([ssr]) input').first().waitFor();

    await page.goto(`${address}${ANSWERED}`);
    await answered(page);

    const { pathname, search } = new URL(ANSWERED, address);
    await page.goto(`${address}en/a/?${shortened({ page: pathname.slice('/en/'.length, -1), search })}`);
    await page.waitForURL(/enough-current\/\?.*modern=4/);
    await answered(page);

    await page.goto(`${address}en/put-it-right/trips-at-gap/?told=yes&tools=none`);
    await nothingIsWarm(page);
    for (let asked = 0; asked < 2; asked++) {
      const before = await page.locator('.walk h1').innerText();
      await page.locator('.walk .answers button').first().click();
      await page.waitForFunction((old) => document.querySelector<HTMLElement>('.walk h1')?.innerText !== old, before);
    }

    await page.goto(`${address}en/fixes/more-feeders/`);
    expect(await page.locator('.steps > li').count()).toBeGreaterThan(1);
    const faces = await page.evaluate(async () => {
      await document.fonts.ready;
      return [...document.fonts].filter(({ status }) => status === 'loaded').length;
    });
    expect(faces).toBeGreaterThanOrEqual(3);

    await page.goto(`${address}en/search/`);
    await page.locator('main input[type=search]').fill('feeder');
    await page.locator('#results li a').first().click();
    await page.waitForURL((url) => !url.pathname.includes('search'));
    expect(await page.locator('h1').count()).toBe(1);

    expect(problems).toEqual([]);
  });

  test('every page of the site is there, and an address that leads nowhere says so and finds what was meant', async () => {
    const { page, address, cut } = await visit('en/');
    await cut();
    const pages = globSync('**/index.html', { cwd: FOLDER }).map((file) => file.replace(/index\.html$/, ''));
    expect(pages.length).toBeGreaterThan(100);
    const missing = await page.evaluate(async (paths) => {
      const names = (await caches.keys()).filter((name) => !name.endsWith(' pages'));
      const cache = await caches.open(names[0] ?? '');
      const found = await Promise.all(paths.map((path) => cache.match(`/${path}index.html`)));
      return paths.filter((_, i) => found[i] === undefined);
    }, pages);
    expect(missing).toEqual([]);
    const response = await page.goto(`${address}en/fixes/larger-suply/`);
    expect(response?.status()).toBe(404);
    expect(await page.locator('h1').innerText()).toBe('There is no such page');
    await page.locator('#results a[href="/en/fixes/larger-supply/"]').waitFor();
    await page.locator('main input[type=search]').fill('more feeders');
    await page.locator('#results a[href*="feeder"]').first().waitFor();
    await page.goto(`${address}en/learn`);
    expect(new URL(page.url()).pathname).toBe('/en/learn/');
  });

  test('the page that was open at the first visit goes on with what it has not fetched yet', async () => {
    const { page, cut } = await visit('en/put-it-right/trips-at-gap/?told=yes&tools=none');
    await cut();
    await nothingIsWarm(page);
    const before = await page.locator('.walk h1').innerText();
    await page.locator('.walk .answers button').first().click();
    await page.waitForFunction((old) => document.querySelector<HTMLElement>('.walk h1')?.innerText !== old, before);
  });
});

describe('the first visit', () => {
  test.each(['en/', 'en/put-it-right/trips-at-gap/', ANSWERED])(
    'of /%s brings at most 1.5 MiB over the line, all that is kept included',
    async (path) => {
      const line = await counted(await serve({ folder: FOLDER }));
      const context = await (await browser).newContext({ serviceWorkers: 'allow' });
      open.push(line.close, () => context.close());
      const page = await context.newPage();
      await page.goto(`${line.address}${path}`);
      await allKept(page);
      await page.waitForLoadState('networkidle');
      const [pack = ''] = globSync('_astro/*.pack', { cwd: FOLDER });
      expect(line.bytes()).toBeGreaterThan(statSync(join(FOLDER, pack)).size);
      expect(line.bytes()).toBeLessThanOrEqual(1.5 * MIB);
    },
  );

  test('begins with the copy only when the page is there and at rest', async () => {
    const { page } = await visit('en/', { kept: false });
    const times = await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
      const [begun] = performance.getEntriesByType('resource').filter(({ name }) => name.endsWith('/offline.js'));
      const [at] = performance.getEntriesByType('navigation').map((entry) => entry.duration);
      return [begun?.startTime ?? 0, at ?? Number.NaN];
    });
    expect(times[0]).toBeGreaterThan((times[1] ?? Number.NaN) + 1000);
  });
});

/** Changes what is kept behind the back of the site. */
const damage = (page: Page, path: string, how: 'remove' | 'spoil'): Promise<void> =>
  page.evaluate(
    async ([address, act]) => {
      for (const name of (await caches.keys()).filter((one) => !one.endsWith(' pages'))) {
        const cache = await caches.open(name);
        if (act === 'remove') await cache.delete(address);
        else await cache.put(address, new Response('<h1>Half a pa', { headers: { 'content-type': 'text/html' } }));
      }
    },
    [`/${path}`, how] as const,
  );

describe('what is kept and damaged', () => {
  test.each(['remove', 'spoil'] as const)('heals with the line there: %s a page', async (how) => {
    const { page, address, cut } = await visit('en/');
    await damage(page, 'en/glossary/index.html', how);
    await page.goto(`${address}en/glossary/`);
    expect(await page.locator('h1').innerText()).toBe('Glossary');
    await cut();
    await page.reload();
    expect(await page.locator('h1').innerText()).toBe('Glossary');
  });

  test('says so in a sentence without the line, and heals when it is back', async () => {
    const { page, address, context } = await visit('en/');
    await damage(page, 'en/glossary/index.html', 'spoil');
    await context.setOffline(true);
    await context.route('**', (route) => route.abort());
    const response = await page.goto(`${address}en/glossary/`);
    expect(response?.status()).toBe(503);
    expect(await page.locator('h1').innerText()).toBe('This page is not on this device');
    await context.unroute('**');
    await context.setOffline(false);
    await page.getByRole('link', { name: 'Load the page again' }).click();
    await page.getByRole('heading', { level: 1, name: 'Glossary' }).waitFor();
  });

  test('a pack that came damaged leaves nothing behind, and no page is answered from it', async () => {
    const broken = mkdtempSync(join(tmpdir(), 'release-'));
    made.push(broken);
    cpSync(FOLDER, broken, { recursive: true, filter: (path) => !/\.(?:br|gz)$/.test(path) });
    for (const pack of globSync('_astro/*.pack', { cwd: broken })) {
      writeFileSync(join(broken, pack), readFileSync(join(broken, pack)).subarray(0, 100_000));
    }
    const { page, replace, address } = await visit('404.html', { kept: false });
    await replace(broken);
    await page.goto(`${address}en/`);
    await page.waitForTimeout(6000);
    expect(await page.evaluate(() => caches.keys())).toEqual([]);
    expect(await page.evaluate(() => navigator.serviceWorker.controller)).toBeNull();
    await replace(FOLDER);
    await page.reload();
    await allKept(page);
  });
});

describe('a new release', () => {
  test('asks, and switches only when it is told to, at the same address; nothing of two releases meets', async () => {
    const { page, context, address, replace, cut } = await visit(ANSWERED);
    const first = await releaseOf(page);
    const other = await context.newPage();
    await other.goto(`${address}en/put-it-right/trips-at-gap/`);
    expect(await page.getByText(READY).isVisible()).toBe(false);

    await replace(second.folder);
    await lookForRelease(page);
    await page.getByText(READY).waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);
    // Until then everything is of the old one, new pages too.
    await other.goto(`${address}en/put-it-right/trips-at-gap/`);
    expect([await releaseOf(other), await markFetched(other), await markFetched(page)]).toEqual([
      first,
      'First',
      'First',
    ]);
    await page.waitForTimeout(1000);
    expect(await releaseOf(page)).toBe(first);

    const told = page.url();
    await page.getByRole('button', { name: 'Switch now' }).click();
    await page.waitForFunction((release) => document.documentElement.dataset.release === release, second.release);
    expect(page.url()).toBe(told);
    await answered(page);
    expect(await page.title()).toMatch(/^Second /);
    expect(await markFetched(page)).toBe('Second');

    // The page that nobody asked stays as it is, gets files of its own release only, and says that there is a new one.
    expect([await releaseOf(other), await markFetched(other)]).toEqual([first, 'First']);
    await other.getByText(READY).waitFor();
    expect((await releasesKept(page)).length).toBe(2);
    await cut();
    expect([await markFetched(other), await markFetched(page)]).toEqual(['First', 'Second']);
    await other.getByRole('button', { name: 'Switch now' }).click();
    await other.waitForFunction((release) => document.documentElement.dataset.release === release, second.release);
    expect(await markFetched(other)).toBe('Second');
    // The old one is let go of with its last page.
    await expect.poll(() => releasesKept(page).then((kept) => kept.length)).toBe(1);
  });

  test('that is one for safety switches unasked, and says so on every open page', async () => {
    const { page, context, address, replace } = await visit(ANSWERED);
    const other = await context.newPage();
    await other.goto(`${address}en/fixes/more-feeders/`);
    await other.waitForTimeout(500);
    const told = page.url();
    await replace(third.folder);
    await lookForRelease(page);
    for (const one of [page, other]) {
      await one.waitForFunction((release) => document.documentElement.dataset.release === release, third.release);
      await one.getByText(SAFETY).waitFor();
      expect(await markFetched(one)).toBe('Third');
    }
    expect(page.url()).toBe(told);
    await answered(page);
    await other.getByRole('button', { name: 'Understood' }).click();
    expect(await other.getByText(SAFETY).isVisible()).toBe(false);
    // Said once.
    await page.reload();
    await page.waitForTimeout(1000);
    expect(await page.getByText(SAFETY).isVisible()).toBe(false);
    await expect.poll(() => releasesKept(page).then((kept) => kept.length)).toBe(1);
  });

  test('does not reach an open page by way of the host: what it lacks is refused rather than mixed', async () => {
    const { page, replace, context } = await visit('en/put-it-right/trips-at-gap/');
    await replace(second.folder);
    const lose = () => damage(page, WORDS, 'remove');
    // The browser's own cache still has the pack of the old release.
    await lose();
    expect(await markFetched(page)).toBe('First');
    // Then nobody has it.
    await lose();
    const session = await context.newCDPSession(page);
    await session.send('Network.clearBrowserCache');
    expect(await markFetched(page).catch(() => 'refused')).toBe('refused');
    // What did not change is the same file.
    const same = 'en/work-it-out/wire-it.json';
    await damage(page, same, 'spoil');
    expect(await page.evaluate(async (path) => (await fetch(path)).ok, `/${same}`)).toBe(true);
  });
});

describe('the privacy page', () => {
  test('tells how much is kept and clears it; cleared, it is not made again until that is wanted', async () => {
    const { page, address } = await visit('en/privacy/', { width: 360 });
    await page.reload();
    const row = (id: string) => page.locator(`[data-stored="${id}"]`);
    await expect.poll(() => row('copy').innerText()).toMatch(/^\d{3} files, \d+ MB$/);
    const files = globSync('**/*.{html,json,js,css,svg,woff2,webmanifest}', { cwd: FOLDER }).length - 1;
    const [count, megabytes] = (await row('copy').innerText()).match(/\d+/g)?.map(Number) ?? [];
    expect(count).toBe(files);
    const used = await page.evaluate(async () => (await navigator.storage.estimate()).usage ?? 0);
    expect(used / 1e6).toBeGreaterThan((megabytes ?? 0) * 0.8);

    await page.locator('[data-clear="copy"]').click();
    await expect.poll(() => row('copy').innerText()).toBe('Nothing is kept.');
    expect(await row('copy-wish').innerText()).toBe('none');
    expect(await page.evaluate(() => caches.keys())).toEqual([]);
    await page.goto(`${address}en/`);
    await page.waitForTimeout(5000);
    expect(await page.evaluate(() => caches.keys())).toEqual([]);

    await page.goto(`${address}en/privacy/`);
    await page.locator('[data-clear="copy-wish"]').click();
    await page.goto(`${address}en/`);
    await allKept(page);
  });
});

const MANIFEST = z.object({
  name: z.string(),
  display: z.string(),
  scope: z.string(),
  start_url: z.string(),
  icons: z.array(z.object({ src: z.string(), sizes: z.string(), purpose: z.string() })),
});

describe('the site as an app', () => {
  test('is told how it is called, where it begins and what it looks like, and the pictures are there', async () => {
    const { page, address } = await visit('en/');
    const href = await page.locator('link[rel=manifest]').getAttribute('href');
    const manifest = MANIFEST.parse(await (await page.request.get(new URL(href ?? '', address).href)).json());
    expect(manifest).toMatchObject({ name: 'Both Rails', display: 'standalone', scope: '/', start_url: '/en/' });
    const sizes = await page.evaluate(
      (icons) =>
        Promise.all(
          icons.map(async ({ src }) => {
            const image = new Image();
            image.src = src;
            await image.decode();
            return `${image.naturalWidth}x${image.naturalHeight}`;
          }),
        ),
      manifest.icons,
    );
    expect(sizes).toEqual(manifest.icons.map((icon) => icon.sizes));
    expect(sizes).toContain('512x512');
    expect(manifest.icons.map(({ purpose }) => purpose)).toContain('maskable');
    const session = await page.context().newCDPSession(page);
    const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
    // Playwright's own windows are private ones, in which nothing can be installed.
    expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual([]);
  });

  test('the worker is never kept by anybody between, what has a hash in its name for long', async () => {
    const { address } = await visit('en/', { kept: false });
    const cacheOf = async (path: string) => (await fetch(`${address}${path}`)).headers.get('cache-control');
    const [pack = ''] = globSync('_astro/*.pack', { cwd: FOLDER });
    expect(await cacheOf('sw.js')).toBe('no-store');
    expect(await cacheOf(pack.replaceAll('\\', '/'))).toMatch(/immutable/);
  });
});

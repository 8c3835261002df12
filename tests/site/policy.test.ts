// What a page allows is what stands in it.
import { createHash } from 'node:crypto';
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'node-html-parser';
import { describe, expect, test } from 'vitest';
import { answered, type Opened, open } from './browser.ts';

const SITE = process.env.SITE_FOLDER ?? 'dist';

const PAGES = globSync('**/*.html', { cwd: SITE });
const hashOf = (text: string): string => `sha256-${createHash('sha256').update(text).digest('base64')}`;

describe('The policy of a page', () => {
  test('names the hash of every script and style in it, and no other', () => {
    expect(PAGES.length).toBeGreaterThan(100);
    for (const page of PAGES) {
      const html = parse(readFileSync(join(SITE, page), 'utf8'));
      const policy = html.querySelector('meta[http-equiv="content-security-policy"]')?.getAttribute('content');
      if (policy === undefined) continue;
      const inline = html.querySelectorAll('style, script:not([src])').map(({ rawText }) => hashOf(rawText));
      const named = [...policy.matchAll(/'(sha256-[^']*)'/g)].map(([, hash]) => hash);
      expect(named.toSorted(), page).toEqual([...new Set(inline)].toSorted());
    }
  });

  test('stands before everything that it is about, and allows nothing that is not there', () => {
    for (const page of PAGES) {
      const text = readFileSync(join(SITE, page), 'utf8');
      const at = text.indexOf('http-equiv="content-security-policy"');
      if (at < 0) continue;
      expect(text.slice(0, at), page).not.toMatch(/<(?:script|style|link)\b/);
      expect(text.slice(at, text.indexOf('>', at)), page).not.toMatch(/\bdata:|'(?:wasm-)?unsafe-(?:inline|eval)'/);
    }
  });

  test('lets no string become a script or markup, and no worker start but that of the copy, and more where something is worked out in one', () => {
    for (const page of PAGES) {
      const html = parse(readFileSync(join(SITE, page), 'utf8'));
      const policy = html.querySelector('meta[http-equiv="content-security-policy"]')?.getAttribute('content');
      expect(policy, page).toContain("require-trusted-types-for 'script'");
      // The planning wizards, the plan, and the sheet, where a layout is divided.
      const starts = /(?:^|[\\/])(?:work-it-out[\\/][^\\/]+|plan|layout-sheet)[\\/]/.test(page);
      expect(/trusted-types ([^;]*);/.exec(policy ?? '')?.[1], page).toBe(starts ? 'own-copy default' : 'own-copy');
    }
  });
});

describe('Trusted types, in a browser', () => {
  const refused = (page: Opened['page'], code: string): Promise<boolean> =>
    page.evaluate((act) => {
      const acts: Record<string, () => unknown> = {
        markup: () => {
          document.createElement('p').innerHTML = '<img src=x>';
        },
        'a script of another host': () => new Worker('https://elsewhere.example/a.js'),
        'a script of its own': () => new Worker('/none.js').terminate(),
      };
      try {
        acts[act]?.();
        return false;
      } catch {
        return true;
      }
    }, code);

  test.each(['en/', 'en/work-it-out/wire-it/', 'en/search/?q=fishplate'])(
    '/%s refuses what it never does',
    async (path) => {
      const { page, problems, close } = await open(path);
      if (path.includes('search')) await page.locator('#results li').first().waitFor();
      expect(await problems()).toEqual([]);
      for (const act of ['markup', 'a script of another host', 'a script of its own'])
        expect(await refused(page, act), act).toBe(true);
      await close();
    },
  );

  test('a club’s fleet is worked out in a worker under it', async () => {
    const { page, problems, close } = await open('en/work-it-out/enough-current/');
    const started: string[] = [];
    page.on('worker', (worker) => started.push(worker.url()));
    await page.goto(
      new URL(
        '/en/work-it-out/enough-current/?modern=60&moving=8&older=2&scale=h0&supply-amps=4&supply-kind=dc&supply-plug=unknown&supply-volts=16' +
          '&system=two-rail&unit-input=dc&unit-input-volts=18&unit-limit=3&unit-plug=unknown&unit-rails=follows',
        page.url(),
      ).href,
    );
    await answered(page);
    expect(started.some((address) => address.includes('reckon-worker'))).toBe(true);
    expect(await problems()).toEqual([]);
    await close();
  });
});

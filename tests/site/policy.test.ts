// What a page allows is what stands in it.
import { createHash } from 'node:crypto';
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'node-html-parser';
import { describe, expect, test } from 'vitest';

const SITE = process.env.SITE_FOLDER ?? 'dist';

const PAGES = globSync('**/*.html', { cwd: SITE }).filter((page) => !page.startsWith('pagefind'));
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
      expect(text.includes("'wasm-unsafe-eval'"), page).toBe(/(?:^|[\\/])search[\\/]/.test(page));
      expect(text.slice(at, text.indexOf('>', at)), page).not.toMatch(/\bdata:|'unsafe-(?:inline|eval)'/);
    }
  });
});

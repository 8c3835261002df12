// What a device keeps: one registry, words for each entry, and no other code that writes on the device.
import { globSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { STORED_IDS } from '../../src/components/device/index.ts';

const REGISTRY = 'src/components/device/stored.ts';
/** The worker keeps the copy of the site; the registry knows its size and clears it. */
const COPY = ['src/components/device/copy.ts', 'src/offline/shelf.ts'];
/** The case notebook and the layout sheets, which are more than a word. */
const TEXTS = 'src/components/device/kept-text.ts';
/** What one tab keeps until it is closed. */
const TAB = 'src/components/device/tests-in-tab.ts';
const KEEPERS = /\b(?:localStorage|sessionStorage|indexedDB|idb-keyval|document\.cookie|cookieStore|caches)\b/;

describe('the registry of what is stored', () => {
  test('is the only code that keeps anything on a device, but for the copy of the site, whole texts and what a tab keeps', () => {
    const files = globSync('src/**/*.{ts,tsx,js,mjs,astro,mdx}').map((file) => file.replaceAll('\\', '/'));
    expect(files).toContain(REGISTRY);
    const code = (file: string): string => readFileSync(file, 'utf8').replaceAll(/^\s*(?:\/\/|\/?\*).*$/gm, '');
    const keeping = files.filter((file) => KEEPERS.test(code(file)));
    expect(keeping.toSorted()).toEqual([...COPY, TAB, TEXTS, REGISTRY].toSorted());
  });

  test.each([...STORED_IDS])('%s: the privacy page tells what, why, how long and who reads it', (id) => {
    const words: unknown = parse(readFileSync('src/content/en/words/privacy.yaml', 'utf8'));
    const keys = Object.keys(typeof words === 'object' && words !== null ? words : {});
    for (const one of ['', '-what', '-why', '-how-long', '-who']) expect(keys).toContain(`stored-${id}${one}`);
  });
});

// What a device keeps: one registry, words for each entry, and no other code that writes on the device.
import { globSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { STORED_IDS } from '../../src/components/device/index.ts';

const REGISTRY = 'src/components/device/stored.ts';
const KEEPERS = /\b(?:localStorage|sessionStorage|indexedDB|document\.cookie|cookieStore|caches\.open)\b/;

describe('the registry of what is stored', () => {
  test('is the only code that keeps anything on a device', () => {
    const files = globSync('src/**/*.{ts,tsx,js,mjs,astro,mdx}').map((file) => file.replaceAll('\\', '/'));
    expect(files).toContain(REGISTRY);
    const keeping = files.filter((file) => KEEPERS.test(readFileSync(file, 'utf8')));
    expect(keeping).toEqual([REGISTRY]);
  });

  test.each([...STORED_IDS])('%s: the privacy page tells what, why, how long and who reads it', (id) => {
    const words: unknown = parse(readFileSync('src/content/en/words/privacy.yaml', 'utf8'));
    const keys = Object.keys(typeof words === 'object' && words !== null ? words : {});
    for (const one of ['', '-what', '-why', '-how-long', '-who']) expect(keys).toContain(`stored-${id}${one}`);
  });
});

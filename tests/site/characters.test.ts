// Every character that a page prints is in one of the faces that the site brings along.
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'node-html-parser';
import { describe, expect, test } from 'vitest';
import { ALL } from '../../scripts/build/characters.mjs';

const white = /[\n\r\t]/;

function printed(html: string): string {
  const root = parse(html);
  for (const element of root.querySelectorAll('script, style')) element.remove();
  const islands = root.querySelectorAll('astro-island').map((island) => island.getAttribute('props') ?? '');
  return [root.querySelector('body')?.text ?? '', ...islands].join('');
}

const uncovered = (text: string) =>
  [...new Set(text)]
    .filter((character) => !(ALL.has(character) || white.test(character)))
    .map((character) => `${character} U+${character.codePointAt(0)?.toString(16).toUpperCase().padStart(4, '0')}`);

/** All texts in what a page fetches, however deep. */
function textsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
}

test('a character outside the faces is noticed, in text and in what an island is given', () => {
  const html =
    '<html><body><p>5&nbsp;Ω &micro;</p><astro-island props="{&quot;a&quot;:&quot;☃&quot;}"></astro-island></body></html>';
  expect(uncovered(printed(html))).toEqual(['µ U+00B5', '☃ U+2603']);
});

describe('in the built site', () => {
  const files = globSync('**/*.html', { cwd: 'dist' });

  test('there are pages to look at', () => {
    expect(files.length).toBeGreaterThanOrEqual(20);
  });

  test.each(files)('%s', (file) => {
    expect(uncovered(printed(readFileSync(join('dist', file), 'utf8')))).toEqual([]);
  });

  // The terms of the search are compared and not printed.
  const fetched = globSync('**/*.json', { cwd: 'dist' }).filter((file) => !file.endsWith('search.json'));

  test('words that an answer or a walk fetches are printed too', () => {
    expect(fetched.length).toBeGreaterThanOrEqual(200);
    for (const file of fetched) {
      const words = textsIn(JSON.parse(readFileSync(join('dist', file), 'utf8')));
      expect(uncovered(words.join('')), file).toEqual([]);
    }
  });
});

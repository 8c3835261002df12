// What a page brings over a slow line before anything is answered: itself, the scripts that it names and those that they import. And a whole walk.
import { existsSync, globSync, readFileSync, statSync } from 'node:fs';
import { parse } from 'node-html-parser';
import { describe, expect, test } from 'vitest';

const FOLDER = process.env.SITE_FOLDER ?? 'dist';
const KIB = 1024;
/** What comes with each file before its first byte, about. */
const HEADERS = 360;
/** A figure that is folded away is loaded when somebody opens it, others when somebody reaches for them. */
const LATER = 'details astro-island[client="visible"], astro-island[client="asked"]';

const PAGES = [
  { what: 'a lesson', pages: '*/learn/*/', kib: 60 },
  { what: 'a wizard with its first question', pages: '*/work-it-out/*/', kib: 70 },
  { what: 'a walk with its first question', pages: '*/put-it-right/*/', kib: 70 },
  { what: 'the layout sheet where one begins', pages: '*/layout-sheet/', kib: 70 },
  { what: 'a fix page', pages: '*/fixes/*/', kib: 25 },
] as const;

const filesOf = (pages: string): readonly string[] =>
  globSync(`${pages}index.html`, { cwd: FOLDER }).map((file) => file.replaceAll('\\', '/'));

const textOf = (file: string): string => readFileSync(`${FOLDER}/${file}`, 'utf8');

/** Compressed, where that is less. */
function bytesOf(file: string): number {
  const path = `${FOLDER}/${file}`;
  return HEADERS + statSync(existsSync(`${path}.gz`) ? `${path}.gz` : path).size;
}

function namedBy(page: string): readonly string[] {
  const html = parse(textOf(page));
  for (const island of html.querySelectorAll(LATER)) island.remove();
  return [...html.toString().matchAll(/_astro\/[^"'\s&)]+\.js(?![\w-])/g)].map(([script]) => script);
}

const importedBy = (script: string): readonly string[] =>
  [...textOf(script).matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g)].map(([, name]) => `_astro/${name}`);

const scriptsOf = (page: string): ReadonlySet<string> => closureOf(namedBy(page));

/** These scripts and all that they import. */
function closureOf(scripts: readonly string[]): ReadonlySet<string> {
  const found = new Set<string>();
  const left = [...scripts];
  for (let script = left.pop(); script !== undefined; script = left.pop()) {
    if (found.has(script)) continue;
    found.add(script);
    left.push(...importedBy(script));
  }
  return found;
}

const kibOf = (page: string): number => [page, ...scriptsOf(page)].reduce((sum, file) => sum + bytesOf(file), 0) / KIB;

describe.each(PAGES)('$what', ({ pages, kib }) => {
  const files = filesOf(pages);

  test(`comes with at most ${kib} KiB`, () => {
    expect(files).not.toEqual([]);
    expect(files.map((file) => ({ file, kib: kibOf(file) })).filter((page) => page.kib > kib)).toEqual([]);
  });
});

/** A walk of so many questions, each as heavy as they are on average, and of one proposal. */
const QUESTIONS_OF_A_WALK = 6;
const WALK_KIB = 130;

const inFolder = (files: string): readonly string[] =>
  globSync(files, { cwd: FOLDER }).map((file) => file.replaceAll('\\', '/'));

function onAverage(files: readonly string[]): number {
  return files.reduce((sum, file) => sum + bytesOf(file), 0) / files.length;
}

describe('a whole walk', () => {
  const pages = filesOf('en/put-it-right/*/').filter((page) => !page.includes('how-well'));
  const after = inFolder('_astro/{rest.,walk-later.}*.{js,css}');
  const words = inFolder('en/put-it-right/words.json');
  const asked = inFolder('en/put-it-right/asked/*.json');
  const fixes = inFolder('en/fixes/*.json');

  test(`of ${QUESTIONS_OF_A_WALK} questions and a proposal comes with at most ${WALK_KIB} KiB`, () => {
    expect([after.length, words.length].concat(asked.length > 100 ? 1 : 0, fixes.length > 100 ? 1 : 0)).toEqual([
      2, 1, 1, 1,
    ]);
    const told = QUESTIONS_OF_A_WALK * onAverage(asked) + onAverage(fixes);
    const weighed = pages.map((page) => {
      const scripts = new Set([...scriptsOf(page), ...after.flatMap((file) => [file, ...closureOf(importedBy(file))])]);
      const files = [page, ...scripts, ...words];
      return { page, kib: (files.reduce((sum, file) => sum + bytesOf(file), 0) + told) / KIB };
    });
    expect(weighed.filter(({ kib }) => kib > WALK_KIB)).toEqual([]);
  });
});

test('a fix page comes without a script file', () => {
  const files = filesOf('*/fixes/*/');
  expect(files).not.toEqual([]);
  expect(files.filter((file) => scriptsOf(file).size > 0)).toEqual([]);
});

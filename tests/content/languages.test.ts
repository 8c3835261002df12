// A language is a line in one list and a folder of its name; what people say in other languages publishes none.
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { lacking, lackingLine } from '../../scripts/check/lacking.mjs';
import { LANGUAGES } from '../../src/components/words/languages.ts';
import { listed } from '../../src/components/words/lists.ts';
import { fill } from '../../src/components/words/words.ts';
import { WIZARD_IDS } from '../../src/wizards/index.ts';
import { codeIn, SRC } from './asked.ts';
import { CONTENT, isRecord, texts, wordsOf } from './folder.ts';

const KINDS = ['cautions', 'checks', 'complaints', 'fixes', 'glossary', 'lessons', 'questions', 'sources', 'words'];
const PHRASES = join(CONTENT, 'phrases');
const placesIn = (sentence: unknown): string[] =>
  [...String(sentence).matchAll(/\{([\w-]+)/g)].map(([, name = '']) => name).sort();

/** What is wrong with the sentences of a room, measured by the English ones. What is not there is there in English. */
function strayIn(own: Readonly<Record<string, unknown>>, english: Readonly<Record<string, unknown>>): string[] {
  const places = (sentence: unknown): string =>
    [...new Set(placesIn(sentence))].map((name) => `{${name}}`).join(', ') || 'no value';
  return Object.entries(own).flatMap(([key, sentence]) => {
    if (!Object.hasOwn(english, key)) return [`"${key}" is no sentence of English.`];
    const [said, wanted] = [places(sentence), places(english[key])];
    return said === wanted ? [] : [`"${key}" says ${said} where English says ${wanted}.`];
  });
}

describe('The languages', () => {
  test('each have a folder, and no folder is there without its line', () => {
    const folders = readdirSync(CONTENT).filter((name) => !['phrases', 'same.yaml'].includes(name));
    expect(folders.sort()).toEqual(LANGUAGES.map(({ id }) => id).sort());
  });

  test('begin with English, which has everything', () => {
    expect(LANGUAGES[0].id).toBe('en');
  });

  test.each(LANGUAGES.map((language) => [language.id, language]))(
    '%s has a tag that Intl can write with',
    (id, { locale }) => {
      expect([id, locale].map((tag) => new Intl.Locale(tag).toString())).toEqual([id, locale]);
      expect(Intl.PluralRules.supportedLocalesOf([locale])).toEqual([locale]);
    },
  );

  test.each(LANGUAGES.map(({ id }) => id))(
    '%s says in its rooms nothing but what English says, with the same values',
    (language) => {
      for (const { id, data } of wordsOf('en', 'words')) {
        const own = wordsOf(language, 'words').find((room) => room.id === id)?.data ?? {};
        expect(strayIn(own, data), `${language}/words/${id}.yaml`).toEqual([]);
      }
    },
  );

  test('may lack what English has, and what they lack is listed', () => {
    const root = mkdtempSync(join(tmpdir(), 'languages-'));
    const write = (path: string, text: string): void => {
      const file = join(root, 'src/content', path);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, text);
    };
    write('en/words/frame.yaml', 'nav-learn: Learn\nhome-lead: Welcome\n');
    write('en/fixes/leak.mdx', 'Leak.');
    write('en/fixes/dirty.mdx', 'Dirty.');
    write('xx/words/frame.yaml', 'nav-learn: Nrael\n');
    write('xx/fixes/leak.mdx', 'Kael.');
    expect(lacking('xx', root)).toEqual({ pages: ['fixes/dirty.mdx'], sentences: ['words/frame.yaml: home-lead'] });
    expect(lackingLine('xx', root)).toBe('xx lacks 1 pages and 1 sentences (npm run map -- xx)');
    expect(lackingLine('en', root)).toBe('');
    rmSync(root, { recursive: true });
  });

  test('may not say what English does not, nor leave a value out', () => {
    const english = { 'nav-learn': 'Learn', moving: '{n} of {all} move' };
    expect(strayIn({ moving: '{all}: {n}' }, english)).toEqual([]);
    expect(strayIn({ moving: '{n} move', more: 'x' }, english)).toEqual([
      '"moving" says {n} where English says {all}, {n}.',
      '"more" is no sentence of English.',
    ]);
  });

  test.each(LANGUAGES.map(({ id }) => id))('%s has no page that English lacks', (language) => {
    for (const kind of KINDS) {
      const english = new Set(wordsOf('en', kind).map(({ id }) => id));
      expect(
        wordsOf(language, kind)
          .filter(({ id }) => !english.has(id))
          .map(({ id }) => id),
        kind,
      ).toEqual([]);
    }
  });
});

/** What people say in English: of a page by its id, of a check by check/option. */
function saidIn(kind: string): ReadonlyMap<string, readonly string[]> {
  if (kind === 'wizards') return new Map(WIZARD_IDS.map((id) => [id, []]));
  if (kind === 'pages')
    return new Map(['layout-sheet', 'plan', 'first-power-up', 'notebook', 'help-desk'].map((id) => [id, []]));
  const pages = wordsOf('en', kind === 'dangers' ? 'checks' : kind);
  if (kind === 'glossary') return new Map(pages.map(({ id, data }) => [id, texts(data['also'])]));
  if (!['checks', 'dangers'].includes(kind)) return new Map(pages.map(({ id, data }) => [id, texts(data['says'])]));
  return new Map(
    pages.flatMap(({ id, data }) =>
      Object.entries(isRecord(data['options']) ? data['options'] : {}).map(
        ([option, words]) => [`${id}/${option}`, texts(isRecord(words) ? words['says'] : [])] as const,
      ),
    ),
  );
}

describe('What people say in other languages', () => {
  const files = readdirSync(PHRASES, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const all = files.map((file) => {
    const data: unknown = parse(readFileSync(join(file.parentPath, file.name), 'utf8'));
    if (!isRecord(data)) throw new Error(`${file.name} holds no phrases`);
    return {
      name: file.name,
      kind: file.name.replace('.yaml', ''),
      language: file.parentPath.split(/[\\/]/).at(-1) ?? '',
      data,
    };
  });

  test('is there, in languages that there are', () => {
    expect(all.length).toBeGreaterThan(0);
    for (const { language } of all) expect(Intl.getCanonicalLocales(language)).toEqual([language]);
  });

  test('leads to pages that there are', () => {
    for (const { kind, language, data } of all) {
      const said = saidIn(kind);
      expect(
        Object.keys(data).filter((id) => !said.has(id)),
        `phrases/${language}/${kind}.yaml`,
      ).toEqual([]);
    }
  });

  test('is not said once more on the page itself', () => {
    for (const { kind, data } of all) {
      for (const [id, phrases] of Object.entries(data)) {
        const says = saidIn(kind).get(id) ?? [];
        expect(
          texts(phrases).filter((phrase) => says.includes(phrase)),
          id,
        ).toEqual([]);
      }
    }
  });
});

describe('Code', () => {
  const named = codeIn('components', 'layouts', 'pages')
    .filter((file) => file !== 'components/words/languages.ts')
    .flatMap((file) =>
      [...readFileSync(join(SRC, file), 'utf8').matchAll(/^(?!\s*(?:\/\/|\/?\*)).*['"`/]en['"`/].*/gm)].map(
        ([line]) => `${file}: ${line.trim()}`,
      ),
    );

  test('names no language but in their list', () => {
    expect(named).toEqual([]);
  });

  test('routes no sentence by a pattern over its key', () => {
    const layouts = codeIn('layouts', 'pages').map((file) => [file, readFileSync(join(SRC, file), 'utf8')] as const);
    expect(layouts.filter(([, text]) => /new RegExp|\.test\(|\.match\(/.test(text)).map(([file]) => file)).toEqual([]);
  });
});

describe('The form of a word that goes with a number', () => {
  test('is one of two, as in English', () => {
    const trains = (n: number) => fill('{n} {n:train|trains}', { n }, 'en');
    expect([0, 1, 2].map(trains)).toEqual(['0 trains', '1 train', '2 trains']);
  });

  test('is one of as many as a language has', () => {
    const trains = (n: number) => fill('{n} {n:one=pociąg|few=pociągi|many=pociągów|other=pociągu}', { n }, 'pl');
    expect([1, 3, 5, 1.5].map(trains)).toEqual(['1 pociąg', '3 pociągi', '5 pociągów', '1.5 pociągu']);
  });

  test('is the common one where a language does not name the form', () => {
    expect(fill('{n:one=a|other=b}', { n: 3 }, 'pl')).toBe('b');
  });

  test('leaves a name without a value to be seen', () => {
    expect(fill('{n:train|trains} {of}', {}, 'en')).toBe('{n:train|trains} {of}');
  });
});

test('things in a row stand with the comma of their language', () => {
  expect(listed(['a', 'b', 'c'], 'en')).toBe('a, b, c');
  expect(listed(['a', 'b', 'c'], 'ja')).toBe('a b c');
});

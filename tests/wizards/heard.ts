// What people say for each answer, in every language, and what hears it: as the page has them.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { Listener } from '../../src/wizards/hearing/index.ts';
import { CONTENT, isRecord, texts, wordsOf } from '../content/folder.ts';

export const LANGUAGES = ['de', 'fr', 'nl'];

/** Lines by check/option, in one language or in English. */
function phrasesIn(language: string): ReadonlyMap<string, readonly string[]> {
  const read: unknown = parse(readFileSync(join(CONTENT, `phrases/${language}/checks.yaml`), 'utf8'));
  return new Map(Object.entries(isRecord(read) ? read : {}).map(([id, lines]) => [id, texts(lines)]));
}

/** Word groups of danger by check/option, in one language. */
export function dangersIn(language: string): ReadonlyMap<string, readonly (readonly string[])[]> {
  const read: unknown = parse(readFileSync(join(CONTENT, `phrases/${language}/dangers.yaml`), 'utf8'));
  return new Map(
    Object.entries(isRecord(read) ? read : {}).map(([id, lines]) => [id, Array.isArray(lines) ? lines.map(texts) : []]),
  );
}

const DANGERS = ['en', ...LANGUAGES].map((language) => ({ language, own: dangersIn(language) }));

export const PHRASES = LANGUAGES.map(phrasesIn);

const linesOf = (answer: string, words: unknown): Readonly<Record<string, readonly string[]>> => ({
  en: texts(isRecord(words) ? words['says'] : []),
  ...Object.fromEntries(PHRASES.map((lines, at) => [LANGUAGES[at] ?? '', lines.get(answer) ?? []])),
});
export const SAID = wordsOf('en', 'checks').flatMap(({ id: check, data: { options } }) =>
  Object.entries(isRecord(options) ? options : {}).map(([option, words]) => ({
    check,
    option,
    lines: linesOf(`${check}/${option}`, words),
    dangers: Object.fromEntries(
      DANGERS.flatMap(({ language, own }) => {
        const groups = own.get(`${check}/${option}`);
        return groups === undefined ? [] : [[language, groups]];
      }),
    ),
  })),
);
export const LISTENER = new Listener(SAID);

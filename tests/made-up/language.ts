// A language that nobody speaks, made from the English words: every word longer by two fifths and accented, all else kept.
import { parse, stringify } from 'yaml';

/** Its line in the list of languages. It writes numbers as German does, so that a number written the English way is noticed. */
export const MADE_UP = { id: 'qaa', name: 'Ṁádé úp', locale: 'de', direction: 'ltr' } as const;

const ACCENTED: Readonly<Record<string, string>> = {
  ...{ a: 'á', e: 'é', i: 'í', o: 'ó', u: 'ú', y: 'ý' },
  ...{ A: 'Á', E: 'É', I: 'Í', O: 'Ó', U: 'Ú', Y: 'Ý' },
};
const LONGER = 0.4;

/** A word in the made-up language: accented, and longer by two fifths. */
function word(english: string): string {
  const accented = english.replace(/[aeiouyAEIOUY]/g, (vowel) => ACCENTED[vowel] ?? vowel);
  return english.length < 3 ? accented : accented + 'ö'.repeat(Math.ceil(english.length * LONGER));
}

const words = (text: string): string => text.replace(/[A-Za-z]+/g, word);

/** A sentence: its words, and the forms of a word inside a place; names of places, measures and signs are kept. */
export const sentence = (text: string): string =>
  text
    .split(/(\{[^{}]*\})/)
    .map((part) => (part.startsWith('{') ? place(part) : words(part)))
    .join('');

function place(part: string): string {
  const [, name = '', forms] = /^\{([\w-]+):(.*\|.*)\}$/.exec(part) ?? [];
  return forms === undefined ? part : `{${name}:${forms.split('|').map(words).join('|')}}`;
}

/** Text of a page: its words and those an element carries; what the page is made of, links' addresses and elements, is kept. */
const prose = (text: string): string =>
  text
    .split(/(^import .*$|<[^>]*>|\]\([^)]*\)|\{[^{}]*\}|&\w+;)/m)
    .map((part, at) => {
      if (at % 2 === 0) return words(part);
      if (part.startsWith('{')) return place(part);
      return part.replace(/(?<=\stext=")[^"]*/, sentence);
    })
    .join('');

/** What holds ids, addresses or signs and no words. */
const KEPT = new Set([
  'cautions',
  'acts',
  'job',
  'terms',
  'sources',
  'drawing',
  'figure',
  'picture',
  'order',
  'standard',
  'kind',
  'sure',
  'address',
  'href',
  'computed',
  'set',
  'begins',
  'paths',
  'wizard',
  'fix',
  'complaint',
  'page',
  'date',
  'leads',
]);
/** Astro reads dates as YAML 1.1 has them: a text that looks like one is put in quotes. */
const WRITTEN = { version: '1.1' } as const;

function translated(value: unknown): unknown {
  if (typeof value === 'string') return sentence(value);
  if (Array.isArray(value)) return value.map(translated);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [
      key,
      KEPT.has(key) && (typeof one !== 'object' || Array.isArray(one)) ? one : translated(one),
    ]),
  );
}

/** A room of words has keys that are ids, of whatever name. */
const roomTranslated = (value: unknown): unknown =>
  typeof value === 'object' && value !== null
    ? Object.fromEntries(Object.entries(value).map(([key, one]) => [key, translated(one)]))
    : value;

/** A file of the content, by its kind. */
export function fileTranslated(kind: string, text: string): string {
  const [, front, body] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text) ?? [];
  if (front !== undefined && body !== undefined)
    return `---\n${stringify(translated(parse(front)), WRITTEN)}---\n${prose(body)}`;
  const data: unknown = parse(text);
  return stringify(kind === 'words' ? roomTranslated(data) : translated(data), WRITTEN);
}

/** Words that no translation left as English has them: a vowel without an accent shows. */
export const englishIn = (text: string): string[] =>
  text.match(/(?<![\p{L}\p{N}])[A-Za-z]*[aeiou][A-Za-z]*(?![\p{L}])/gu)?.filter((one) => one.length > 2) ?? [];

// The short words of the pages: common.yaml and home.yaml in src/content/<language>/interface.
import { getCollection, getEntry } from 'astro:content';
import type { Say } from '../components/drawings/index.ts';
import { languageOf } from '../components/words/index.ts';

export type { Say };

/** The files whose words belong to the frame and to every page; others there belong to one figure or answer. */
const FILES = ['common', 'home'] as const;

/** Gives the words for the language of an address. A key without words stops the build; while writing it shows itself. */
export const wordsFor = async (url: URL): Promise<Say> => {
  const folder = `${languageOf(url)}/interface`;
  const words = new Map<string, string>();
  for (const file of FILES) {
    for (const [key, sentence] of Object.entries((await getEntry('interfaceWords', `${folder}/${file}`))?.data ?? {})) {
      if (words.has(key)) throw new Error(`Two sentences for "${key}" in src/content/${folder}`);
      words.set(key, sentence);
    }
  }
  return (key, values = {}) => {
    const sentence = words.get(key);
    if (sentence === undefined) {
      if (import.meta.env.DEV) return `[${key}]`;
      throw new Error(`No words for "${key}" in src/content/${folder}`);
    }
    return sentence.replace(/\{([\w-]+)\}/g, (place, name: string) => String(values[name] ?? place));
  };
};

/** The beginnings of the keys that each live figure says. */
export const FIGURE_WORDS = {
  'how-many-trains': /^(lesson|figure|table|verdict|evenness|what-if|as-a)-/,
  'larger-supply': /^(lesson|figure|table|verdict|evenness|what-if|as-a)-/,
  'booster-adds': /^(lesson|figure|table|verdict|evenness|what-if|as-a)-/,
  'voltage-along': /^(along|as-a)-/,
  'short-along': /^(along|as-a)-/,
  'gap-scope': /^scope-/,
  'train-across': /^across-/,
  'drive-across': /^drive-/,
} as const;

/** Words of every file of the interface whose keys match, in the language of an address. */
export async function wordsOf(url: URL, keys: RegExp): Promise<Record<string, string>> {
  const start = `${languageOf(url)}/`;
  const entries = await getCollection('interfaceWords', ({ id }) => id.startsWith(start));
  const all: Record<string, string> = Object.assign({}, ...entries.map(({ data }) => data));
  return Object.fromEntries(Object.entries(all).filter(([key]) => keys.test(key)));
}

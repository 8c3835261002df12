// The short words of the pages, by room: src/content/<language>/words.
import { getCollection, getEntry } from 'astro:content';
import type { Say } from '../components/drawings/index.ts';
import { FALLBACK, fill, localeOf } from '../components/words/index.ts';
import type { Language } from './href.ts';
import type { Room } from './rooms.ts';

export type { Say };

/** Words of whole rooms in a language; a sentence that it lacks is there in English. */
export async function wordsOf(language: Language, rooms: readonly Room[]): Promise<Record<string, string>> {
  const words: Record<string, string> = {};
  for (const room of rooms) {
    const first = await getEntry('words', `${FALLBACK}/words/${room}`);
    // Asked for an entry that is not there, Astro warns; a language may lack a room.
    const [own] = await getCollection('words', ({ id }) => id === `${language}/words/${room}`);
    if (first === undefined) throw new Error(`No words in src/content/${FALLBACK}/words/${room}.yaml`);
    for (const [key, sentence] of Object.entries(first.data)) {
      if (Object.hasOwn(words, key)) throw new Error(`Two sentences for "${key}" in ${rooms.join(', ')}`);
      words[key] = own?.data[key] ?? sentence;
    }
  }
  return words;
}

/** Whether a language has every sentence of these rooms. */
export async function saysAll(language: Language, rooms: readonly Room[]): Promise<boolean> {
  if (language === FALLBACK) return true;
  const own = await getCollection('words', ({ id }) => id.startsWith(`${language}/`));
  const said = new Set(own.flatMap(({ data }) => Object.keys(data)));
  return Object.keys(await wordsOf(FALLBACK, rooms)).every((key) => said.has(key));
}

/** Says the words of the frame and of rooms. A key that is in none of them stops the build; while writing it shows itself. */
export async function wordsFor(language: Language, ...rooms: readonly Room[]): Promise<Say> {
  const words = await wordsOf(language, ['frame', ...rooms]);
  return (key, values = {}) => {
    const sentence = words[key];
    if (sentence !== undefined) return fill(sentence, values, localeOf(language));
    if (import.meta.env.DEV) return `[${key}]`;
    throw new Error(`No words for "${key}" in ${rooms.join(', ')} or frame, in src/content/${FALLBACK}/words`);
  };
}

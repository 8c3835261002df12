// The short words of the pages, by room: src/content/<language>/words.
import { getEntry } from 'astro:content';
import type { Say } from '../components/drawings/index.ts';
import { fill, languageOf } from '../components/words/index.ts';
import type { Room } from './rooms.ts';

export type { Say };

/** Words of whole rooms in the language of an address. */
export async function wordsOf(url: URL, rooms: readonly Room[]): Promise<Record<string, string>> {
  const words: Record<string, string> = {};
  for (const room of rooms) {
    const id = `${languageOf(url)}/words/${room}`;
    const entry = await getEntry('words', id);
    if (entry === undefined) throw new Error(`No words in src/content/${id}.yaml`);
    for (const [key, sentence] of Object.entries(entry.data)) {
      if (Object.hasOwn(words, key)) throw new Error(`Two sentences for "${key}" in ${rooms.join(', ')}`);
      words[key] = sentence;
    }
  }
  return words;
}

/** Says the words of the frame and of rooms. A key that is in none of them stops the build; while writing it shows itself. */
export async function wordsFor(url: URL, ...rooms: readonly Room[]): Promise<Say> {
  const language = languageOf(url);
  const words = await wordsOf(url, ['frame', ...rooms]);
  return (key, values = {}) => {
    const sentence = words[key];
    if (sentence !== undefined) return fill(sentence, values, language);
    if (import.meta.env.DEV) return `[${key}]`;
    throw new Error(`No words for "${key}" in ${rooms.join(', ')} or frame, in src/content/${language}/words`);
  };
}

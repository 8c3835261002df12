// Whether a text has the words that somebody types, for lists that are filtered: each has to begin one of its words, whatever its ending.
import { stemmer } from 'stemmer';
import { SMALL, wordsOf } from './words-of.ts';

/** Small words ask for nothing, unless there are no others; nothing typed fits every text. */
export function fitting(typed: string): (text: string) => boolean {
  const all = wordsOf(typed);
  const telling = all.filter((word) => !SMALL.has(word));
  const asked = (telling.length === 0 ? all : telling).map(stemmer);
  return (text) => {
    const words = wordsOf(text);
    return asked.every((one) => words.some((word) => word.startsWith(one)));
  };
}

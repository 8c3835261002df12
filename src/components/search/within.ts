// Whether a text has the words that somebody types, for lists that are filtered: each has to begin one of its words, whatever its ending.
import { stemmer } from 'stemmer';
import { SMALL, wordsOf } from './words-of.ts';

/** Small words ask for nothing, unless there are no others; nothing typed fits every text. */
export function fitting(typed: string): (text: string) => boolean {
  const all = wordsOf(typed);
  const telling = all.filter((word) => !SMALL.has(word));
  const asked = (telling.length === 0 ? all : telling).map(beginnings);
  return (text) => {
    const words = wordsOf(text);
    return asked.every((ways) => words.some((word) => ways.some((way) => word.startsWith(way))));
  };
}

/** How a word of a text may begin for it to be the one that was typed: as typed, or as its stem, whose last i may stand for a y. */
function beginnings(word: string): readonly string[] {
  const stem = stemmer(word);
  return [word, stem, ...(stem.endsWith('i') ? [`${stem.slice(0, -1)}y`] : [])];
}

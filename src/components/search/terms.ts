// How words are compared in the search: alike when the index is made and when it is asked.
import MiniSearch from 'minisearch';
import { stemmer } from 'stemmer';
import { SMALL, wordsOf } from './words-of.ts';

/** The stem of a word, or nothing where it is too small to look for. */
const termOf = (word: string): string | undefined => (SMALL.has(word) ? undefined : stemmer(word));

/** Meanings by name, with the words and groups of words that have them, whatever the language. */
export type Same = Readonly<Record<string, readonly string[]>>;

interface Known {
  readonly id: string;
  readonly meaning: string;
}

/** A meaning among the terms: no word begins like this. */
const MARK = '=';
/** Words shorter than this are not taken for misspelt ones. */
const LEAST_MISSPELT = 5;
const MISSPELT = 0.2;
/** In a long word that nobody knows, known ones of at least so many letters are looked for: Netzteilspannung. */
const LEAST_PART = 5;

export const isMeaning = (term: string): boolean => term.startsWith(MARK);

/** Turns texts into terms: words that mean the same become one. */
export class Terms {
  readonly #meanings = new Map<string, string>();
  readonly #longest: number;
  readonly #near = new MiniSearch<Known>({
    fields: ['id'],
    storeFields: ['meaning'],
    tokenize: (text) => [text],
    processTerm: (term) => term,
  });

  constructor(same: Same) {
    for (const [meaning, lines] of Object.entries(same))
      for (const line of lines) this.#meanings.set(stemsOf(line).join(' '), MARK + meaning);
    this.#longest = Math.max(1, ...[...this.#meanings.keys()].map((key) => key.split(' ').length));
    this.#near.addAll(
      [...this.#meanings].filter(([id]) => !id.includes(' ')).map(([id, meaning]) => ({ id, meaning })),
    );
  }

  /** Terms of a text, in its order; the small words are left out. */
  of(text: string): string[] {
    const stems = stemsOf(text);
    const words = wordsOf(text);
    const terms: string[] = [];
    for (let at = 0; at < stems.length; ) {
      const [length, meaning] = this.#meaningAt(stems, at);
      const term = meaning ?? termOf(words[at] ?? '');
      if (term !== undefined) terms.push(term);
      at += length;
    }
    return terms;
  }

  /** Meanings that an unknown word of a question may have: misspelt, or in one word with others. None for a meaning itself. */
  guess(term: string): string[] {
    if (isMeaning(term) || term.length < LEAST_MISSPELT) return [];
    const [near] = this.#near.search(term, { fuzzy: MISSPELT });
    if (near !== undefined) return [String(near['meaning'])];
    const within = [...this.#meanings].filter(
      ([known]) => known.length >= LEAST_PART && (term.startsWith(known) || term.endsWith(known)),
    );
    return [...new Set(within.map(([, meaning]) => meaning))];
  }

  #meaningAt(stems: readonly string[], at: number): [length: number, meaning: string | undefined] {
    for (let length = Math.min(this.#longest, stems.length - at); length > 0; length--) {
      const meaning = this.#meanings.get(stems.slice(at, at + length).join(' '));
      if (meaning !== undefined) return [length, meaning];
    }
    return [1, undefined];
  }
}

const stemsOf = (text: string): string[] => wordsOf(text).map((word) => stemmer(word));

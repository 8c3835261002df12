// A text in words, and the words by which something is denied.

/** Words of a text: small letters without accents, "n't" as a word of its own. */
export function wordsOf(text: string): string[] {
  const plain = text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replaceAll('ß', 'ss');
  return plain.replace(/n[’']t\b/g, ' not').match(/[\p{L}\p{N}]+/gu) ?? [];
}

/** These stand behind what they deny: "die Zentrale meldet nichts". */
export const DENIES_BEFORE = new Set('nicht nichts pas rien niet niets'.split(' '));

export const NEGATIONS = new Set(
  [
    'not no never without none nothing',
    'nicht nichts kein keine keinen nie ohne',
    'pas sans jamais aucun aucune plus rien',
    'niet niets geen nooit zonder',
  ].flatMap((words) => words.split(' ')),
);

/** A negation reaches so many words ahead. Source: from-memory (judgement). */
export const REACH = 4;

/** Numbers from three to twelve, and words for a number that is not said; "how many" asks. One and two are not among them: "one is fine, two are not". */
const NUMBERS = new Set(
  [
    '3 4 5 6 7 8 9 10 11 12',
    'three four five six seven eight nine ten eleven twelve several',
    'drei vier funf sechs sieben acht neun zehn elf zwolf mehrere mehreren',
    'trois quatre cinq six sept huit neuf dix onze douze plusieurs',
    'drie vier vijf zes zeven acht negen tien elf twaalf meerdere',
  ].flatMap((words) => words.split(' ')),
);
/** A number before one of these is a size, and counts nothing. */
const UNITS = new Set('a amp amps ampere amperes amperen v volt volts va w watt watts ohm ohms'.split(' '));

/** What all of them are heard as: whoever says "with five trains" says "with several trains". */
export const SEVERAL = 'several';

/** A track for programming is none that trains run on: its two words are one. */
export const JOINED = 'programmingtrack';
export const JOINED_OF = new Set(['programming', 'prog', 'track']);
const PROGRAMMING = /\b(programming|prog) track\b/g;

/** The words that a text is heard by. */
export const heardAs = (text: string): string[] =>
  wordsOf(text.toLowerCase().replace(PROGRAMMING, JOINED)).map((word, at, words) =>
    NUMBERS.has(word) && !UNITS.has(words[at + 1] ?? '') ? SEVERAL : word,
  );

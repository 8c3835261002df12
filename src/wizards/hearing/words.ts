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

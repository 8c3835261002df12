// A text in words, and the words by which something is denied.

/** Small letters without accents. */
const plainOf = (text: string): string =>
  text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replaceAll('ß', 'ss');

/** Words of a text: small letters without accents, "n't" as a word of its own. */
export const wordsOf = (text: string): string[] =>
  plainOf(text)
    .replace(/n[’']t\b/g, ' not')
    .match(/[\p{L}\p{N}]+/gu) ?? [];

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

/** A word that is heard as another in company of some others, since it means something else there. */
interface Sense {
  readonly heardAs: string;
  /** The words that are heard as it, as they are written. */
  readonly of: ReadonlySet<string>;
  /** Where: without accents, in small letters. */
  readonly where: RegExp;
}

const of = (words: string): ReadonlySet<string> => new Set(words.split(' '));

const SENSES: readonly Sense[] = [
  // A track for programming is none that trains run on: its two words are one.
  { heardAs: 'programmingtrack', of: of('programming prog track'), where: /\b(?:programming|prog) track\b/g },
  // Of a short build: no short circuit.
  {
    heardAs: 'shortbuilt',
    of: of('short'),
    where:
      /\bshort(?= (?:engines?|locos?|locomotives?|trains?|shunters?|switchers?|coach(?:es)?|cars?|wagons?|wheelbase|pieces?|lengths?|stretch(?:es)?|sections?|sidings?|spurs?|wires?|cables?|time|way|distance|pause|break|ones)\b)/g,
  },
  // What starts anew comes back; it does not run away.
  {
    heardAs: 'comesback',
    of: of('starts start again by itself'),
    where: /\bstarts? (?:up )?again by itself\b/g,
  },
  // What is said of all of it says what goes off, not where.
  {
    heardAs: 'allgoesoff',
    of: of('whole layout goes dead dark off dies trips shuts down'),
    where: /\bwhole layout (?:goes (?:dead|dark|off)|dies|trips|shuts down)\b/g,
  },
  // A room or a day that is hot: no part that is.
  {
    heardAs: 'hotaround',
    of: of('hot heiss chaud heet'),
    where:
      /(?<=\b(?:attic|loft|room|shed|garage|cellar|basement|hall|weather|dachboden|zimmer|raum|keller|schuppen|wetter|grenier|la piece|cave|hangar|zolder|kamer|kelder|schuur|weer)(?: (?:it|is|was|gets|got|becomes|very|so|too|really|es|ist|wird|war|sehr|zu|est|devient|tres|trop|het|wordt|erg|heel|te))* )(?:hot|heiss|chaud|heet)\b/g,
  },
];

/** Whether a written word is one of those that a text was heard by. */
export const isHeardBy =
  (words: readonly string[]) =>
  (written: string): boolean =>
    heardAs(written).some(
      (word) => words.includes(word) || SENSES.some((sense) => words.includes(sense.heardAs) && sense.of.has(word)),
    );

/** The words that a text is heard by. */
export const heardAs = (text: string): string[] =>
  wordsOf(SENSES.reduce((plain, sense) => plain.replace(sense.where, sense.heardAs), plainOf(text))).map(
    (word, at, words) => (NUMBERS.has(word) && !UNITS.has(words[at + 1] ?? '') ? SEVERAL : word),
  );

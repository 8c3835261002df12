// Words of danger: a line is heard where one word of each of its groups stands near the next, whatever stands between. Rather once too often than not.
import { DENIES_BEFORE, NEGATIONS, REACH, wordsOf } from './words.ts';

/** Groups of words, parted by commas, one of each to be there: "melt*" is a beginning, "*cable" an end; words behind a minus must not stand beside. */
export type Groups = readonly string[];

/** Between two words of a line stand at most so many others. Source: from-memory (judgement). */
const APART = 8;
/** The first and the last word of a line are no farther apart, for any number of groups that there is. Source: from-memory (judgement). */
const AT_MOST_APART = 24;
/** A text that says nothing but such words is not weighed to the end. Source: own-choice. */
const MOST_CHOICES = 500;
/** What must not stand beside is looked for so many words before and behind. Source: from-memory (judgement). */
const BESIDE = 3;

/** What follows stands for itself, denied or not. */
const PAUSES = new Set([
  ',',
  'and',
  'und',
  'et',
  'en',
  'if',
  'whether',
  'ob',
  'because',
  'weil',
  'since',
  'then',
  'dann',
  'puis',
  'dan',
]);
/** The last of a list is said with one of these, and a "no" before the list is for all of it. */
const OF_A_LIST = new Set('or nor oder noch ou ni of'.split(' '));

const SENTENCE = /[.;:!?\n()]+|\s(?:but|aber|mais|maar|however|jedoch)\s/i;

/** Words and commas of each sentence. */
export const sentencesOf = (text: string): string[][] =>
  text
    .split(SENTENCE)
    .map((sentence) => sentence.split(',').flatMap((part, at) => (at === 0 ? wordsOf(part) : [',', ...wordsOf(part)])));

type Way = (word: string) => boolean;

/** One entry of a group: words on end. */
interface Entry {
  readonly ways: readonly Way[];
}

export interface DangerLine {
  readonly wanted: readonly (readonly Entry[])[];
  readonly beside: readonly Entry[];
}

function wayOf(word: string): Way {
  const [plain = ''] = wordsOf(word);
  const parts = word.split('*');
  if (parts.length === 2 && parts[0] !== '' && parts[1] !== '') {
    const [[begin = ''], [end = '']] = [wordsOf(parts[0] ?? ''), wordsOf(parts[1] ?? '')];
    return (said) => said.startsWith(begin) && said.endsWith(end);
  }
  if (word.endsWith('*')) return (said) => said.startsWith(plain);
  if (word.startsWith('*')) return (said) => said.endsWith(plain);
  return (said) => said === plain;
}

const entryOf = (entry: string): Entry => ({ ways: entry.split(' ').map(wayOf) });

const isBeside = (group: readonly string[]): boolean => group.every((word) => word.startsWith('-'));

export function dangerLine(groups: Groups): DangerLine {
  const words = groups.map((group) => group.split(', '));
  return {
    wanted: words.filter((group) => !isBeside(group)).map((group) => group.map(entryOf)),
    beside: words.filter(isBeside).flatMap((group) => group.map((word) => entryOf(word.slice(1)))),
  };
}

/** A stretch of words, the last one included. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

const standsAt = ({ ways }: Entry, words: readonly string[], at: number): boolean =>
  ways.every((way, further) => {
    const word = words[at + further];
    return word !== undefined && way(word);
  });

const placesOf = (entries: readonly Entry[], words: readonly string[]): Stretch[] =>
  words.flatMap((_, at) =>
    entries.filter((entry) => standsAt(entry, words, at)).map(({ ways }) => ({ from: at, to: at + ways.length - 1 })),
  );

/** One place for each group, none far from the next: every choice of them. */
function choicesOf(groups: DangerLine['wanted'], words: readonly string[]): (readonly Stretch[])[] {
  let choices: (readonly Stretch[])[] = [[]];
  for (const entries of groups) {
    const places = placesOf(entries, words);
    choices = choices
      .flatMap((choice) => places.map((place) => [...choice, place]))
      .filter(areApart)
      .slice(0, MOST_CHOICES);
    if (choices.length === 0) return [];
  }
  return choices.filter(areNear);
}

/** No word counts for two groups, and none is out of reach of all others. */
const areApart = (choice: readonly Stretch[]): boolean => {
  const last = choice.at(-1);
  const others = choice.slice(0, -1);
  return others.every(
    ({ from, to }) =>
      (to < (last?.from ?? 0) || (last?.to ?? 0) < from) && Math.abs(from - (last?.from ?? 0)) <= AT_MOST_APART,
  );
};

function areNear(choice: readonly Stretch[]): boolean {
  const inOrder = [...choice].sort((one, two) => one.from - two.from);
  return inOrder.every(({ from }, at) => from - (inOrder[at - 1]?.to ?? from) <= APART + 1);
}

/** The words by which a line is heard in these sentences, undefined where it is not said or denied. */
export function dangerHeard(
  { wanted, beside }: DangerLine,
  sentences: readonly (readonly string[])[],
): readonly string[] | undefined {
  for (const words of sentences) {
    for (const choice of choicesOf(wanted, words)) {
      const from = Math.min(...choice.map((one) => one.from));
      const to = Math.max(...choice.map((one) => one.to));
      const around = words.slice(Math.max(0, from - BESIDE), to + 1 + BESIDE);
      if (placesOf(beside, around).length > 0 || isDenied(choice, { from, to }, words)) continue;
      return words.filter((_, at) => choice.some((one) => one.from <= at && at <= one.to));
    }
  }
  return undefined;
}

/** Whether a "no" stands before these words, between them or right behind, and is none of them. */
function isDenied(choice: readonly Stretch[], { from, to }: Stretch, words: readonly string[]): boolean {
  const isBetween = words.some(
    (word, at) => from < at && at < to && NEGATIONS.has(word) && !choice.some((one) => one.from <= at && at <= one.to),
  );
  return isBetween || reaches(from, words) || DENIES_BEFORE.has(words[to + 1] ?? '');
}

/** Whether a "no" before a word is for it too: no pause between, or only those of a list. */
function reaches(from: number, words: readonly string[]): boolean {
  const goesOn = words.slice(from + 1, from + 1 + REACH).some((word) => OF_A_LIST.has(word));
  for (let at = from - 1, passed = 0; at >= 0 && passed < REACH; at -= 1) {
    const word = words[at] ?? '';
    if (NEGATIONS.has(word)) return true;
    const isOfList = word === ',' && goesOn;
    if (PAUSES.has(word) && !isOfList) return false;
    if (word !== ',') passed += 1;
  }
  return false;
}

// What people write in their own words, heard for what they could mean: proposals only, nothing counts until it is tapped.
import MiniSearch from 'minisearch';

/** Lines that people say for one answer, in whatever language. */
export interface Said {
  readonly check: string;
  readonly option: string;
  readonly lines: readonly string[];
}

export interface HeardOf {
  readonly check: string;
  readonly option: string;
  /** The words of the text that made it think so. */
  readonly words: readonly string[];
}

interface Line {
  readonly id: number;
  readonly check: string;
  readonly option: string;
  readonly text: string;
  /** One or two: "lights on, but no reaction". */
  readonly clauses: number;
}

/** So much of a line must be heard, by weight of its words, 0 to 1. From memory (judgement). */
const ENOUGH = 0.75;
/** A negation reaches so many words ahead. From memory (judgement). */
const REACH = 4;
/** Between the first and the last word heard stand at most so many more than in the line. From memory (judgement). */
const SPREAD = 2;
/** Of what the words heard could come from, so much is one answer, 0 to 1. From memory (judgement). */
const PARTICULAR = 0.5;
const MOST_HEARD = 12;
/** These stand behind what they deny: "die Zentrale meldet nichts". */
const DENIES_BEFORE = new Set('nicht nichts pas rien niet niets'.split(' '));

const NEGATIONS = new Set(
  [
    'not',
    'no',
    'never',
    'without',
    'none',
    'nothing',
    'nicht',
    'nichts',
    'kein',
    'keine',
    'keinen',
    'nie',
    'ohne',
  ].concat(
    ...[
      ['pas', 'sans', 'jamais', 'aucun', 'aucune', 'plus', 'rien'],
      ['niet', 'niets', 'geen', 'nooit', 'zonder'],
    ],
  ),
);

/** Words that say that something is as it should be. */
const WELL = new Set(
  [
    'fine ok okay perfect perfectly well good great flawless flawlessly happy lovely',
    'gut bestens perfekt einwandfrei tadellos bien parfait parfaitement goed prima',
  ].flatMap((words) => words.split(' ')),
);

/** What follows these is another matter. */
const TURNS = new Set('until till except unless bis ausser jusqu sauf tot behalve'.split(' '));

/** Small words that say nothing of a trouble; "only" and "all" say much. English, German, French, Dutch. */
const SMALL = new Set(
  [
    'a an the i my me we our you your it its is are was were be been has have had do does did of to at in on into by and or so as if then that this these those there with for from very also when whenever get gets got',
    'der die das den dem des ein eine einen einem ich mein meine wir es ist sind war von zu zum zur im am auf in und oder so wenn dann mit fur aus auch immer sehr bei beim sich er sie',
    'le la les l un une des du de d je mon ma mes nous il elle est sont a au aux en et ou si quand alors avec pour sur que qui se ce cette ca y',
    'het een ik mijn we is zijn was van te in op en of als dan met voor uit ook altijd erg bij zich er dat die de',
  ].flatMap((words) => words.split(' ')),
);

/** Words of a text: small letters without accents, "n't" as a word of its own. */
function wordsOf(text: string): string[] {
  const plain = text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  return plain.replace(/n[’']t\b/g, ' not').match(/[\p{L}\p{N}]+/gu) ?? [];
}

const CLAUSE = /[.,;:!?\n()]+|\s(?:but|aber|mais|maar|however|jedoch)\s/i;

const clausesOf = (text: string): string[] => text.split(CLAUSE).filter((clause) => wordsOf(clause).length > 0);

/** Hears a text: every answer whose lines it seems to say, the surest first. */
export class Listener {
  readonly #index: MiniSearch<Line>;
  readonly #lines: readonly Line[];
  readonly #weights = new Map<string, number>();

  constructor(said: readonly Said[]) {
    this.#lines = said
      .flatMap(({ check, option, lines }) => lines.map((text) => ({ check, option, text })))
      .map((line, id) => ({ id, clauses: Math.min(2, clausesOf(line.text).length), ...line }));
    this.#index = new MiniSearch<Line>({
      fields: ['text'],
      tokenize: wordsOf,
      processTerm: (term) => (SMALL.has(term) ? null : term),
    });
    this.#index.addAll(this.#lines);
    const count = new Map<string, number>();
    for (const { text } of this.#lines)
      for (const word of new Set(wordsOf(text))) count.set(word, (count.get(word) ?? 0) + 1);
    for (const [word, n] of count) this.#weights.set(word, SMALL.has(word) ? 0 : Math.log(1 + this.#lines.length / n));
  }

  /** At most twelve answers, each once. Any text; an empty one says nothing. */
  hear(text: string): HeardOf[] {
    const best = new Map<string, HeardOf & { readonly score: number }>();
    const clauses = clausesOf(text);
    const spans = clauses
      .flatMap((one, at) => [[one], clauses.slice(at, at + 2)])
      .filter(({ length }, at) => length > at % 2);
    for (const span of spans) {
      for (const { line, score, words } of this.#said(span)) {
        const key = `${line.check} ${line.option}`;
        if (score > (best.get(key)?.score ?? 0))
          best.set(key, { check: line.check, option: line.option, words, score });
      }
    }
    return [...best.values()]
      .sort((a, b) => b.score - a.score)
      .slice(0, MOST_HEARD)
      .map(({ check, option, words }) => ({ check, option, words }));
  }

  /** What is said in so many clauses on end: lines of as many. */
  #said(clauses: readonly string[]) {
    const clause = clauses.join(' ');
    const spoken = wordsOf(clause);
    const found = this.#found(clause, spoken);
    return found
      .filter(({ line }) => line.clauses === clauses.length)
      .filter((one) => one.share >= ENOUGH && isNear(one, spoken) && isMeant(one, spoken))
      .filter((one) => isWhole(one, spoken) || particular(one, found) >= PARTICULAR)
      .map(({ line, share, heard, words }) => ({ line, words, score: share * this.#weigh(heard) }));
  }

  /** Every line of which a word is heard. */
  #found(clause: string, spoken: readonly string[]): Found[] {
    const found = this.#index.search(clause, {
      combineWith: 'OR',
      prefix: (term) => term.length > 4,
      fuzzy: (term) => (term.length > 6 ? 0.2 : 0),
    });
    return found.flatMap(({ id, match, queryTerms }) => {
      const line = this.#lines[Number(id)];
      if (line === undefined) return [];
      const own = [...new Set(wordsOf(line.text))];
      const heard = own.filter((word) => Object.hasOwn(match, word));
      const words = spoken.filter((word) => queryTerms.includes(word));
      return [{ line, own, heard, words, share: this.#weigh(heard) / this.#weigh(own) }];
    });
  }

  #weigh(words: readonly string[]): number {
    return words.reduce((sum, word) => sum + (this.#weights.get(word) ?? 0), 0);
  }
}

/** Fewer words than this are somebody who still begins to write. From memory (judgement). */
const BEGUN = 3;

/** Whether a text is long enough to have said something, and nothing of it was understood. */
export const isUnheard = (text: string, heard: readonly HeardOf[]): boolean =>
  heard.length === 0 && wordsOf(text).length >= BEGUN;

/** A line of which words are heard. */
interface Found {
  readonly line: Line;
  /** Its words; those of them that are heard, and what part of it these are by weight, 0 to 1. */
  readonly own: readonly string[];
  readonly heard: readonly string[];
  readonly share: number;
  /** The words of the text that are heard as them, in its order. */
  readonly words: readonly string[];
}

/** Whether a line stands in the text word for word, its small words too. */
const isWhole = ({ line }: Found, spoken: readonly string[]): boolean =>
  ` ${spoken.join(' ')} `.includes(` ${wordsOf(line.text).join(' ')} `);

/** How much of what these words could come from is the same answer, 0 to 1: a word from the lines of many answers says little of any. */
function particular({ line, words }: Found, found: readonly Found[]): number {
  const from = found.filter((other) => words.every((word) => other.words.includes(word)));
  const alike = from.filter(({ line: other }) => other.check === line.check && other.option === line.option);
  return sharesOf(alike) / sharesOf(from);
}

const sharesOf = (some: readonly Found[]): number => some.reduce((sum, { share }) => sum + share, 0);

/** Whether the words stand as close together as in the line, or nearly: some stretch of the text has one of each. */
function isNear({ own, words }: Found, spoken: readonly string[]): boolean {
  const width = own.length + SPREAD;
  const sought = [...new Set(words)];
  return spoken.some((_, at) => sought.every((word) => spoken.slice(at, at + width).includes(word)));
}

/** Whether the text says it, and not its contrary or that it is well, as far as the line does not say so itself. */
function isMeant({ own, heard, words }: Found, spoken: readonly string[]): boolean {
  const negations = own.filter((word) => NEGATIONS.has(word));
  if (negations.length > 0) return negations.every((word) => heard.includes(word));
  return !isDenied(spoken, words) && (own.some((word) => WELL.has(word)) || !isWell(spoken, words));
}

/** Whether a negation stands shortly before the first of these words, or behind the last. */
function isDenied(spoken: readonly string[], words: readonly string[]): boolean {
  const first = spoken.findIndex((word) => words.includes(word));
  const last = spoken.findLastIndex((word) => words.includes(word));
  return (
    spoken.slice(Math.max(0, first - REACH), Math.max(0, first)).some((word) => NEGATIONS.has(word)) ||
    spoken.slice(last + 1, last + 2).some((word) => DENIES_BEFORE.has(word))
  );
}

/** Whether it is said shortly before or after these words that this is well: "summer is perfect". */
function isWell(spoken: readonly string[], words: readonly string[]): boolean {
  const first = spoken.findIndex((word) => words.includes(word));
  const last = spoken.findLastIndex((word) => words.includes(word));
  const before = spoken.slice(Math.max(0, first - REACH), first);
  const after = spoken.slice(last + 1, last + 1 + REACH);
  const turn = after.findIndex((word) => TURNS.has(word));
  return (
    before.slice(before.findLastIndex((word) => TURNS.has(word)) + 1).some((word) => WELL.has(word)) ||
    after.slice(0, turn < 0 ? after.length : turn).some((word) => WELL.has(word))
  );
}

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
}

/** So much of a line must be heard, by weight of its words, 0 to 1. From memory (judgement). */
const ENOUGH = 0.75;
/** A negation reaches so many words ahead. From memory (judgement). */
const REACH = 4;
const MOST_HEARD = 12;

const NEGATIONS = new Set(
  ['not', 'no', 'never', 'without', 'none', 'nicht', 'kein', 'keine', 'keinen', 'nie', 'ohne'].concat(
    ...[
      ['pas', 'sans', 'jamais', 'aucun', 'aucune', 'plus'],
      ['niet', 'geen', 'nooit', 'zonder'],
    ],
  ),
);

/** Small words that say nothing of a trouble, English, German, French, Dutch. */
const SMALL = new Set(
  [
    'a an the i my me we our you your it its is are was were be been has have had do does did of to at in on into by and or so as if then that this these those there with for from just very all any both also only when whenever every get gets got',
    'der die das den dem des ein eine einen einem ich mein meine wir es ist sind war von zu zum zur im am auf in und oder so wenn dann mit fur aus nur auch immer sehr bei beim alle alles sich er sie',
    'le la les l un une des du de d je mon ma mes nous il elle est sont a au aux en et ou si quand alors avec pour sur tout tous que qui se ce cette ca y',
    'het een ik mijn we is zijn was van te in op en of als dan met voor uit ook alleen altijd erg bij alle alles zich er dat die de',
  ].flatMap((words) => words.split(' ')),
);

/** Words of a text: small letters without accents, "n't" as a word of its own. */
function wordsOf(text: string): string[] {
  const plain = text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  return plain.replace(/n[’']t\b/g, ' not').match(/[\p{L}\p{N}]+/gu) ?? [];
}

const CLAUSE = /[.,;:!?\n()]+|\s(?:but|aber|mais|maar|however|jedoch)\s/i;

/** Hears a text: every answer whose lines it seems to say, the surest first. */
export class Listener {
  readonly #index: MiniSearch<Line>;
  readonly #lines: readonly Line[];
  readonly #weights = new Map<string, number>();

  constructor(said: readonly Said[]) {
    this.#lines = said
      .flatMap(({ check, option, lines }) => lines.map((text) => ({ check, option, text })))
      .map((line, id) => ({ id, ...line }));
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
    for (const clause of text.split(CLAUSE)) {
      for (const { line, score, words } of this.#said(clause)) {
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

  #said(clause: string) {
    const spoken = wordsOf(clause);
    const found = this.#index.search(clause, {
      combineWith: 'OR',
      prefix: (term) => term.length > 4,
      fuzzy: (term) => (term.length > 5 ? 0.2 : 0),
    });
    return found.flatMap(({ id, match, queryTerms }) => {
      const line = this.#lines[Number(id)];
      if (line === undefined) return [];
      const own = [...new Set(wordsOf(line.text))];
      const heard = own.filter((word) => Object.hasOwn(match, word));
      const share = this.#weigh(heard) / this.#weigh(own);
      const negations = own.filter((word) => NEGATIONS.has(word));
      if (share < ENOUGH || negations.some((word) => !heard.includes(word))) return [];
      const words = spoken.filter((word) => queryTerms.includes(word));
      if (negations.length === 0 && isDenied(spoken, words)) return [];
      return [{ line, score: share * this.#weigh(heard), words }];
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

/** Whether a negation stands shortly before the first of these words. */
function isDenied(spoken: readonly string[], words: readonly string[]): boolean {
  const first = spoken.findIndex((word) => words.includes(word));
  return first >= 0 && spoken.slice(Math.max(0, first - REACH), first).some((word) => NEGATIONS.has(word));
}

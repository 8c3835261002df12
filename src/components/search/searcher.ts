// The search: every page of the site, and the lines that people say who need it. A question is compared with each line as a whole,
// so that a page with one fitting line stands before one that has the words scattered over its text.
import MiniSearch from 'minisearch';
import { isMeaning, type Same, Terms } from './terms.ts';
import { SMALL, wordsOf } from './words-of.ts';

type Kind = 'wizard' | 'trouble' | 'fix' | 'lesson' | 'term' | 'source' | 'page';

/** A page, or a word in the glossary. */
export interface Page {
  /** Below the language: `fixes/larger-supply/`. */
  readonly path: string;
  readonly kind: Kind;
  readonly title: string;
  readonly lead: string;
  /** The lead in feet and gauge numbers, where that differs. */
  readonly inFeet?: string;
  /** The wizard that comes to this as its verdict: it always stands before it. */
  readonly verdictOf?: string;
}

/** A page with all that it is found by. */
export interface Searched extends Page {
  /** What people say who need it, one line each, in any language. */
  readonly says: readonly string[];
}

/** A line: the page it leads to, how much it counts, and its terms by number. */
type Line = readonly [page: number, counts: number, ...terms: number[]];

interface Packed {
  readonly same: Same;
  readonly pages: readonly Page[];
  readonly terms: readonly string[];
  readonly lines: readonly Line[];
}

// How much what counts: from memory (judgement), chosen on two thirds of the phrases of tests/site/search-phrases.json.
const SAID = 1;
const TITLE = 1;
const LEAD = 0.7;
const KIND_COUNTS: Readonly<Record<Kind, number>> = {
  // Whoever says what goes wrong or asks how much is led to the questions first.
  wizard: 1.1,
  trouble: 1.1,
  fix: 1,
  lesson: 1,
  term: 1,
  page: 0.8,
  source: 0.8,
};
/** Words that few lines have count more; this much of the difference is kept, 0 to 1. */
const RARE = 0.5;
/** How much a long line is held back, 0 to 0.5. */
const LONG = 0.35;
/** A line that is just what was asked counts so many times more; what of it must be said, so that it is that. */
const SAME = 1.5;
const ALL_OF_IT = 0.999;
/** What each of the next lines of a page that fit adds to its best one. */
const FURTHER = 0.5;
const FURTHER_LINES = 4;
/** Words shorter than this have to stand as they are; longer ones may begin another word or be misspelt. */
const LEAST_BEGINNING = 4;
const LEAST_MISSPELT = 5;
const MISSPELT = 0.25;
const MOST_NEAR = 6;
/** What a near word counts, and what a guessed meaning. */
const NEAR = 0.6;
const GUESSED = 0.8;
const MOST_FOUND = 12;

/** The index as text that `Searcher` reads. */
export function pack(all: readonly Searched[], same: Same): string {
  const terms = new Terms(same);
  const numbers = new Map<string, number>();
  const numberOf = (term: string): number => {
    const number = numbers.get(term) ?? numbers.size;
    numbers.set(term, number);
    return number;
  };
  const line = (page: number, counts: number, text: string): Line => [
    page,
    counts,
    ...[...new Set(terms.of(text))].map(numberOf),
  ];
  const lines = all.flatMap(({ says, title, lead }, page) => [
    ...says.map((said) => line(page, SAID, said)),
    line(page, TITLE, title),
    line(page, LEAD, lead),
  ]);
  const pages = all.map(({ says: _, ...page }) => page);
  return JSON.stringify({ same, pages, terms: [...numbers.keys()], lines } satisfies Packed);
}

/** Finds pages by words. */
export class Searcher {
  readonly #pages: readonly Page[];
  readonly #lines: readonly Line[];
  readonly #terms: Terms;
  readonly #numbers: ReadonlyMap<string, number>;
  /** How much a term counts, by number: more where few lines have it. */
  readonly #weights: readonly number[];
  readonly #norms: readonly number[];
  /** Finds words near one that is misspelt or only begun. */
  readonly #near = new MiniSearch<{ id: string }>({
    fields: ['id'],
    tokenize: (term) => [term],
    processTerm: (term) => term,
  });

  /** @param packed what `pack` gave; throws an Error where it is not that */
  constructor(packed: string) {
    const { same, pages, terms, lines }: Packed = JSON.parse(packed);
    this.#pages = pages;
    this.#lines = lines;
    this.#terms = new Terms(same);
    this.#numbers = new Map(terms.map((term, number) => [term, number]));
    const count = terms.map(() => 0);
    for (const [, , ...own] of lines) for (const term of own) count[term] = (count[term] ?? 0) + 1;
    this.#weights = count.map((n) => weightOf(lines.length, n));
    this.#norms = lines.map(([, , ...own]) => own.reduce((sum, term) => sum + this.#weight(term) ** 2, 0));
    this.#near.addAll(terms.filter((term) => !isMeaning(term)).map((id) => ({ id })));
  }

  /** At most twelve pages, the best first; none for words that are nowhere. */
  find(asked: string): Page[] {
    const words = [...new Set(this.#terms.of(asked))].map((term) => this.#heard(term));
    const norm = words.reduce((sum, { weight }) => sum + weight ** 2, 0);
    const scores = new Map<number, number[]>();
    for (const [at, [page, counts, ...own]] of this.#lines.entries()) {
      const common = words.reduce((sum, word) => sum + this.#common(word, own), 0);
      if (common === 0) continue;
      const same = own.length === words.length && common > norm * ALL_OF_IT ? SAME : 1;
      const score = (same * counts * common) / (norm ** 0.5 * (this.#norms[at] ?? 1) ** LONG);
      scores.set(page, [...(scores.get(page) ?? []), score]);
    }
    const best = [...scores]
      .map(([page, lines]) => ({ page: this.#pages[page], score: together(lines) }))
      .flatMap(({ page, score }) => (page === undefined ? [] : { page, score: score * KIND_COUNTS[page.kind] }))
      .sort((one, two) => two.score - one.score)
      .slice(0, MOST_FOUND)
      .map(({ page }) => page);
    const thing = thingAsked(asked);
    const named = this.#pages.filter(
      ({ title, kind }) => isSame(title, asked) || (kind === 'term' && isSame(title, thing)),
    );
    return wizardsFirst([...new Set([...named, ...best])], this.#pages).slice(0, MOST_FOUND);
  }

  #weight(term: number | undefined): number {
    return term === undefined ? weightOf(this.#lines.length, 0) : (this.#weights[term] ?? 0);
  }

  /** A word of the question, with all that it may stand for and how surely, 0 to 1. */
  #heard(term: string): Heard {
    const meant = new Map<number, number>();
    const add = (one: string, sure: number): void => {
      const number = this.#numbers.get(one);
      if (number !== undefined && !meant.has(number)) meant.set(number, sure);
    };
    add(term, 1);
    for (const guess of this.#terms.guess(term)) add(guess, GUESSED);
    if (!isMeaning(term)) {
      const fuzzy = term.length >= LEAST_MISSPELT ? MISSPELT : false;
      const near = this.#near.search(term, { fuzzy, prefix: term.length >= LEAST_BEGINNING }).slice(0, MOST_NEAR);
      for (const { id } of near) add(String(id), NEAR);
    }
    return { weight: this.#weight(this.#numbers.get(term)), meant };
  }

  /** What a word of the question and the terms of a line have in common. */
  #common({ weight, meant }: Heard, own: readonly number[]): number {
    let most = 0;
    for (const term of own) {
      const sure = meant.get(term);
      if (sure !== undefined) most = Math.max(most, sure * this.#weight(term) * Math.min(weight, this.#weight(term)));
    }
    return most;
  }
}

interface Heard {
  readonly weight: number;
  readonly meant: ReadonlyMap<number, number>;
}

/** Of a term that `count` of `all` lines have; one that none has counts like one that half a line has. */
const weightOf = (all: number, count: number): number => Math.log(1 + all / Math.max(count, 0.5)) ** RARE;

/** Whether two texts are the same word by word. */
const isSame = (one: string, two: string): boolean => wordsOf(one).join(' ') === wordsOf(two).join(' ');

/** How people begin who want a word explained, and what they say besides the word. */
const WANTS_MEANING = /^(?:what|define|explain|meaning|was|wat|qu|que) /;
const BESIDE_THE_WORD = new Set(['mean', 'means', 'meaning', 'define', 'explain', 'bedeutet', 'heisst', 'betekent']);

/** The word of which the meaning is asked: "what is a bus" asks for "bus". Empty for any other question. */
function thingAsked(asked: string): string {
  const words = wordsOf(asked);
  if (!WANTS_MEANING.test(words.join(' '))) return '';
  return words.filter((word) => !(SMALL.has(word) || BESIDE_THE_WORD.has(word))).join(' ');
}

/** A page counts by its best line, and a little by the others. */
function together(scores: readonly number[]): number {
  const [best = 0, ...rest] = [...scores].sort((one, two) => two - one);
  return best + FURTHER * rest.slice(0, FURTHER_LINES).reduce((sum, score) => sum + score, 0);
}

/** A verdict is for those whom the wizard gave it: the wizard stands before it. */
function wizardsFirst(found: readonly Page[], all: readonly Page[]): Page[] {
  const pages: Page[] = [];
  for (const page of found) {
    const wizard = page.verdictOf === undefined ? undefined : all.find(({ path }) => path === page.verdictOf);
    for (const one of wizard === undefined ? [page] : [wizard, page]) if (!pages.includes(one)) pages.push(one);
  }
  return pages;
}

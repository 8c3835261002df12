// The search: every page of the site with what it says and what people say who need it. A line that people say is looked for as
// a whole, so that a page with one fitting line stands before one that has the words scattered over its text.
import MiniSearch, { type Options, type SearchResult } from 'minisearch';
import { termOf, wordsOf } from './terms.ts';

export type Kind = 'wizard' | 'trouble' | 'fix' | 'lesson' | 'term' | 'source' | 'page';

/** A page, or a word in the glossary. */
export interface Page {
  /** Below the language: `fixes/larger-supply/`. */
  readonly path: string;
  readonly kind: Kind;
  readonly title: string;
  readonly lead: string;
  /** The wizard that comes to this as its verdict: it always stands before it. */
  readonly verdictOf?: string;
}

/** A page with all that it is found by. */
export interface Searched extends Page {
  /** What people say who need it, one line each. */
  readonly says: readonly string[];
  /** Its own text. */
  readonly text: string;
}

interface Line {
  readonly id: number;
  readonly page: number;
  readonly said?: string;
  readonly title?: string;
  readonly lead?: string;
  readonly text?: string;
}

const OPTIONS: Options<Line> = {
  fields: ['said', 'title', 'lead', 'text'],
  storeFields: ['page', 'said', 'title'],
  tokenize: wordsOf,
  processTerm: termOf,
};

/** How much a field counts beside a page's own text. From memory (judgement), tuned on phrases people say (tests/site/search). */
const COUNTS = { said: 2, title: 1.6, lead: 1, text: 0.4 };
/** Words shorter than this have to stand as they are; longer ones may begin another word or be misspelt. */
const LEAST_BEGINNING = 4;
const LEAST_MISSPELT = 5;
const MISSPELT = 0.25;
const LESS = { fuzzy: 0.3, prefix: 0.5 };
/** Whoever says what goes wrong or asks how much is led to the questions first. From memory (judgement). */
const KIND_COUNTS: Readonly<Record<Kind, number>> = {
  wizard: 1.2,
  trouble: 1.2,
  fix: 1,
  lesson: 1,
  term: 1,
  page: 0.8,
  source: 0.5,
};
/** A line that is what was asked, and one that has it in it or is in it. From memory (judgement). */
const SAME = 2;
const WITHIN = 1.4;
/** Of a page's further lines that fit, so much is added to its best one. */
const FURTHER = 0.15;
const MOST_FOUND = 12;

interface Packed {
  readonly pages: readonly Page[];
  readonly index: ReturnType<MiniSearch['toJSON']>;
}

/** The index as text that `Searcher` reads. */
export function pack(all: readonly Searched[]): string {
  const index = new MiniSearch<Line>(OPTIONS);
  let id = 0;
  for (const [page, { says, title, lead, text }] of all.entries()) {
    index.add({ id: id++, page, title, lead, text });
    for (const said of says) index.add({ id: id++, page, said });
  }
  const pages = all.map(({ says: _, text: __, ...page }) => page);
  return JSON.stringify({ pages, index } satisfies Packed);
}

/** Finds pages by words. */
export class Searcher {
  readonly #pages: readonly Page[];
  readonly #index: MiniSearch<Line>;

  /** @param packed what `pack` gave; throws an Error where it is not that */
  constructor(packed: string) {
    const { pages, index }: Packed = JSON.parse(packed);
    this.#pages = pages;
    this.#index = MiniSearch.loadJS<Line>(index, OPTIONS);
  }

  /** At most twelve pages, the best first; none for words that are nowhere. */
  find(asked: string): Page[] {
    const scores = new Map<number, number[]>();
    const found = this.#index.search(asked, {
      combineWith: 'OR',
      boost: COUNTS,
      prefix: (term) => term.length >= LEAST_BEGINNING,
      fuzzy: (term) => (term.length >= LEAST_MISSPELT ? MISSPELT : false),
      weights: LESS,
    });
    for (const hit of found) {
      const page: number = hit.page;
      const score =
        hit.score * shareHeard(hit, asked) * likeness(hit.said ?? hit.title, asked) * kindCounts(this.#pages[page]);
      scores.set(page, [...(scores.get(page) ?? []), score]);
    }
    const best = [...scores]
      .map(([page, lines]) => ({ page, score: together(lines) }))
      .sort((one, two) => two.score - one.score)
      .slice(0, MOST_FOUND)
      .flatMap(({ page }) => this.#pages[page] ?? []);
    return wizardsFirst(best, this.#pages).slice(0, MOST_FOUND);
  }
}

/** What share of the asked words a line has: those with all of them come before those with one. */
function shareHeard({ queryTerms }: SearchResult, asked: string): number {
  const words = new Set(wordsOf(asked).flatMap((word) => termOf(word) ?? []));
  return words.size === 0 ? 1 : new Set(queryTerms).size / words.size;
}

/** A line that is just what was asked, or has it word by word, comes before one with the same words elsewhere. */
function likeness(line: unknown, asked: string): number {
  const own = ` ${wordsOf(String(line)).join(' ')} `;
  const words = ` ${wordsOf(asked).join(' ')} `;
  if (own === words) return SAME;
  return own.includes(words) || words.includes(own) ? WITHIN : 1;
}

const kindCounts = (page: Page | undefined): number => (page === undefined ? 0 : KIND_COUNTS[page.kind]);

/** A page counts by its best line, and a little by the others. */
function together(scores: readonly number[]): number {
  const [best = 0, ...rest] = [...scores].sort((one, two) => two - one);
  return best + FURTHER * rest.slice(0, 3).reduce((sum, score) => sum + score, 0);
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

// The search page: asks the index built beside the site, shows titles and what each page says, keeps the words in the address.
import { allowOwnWorkers } from '../shared/index.ts';
import { fill } from '../words/index.ts';

interface Found {
  readonly url: string;
  readonly excerpt: string;
  readonly content: string;
  readonly meta: { readonly title?: string; readonly lead?: string };
  readonly sub_results: readonly { readonly url: string; readonly title: string; readonly excerpt: string }[];
}

interface Hit {
  readonly id: string;
  readonly score: number;
  data(): Promise<Found>;
}

interface Index {
  search(words: string): Promise<{ readonly results: readonly Hit[] }>;
}

const MOST_SHOWN = 12;
const PAUSE = 150;
/** Part of a word that must be found for it to count, so that endings may differ. */
const BEGINNING = 0.7;

const place = document.querySelector<HTMLElement>('#results');
const input = document.querySelector<HTMLInputElement>('main .ask input');
const status = place?.querySelector<HTMLElement>('[role=status]');
const list = place?.querySelector<HTMLElement>('.list');

let index: Promise<Index> | undefined;
const load = (): Promise<Index> => {
  allowOwnWorkers();
  index ??= import(/* @vite-ignore */ `${import.meta.env.BASE_URL.replace(/\/*$/, '/')}pagefind/pagefind.js`);
  // What could not be loaded is asked for again with the next words.
  index.catch(() => {
    index = undefined;
  });
  return index;
};

const wordsOf = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

/** Pages that say it in these very words first, then pages with all the words, then those with some, where a word that few pages have counts most. */
const hitsFor = async (index: Index, asked: string): Promise<Hit[]> => {
  const whole = (await index.search(asked)).results;
  const words = [...new Set(wordsOf(asked))];
  if (words.length < 2) return [...whole];
  const weights = new Map<string, { hit: Hit; weight: number }>();
  for (const word of words) {
    const { results } = await index.search(word);
    for (const hit of results) {
      const weight = (weights.get(hit.id)?.weight ?? 0) + hit.score / results.length;
      weights.set(hit.id, { hit, weight });
    }
  }
  const very = (await index.search(`"${words.join(' ')}"`)).results;
  const said = new Set(very.map(({ id }) => id));
  const rest = whole.filter(({ id }) => !said.has(id));
  const first = new Set([...said, ...rest.map(({ id }) => id)]);
  const some = [...weights.values()]
    .filter(({ hit }) => !first.has(hit.id))
    .sort((one, two) => two.weight - one.weight);
  return [...very, ...rest, ...some.map(({ hit }) => hit)];
};

/** The index falls back to ever shorter beginnings of a word; a page counts only if most of one asked word is there. */
const answers = (page: Found, asked: string): boolean => {
  const there = wordsOf(`${page.meta.title} ${page.content}`);
  return wordsOf(asked).some((word) => {
    const beginning = word.slice(0, Math.max(3, Math.ceil(word.length * BEGINNING)));
    return there.some((other) => other.startsWith(beginning));
  });
};

/** The index compares stems; where the very words stand, the page comes first. */
function literalFirst(pages: readonly Found[], asked: string): Found[] {
  const says = ({ content }: Found): boolean => content.toLowerCase().includes(asked.toLowerCase());
  return [...pages.filter(says), ...pages.filter((page) => !says(page))];
}

const plain = (text: string): string => text.replaceAll('&lt;', '<').replaceAll('&gt;', '>');

/** What the index cuts out of a page: text, in which it has put <mark> round what was asked for; nothing else in it is taken for markup. */
const marked = (excerpt: string): (string | HTMLElement)[] =>
  excerpt.split(/<mark>(.*?)<\/mark>/s).map((text, index) => {
    if (index % 2 === 0) return plain(text);
    const mark = document.createElement('mark');
    mark.textContent = plain(text);
    return mark;
  });

/** One line of the list. A page that says itself what it is about shows that; a list of words leads to the word. */
const line = ({ url, excerpt, meta, sub_results: parts }: Found): HTMLLIElement => {
  const part = meta.lead === undefined ? parts.find((candidate) => candidate.url.includes('#')) : undefined;
  const item = document.createElement('li');
  const link = document.createElement('a');
  link.href = part?.url ?? url;
  link.textContent = part === undefined ? (meta.title ?? url) : `${meta.title}: ${part.title}`;
  const text = document.createElement('p');
  text.className = 'small';
  if (meta.lead !== undefined) text.textContent = meta.lead;
  else text.append(...marked(part?.excerpt ?? excerpt));
  item.append(link, text);
  return item;
};

if (place && input && status && list) {
  let latest = 0;
  const find = async (): Promise<void> => {
    const turn = ++latest;
    const words = input.value.trim();
    if (words === '') {
      status.textContent = '';
      list.replaceChildren();
      return;
    }
    try {
      const hits = (await hitsFor(await load(), words)).slice(0, MOST_SHOWN);
      const pages = await Promise.all(hits.map((hit) => hit.data()));
      const found = literalFirst(
        pages.filter((page) => answers(page, words)),
        words,
      );
      if (turn !== latest) return;
      const { none = '', found: some = '', locale = '' } = place.dataset;
      status.textContent = fill(found.length === 0 ? none : some, { q: words, n: found.length }, locale);
      list.replaceChildren(...found.map(line));
    } catch {
      status.textContent = place.dataset.broken ?? '';
    }
  };

  const ask = (): void => {
    const words = input.value.trim();
    history.replaceState(null, '', words === '' ? location.pathname : `?${new URLSearchParams({ q: words })}`);
    void find();
  };

  input.value = new URLSearchParams(location.search).get('q') ?? '';
  void find();
  let waiting: ReturnType<typeof setTimeout> | undefined;
  input.addEventListener('input', () => {
    clearTimeout(waiting);
    waiting = setTimeout(ask, PAUSE);
  });
  input.form?.addEventListener('submit', (event) => {
    event.preventDefault();
    clearTimeout(waiting);
    ask();
  });
}

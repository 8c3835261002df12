// The search page: asks the index that is made with the site, shows what each hit is and what its page says, keeps the words in the address.
import { type Page, Searcher } from '../search/index.ts';
import { BASE, fill } from '../words/index.ts';

const PAUSE = 150;

const place = document.querySelector<HTMLElement>('#results');
const input = document.querySelector<HTMLInputElement>('main .ask input');
const status = place?.querySelector<HTMLElement>('[role=status]');
const list = place?.querySelector<HTMLElement>('.list');
const otherwise = document.querySelector<HTMLElement>('#otherwise');

async function fetchSearcher(address: string): Promise<Searcher> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${answer.status} ${address}`);
  return new Searcher(await answer.text());
}

let searcher: Promise<Searcher> | undefined;
const load = (address: string): Promise<Searcher> => {
  searcher ??= fetchSearcher(address);
  // What could not be loaded is asked for again with the next words.
  searcher.catch(() => {
    searcher = undefined;
  });
  return searcher;
};

/** What differs between the two systems stands there in both: the switch at the foot of the page chooses. */
function told(system: 'in-metric' | 'in-feet', lead: string): HTMLElement {
  const span = document.createElement('span');
  span.className = system;
  span.textContent = lead;
  return span;
}

/** One line of the list: what it is called, what it is, what it says. */
function line({ path, kind, title, lead, inFeet }: Page, home: string, kinds: DOMStringMap): HTMLLIElement {
  const item = document.createElement('li');
  const link = document.createElement('a');
  link.href = home + path;
  link.textContent = title;
  const text = document.createElement('p');
  text.className = 'small';
  const what = document.createElement('b');
  what.textContent = kinds[kind] ?? '';
  if (what.textContent !== '') text.append(what, ' · ');
  if (inFeet === undefined) text.append(lead);
  else text.append(told('in-metric', lead), told('in-feet', inFeet));
  item.append(link, text);
  return item;
}

/** What an address that leads nowhere may have meant: the words of its last parts. */
function wordsOfAddress(): string {
  const path = location.pathname.slice(BASE.length).replace(/\.\w+$/, '');
  const parts = path.split('/').filter((part) => part !== '');
  try {
    return decodeURIComponent(parts.slice(parts.length > 1 ? 1 : 0).join(' '))
      .replaceAll(/[-_+.]+/g, ' ')
      .trim();
  } catch {
    return '';
  }
}

if (place && input && status && list) {
  const { none = '', found: some = '', one = '', broken = '', locale = '', home = '' } = place.dataset;
  let latest = 0;
  const find = async (): Promise<void> => {
    const turn = ++latest;
    const words = input.value.trim();
    if (words === '') {
      status.textContent = '';
      list.replaceChildren();
      otherwise?.removeAttribute('hidden');
      return;
    }
    try {
      const found = (await load(`${home}search.json`)).find(words);
      if (turn !== latest) return;
      const said = [none, one][found.length] ?? some;
      status.textContent = fill(said, { q: words, n: found.length }, locale);
      list.replaceChildren(...found.map((page) => line(page, home, list.dataset)));
      otherwise?.toggleAttribute('hidden', found.length > 0);
    } catch {
      status.textContent = broken;
    }
  };

  const ask = (): void => {
    const words = input.value.trim();
    // A page that is not there stays at the address that was asked for.
    if (place.dataset.lost !== undefined) return void find();
    history.replaceState(null, '', words === '' ? location.pathname : `?${new URLSearchParams({ q: words })}`);
    void find();
  };

  input.value =
    new URLSearchParams(location.search).get('q') ?? (place.dataset.lost === undefined ? '' : wordsOfAddress());
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

// The index for helpers: shows only the lines that have the words that are typed, keeps the words in the address, and copies the link of a line.
import { fitting } from '../search/index.ts';
import { fill } from '../words/index.ts';

const PAUSE = 120;

const desk = document.querySelector<HTMLElement>('.desk');
const form = desk?.querySelector('form');
const input = form?.querySelector('input');
const status = form?.querySelector<HTMLElement>('[role=status]');

/** A line with its text, read once. */
interface Line {
  readonly item: HTMLLIElement;
  readonly link: HTMLAnchorElement;
  readonly title: string;
  readonly text: string;
}

function linesOf(desk: HTMLElement): readonly Line[] {
  return [...desk.querySelectorAll<HTMLLIElement>('.rows > li')].flatMap((item) => {
    const link = item.querySelector('a');
    if (link === null) return [];
    return [{ item, link, title: link.textContent?.trim() ?? '', text: item.textContent ?? '' }];
  });
}

/** Shows what fits, with its headings; gives how many lines that are. */
function show(desk: HTMLElement, lines: readonly Line[], typed: string): number {
  const fits = fitting(typed);
  let shown = 0;
  for (const { item, text } of lines) {
    item.hidden = !fits(text);
    if (!item.hidden) shown += 1;
  }
  for (const part of desk.querySelectorAll<HTMLElement>('section, section > div')) {
    part.hidden = part.querySelector('li:not([hidden])') === null;
  }
  return shown;
}

function addCopy({ item, link, title }: Line, desk: HTMLElement, tell: (words: string) => void): void {
  const { copy = '', copied = '', notCopied = '', locale = '' } = desk.dataset;
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = copy;
  button.ariaLabel = `${copy}: ${title}`;
  button.addEventListener('click', () =>
    navigator.clipboard.writeText(link.href).then(
      () => tell(fill(copied, { title }, locale)),
      () => tell(fill(notCopied, { title }, locale)),
    ),
  );
  item.append(button);
}

if (desk && form && input && status) {
  const { found = '', none = '', locale = '' } = desk.dataset;
  const lines = linesOf(desk);
  const tell = (words: string): void => {
    status.textContent = words;
  };
  for (const line of lines) addCopy(line, desk, tell);
  const filter = (): void => {
    const q = input.value.trim();
    const n = show(desk, lines, q);
    tell(q === '' ? '' : fill(n === 0 ? none : found, { q, n }, locale));
  };
  form.removeAttribute('data-waits');
  input.value = new URLSearchParams(location.search).get('q') ?? '';
  filter();
  let waiting: ReturnType<typeof setTimeout> | undefined;
  input.addEventListener('input', () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      filter();
      const q = input.value.trim();
      history.replaceState(null, '', q === '' ? location.pathname : `?${new URLSearchParams({ q })}`);
    }, PAUSE);
  });
}

// Passing a fix on, by the script that stands in its page: its link, and all that it says as text or as Markdown. Without script its address
// does the same.
import { guarded, markdown, type Parts, plainOf } from '../link/index.ts';
import { onPrintKey } from '../shared/index.ts';
import { fill } from '../words/index.ts';
import { textOf } from './shown-text.ts';

const card = document.querySelector<HTMLElement>('[data-pass-on]');
const status = card?.querySelector('[role=status]');

const textsOf = (selector: string, within: ParentNode = document): string[] =>
  [...within.querySelectorAll(selector)].map(textOf);

function stepOf(step: Element): Parts['steps'][number] {
  const link = step.querySelector<HTMLAnchorElement>('a.job');
  return {
    text: guarded(textsOf(':scope > .caution.again > p', step), textsOf(':scope > p:not(.step-at, :has(.job))', step)),
    job: link === null ? undefined : { title: textOf(link), address: link.href },
    dangers: [...step.querySelectorAll(':scope > .caution:not(.again) > p')].map((danger) => {
      const rank = textOf(danger.querySelector('em'));
      return { rank, text: textOf(danger).slice(rank.length).trim() };
    }),
  };
}

function partsHere(): Parts {
  const proof = [...document.querySelectorAll('#proof h2')];
  return {
    headline: textOf(document.querySelector('h1')),
    // Lines of a drawing are called so too.
    lead: textsOf('main p.lead').join(' '),
    said: [],
    facts: [],
    fix: card?.dataset.steps ?? '',
    before: { title: textOf(document.querySelector('.before h2')), acts: textsOf('.before li') },
    steps: [...document.querySelectorAll('.steps > li')].map(stepOf),
    after: proof.map((title) => ({ title: textOf(title), text: textOf(title.nextElementSibling) })),
  };
}

const WRITERS: Readonly<Record<string, (link: string) => string>> = {
  link: (link) => link,
  text: (link) => fill(card?.dataset.text ?? '', { text: plainOf(partsHere()), link }, ''),
  markdown: (link) => markdown(partsHere(), { name: card?.dataset.open ?? '', address: link }),
};

function tell(sentence: string | undefined): void {
  if (status !== null && status !== undefined) status.textContent = sentence ?? '';
}

/** Paper leads back: the address of this fix, whole, on paper only. */
function addPaperLink(): void {
  const line = document.createElement('p');
  line.className = 'paper-link';
  line.textContent = location.href.replace(/#.*$/, '');
  card?.after(line);
}

/** Its code goes on paper too; where that cannot be had, the address does. What draws it stands in the root of the site, as the picture of the page. */
function printWithCode(): void {
  const picture = document.querySelector<HTMLLinkElement>('link[rel=icon]');
  import(new URL('code.js', picture?.href).href).catch(() => undefined).then(() => print());
}

addPaperLink();
onPrintKey(printWithCode);
card?.removeAttribute('data-waits');
card?.addEventListener('click', ({ target }) => {
  const way = target instanceof HTMLButtonElement ? target.dataset.copy : undefined;
  if (way === undefined) return;
  if (way === 'print') return printWithCode();
  const written = WRITERS[way]?.(location.href) ?? '';
  navigator.clipboard.writeText(written).then(
    () => tell(card.dataset.copied),
    () => tell(card.dataset.failed),
  );
});

// Passing a live figure on as it is set, loaded once somebody reaches for it: its link, what it says as text or as Markdown, its code.
import { markdown } from '../link/index.ts';
import { fill } from '../words/index.ts';
import { codeBox } from './code-box.ts';
import { textOf } from './shown-text.ts';

/** Opens the lesson at its figure, set as it is now; `others` are what its address says of other things. */
function linkHere(others: readonly string[]): string {
  const link = new URL(location.href);
  for (const name of others) link.searchParams.delete(name);
  link.hash = 'figure';
  return link.href;
}

const told = (name: Element | null | undefined, value: string): string =>
  name === null || name === undefined ? value : `${textOf(name)}: ${value}`;

/** How a control is set, after its name; undefined for one that tells nothing. */
function setting(control: Element): string | undefined {
  if (control instanceof HTMLSelectElement) {
    const [chosen] = control.selectedOptions;
    return chosen === undefined ? undefined : told(control.labels[0], textOf(chosen));
  }
  if (!(control instanceof HTMLInputElement)) return undefined;
  if (control.type === 'range')
    return told(control.labels?.[0], control.getAttribute('aria-valuetext') ?? control.value);
  if (!control.checked) return undefined;
  const label = textOf(control.labels?.[0] ?? null);
  return control.type === 'radio' ? told(control.closest('fieldset')?.querySelector('legend'), label) : label;
}

/** The lesson, how each control is set, and what the figure says to that. */
function linesHere(): string[] {
  const live = document.querySelector('#figure .live');
  const settings = [...(live?.querySelectorAll('input, select') ?? [])].flatMap((control) => setting(control) ?? []);
  const says = [...(live?.querySelectorAll('[role="status"]') ?? [])].map(textOf);
  return [textOf(document.querySelector('h1')), ...settings, ...says].filter((line) => line !== '');
}

const WRITERS: Readonly<Record<string, (card: HTMLElement, link: string) => string>> = {
  link: (_, link) => link,
  text: ({ dataset }, link) => fill(dataset.text ?? '', { text: linesHere().join('\n'), link }, ''),
  markdown: (_, link) => markdown(linesHere(), { name: textOf(document.querySelector('h1')), address: link }),
};

/** What the button of this name copies. */
export const written = (card: HTMLElement, way: string, others: readonly string[]): string =>
  WRITERS[way]?.(card, linkHere(others)) ?? '';

/** Shows the code of the link, on the screen or on paper; rejects where it cannot be had. */
export async function passOn(card: HTMLElement, way: string, others: readonly string[]): Promise<void> {
  await showCode(card, linkHere(others), way === 'code');
  if (way === 'print') print();
}

/** The code of the link below its card: on the screen where it is asked for, on paper always. */
async function showCode(card: HTMLElement, link: string, onScreen: boolean): Promise<void> {
  const old = card.nextElementSibling?.closest('.paper-link');
  const shown = onScreen || old?.classList.contains('shown') === true;
  const box = await codeBox(link, shown ? 'screen' : 'paper');
  old?.remove();
  card.after(box);
}

// Terms of the glossary in a text: each opens in place where it stands first. Headings, links, cautions and drawings are left alone.
import { type HTMLElement, NodeType, parse } from 'node-html-parser';

export interface Term {
  readonly id: string;
  /** How it stands in a text; none: it never opens there. */
  readonly forms: readonly string[];
}

export interface Linked {
  readonly html: string;
  /** Terms that open, in the order in which they stand. */
  readonly used: readonly string[];
}

/** Where no term opens. */
const CLOSED: ReadonlySet<string> = new Set(
  ['a', 'button', 'h1', 'h2', 'h3', 'h4', 'summary', 'figure', 'svg', 'table', 'script', 'style', 'label'].map((tag) =>
    tag.toUpperCase(),
  ),
);

export const formsOf = ({ term, forms }: { readonly term: string; readonly forms?: readonly string[] | undefined }) =>
  forms ?? [term, `${term}s`];

/** What the button that opens a term names. */
export const meaningId = (id: string): string => `term-${id}`;

export function withTerms(html: string, terms: readonly Term[]): Linked {
  const byForm = new Map(terms.flatMap(({ id, forms }) => forms.map((form) => [form.toLowerCase(), id] as const)));
  if (byForm.size === 0) return { html, used: [] };
  const any = patternOf([...byForm.keys()]);
  const used = new Set<string>();
  const link = (text: string): string =>
    text.replace(any, (found, form: string, mark: string) => {
      const id = byForm.get(form.toLowerCase());
      if (id === undefined || used.has(id)) return found;
      used.add(id);
      const button = `<button type="button" class="term" popovertarget="${meaningId(id)}">${form}</button>`;
      return mark === '' ? button : `<span class="kept">${button}${mark}</span>`;
    });
  const page = parse(html, { comment: true });
  walk(page, link);
  return { html: page.toString(), used: [...used] };
}

function walk(element: HTMLElement, link: (text: string) => string): void {
  for (const node of element.childNodes) {
    if (node.nodeType === NodeType.TEXT_NODE) node.rawText = link(node.rawText);
    else if (isElement(node) && !CLOSED.has(node.tagName) && !node.classList.contains('caution')) walk(node, link);
  }
}

const isElement = (node: object): node is HTMLElement => 'tagName' in node && 'classList' in node;

/** Any of the forms as a word of its own, the longest first, and the marks that follow it. */
function patternOf(forms: readonly string[]): RegExp {
  const longestFirst = [...forms].sort((one, two) => two.length - one.length);
  const any = longestFirst.map((form) => form.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|');
  return new RegExp(`(?<![\\w-])(${any})(?![\\w-])([.,;:!?)”]*)`, 'gi');
}

// Pages that were begun as a copy of another and still say what that one says.
import type { Words } from './folder.ts';
import { isRecord, stepsOf, texts } from './folder.ts';

/** What a page says of its subject alone. What is needed, how long it takes, how one answers and a single step may be alike on two pages. */
const OWN = ['title', 'lead', 'short', 'because', 'verify', 'next', 'why', 'known', 'first', 'harm', 'means', 'term'];

interface Said {
  readonly part: string;
  readonly text: string;
}

const isPara = (text: string): boolean => /^\p{L}/u.test(text) && !text.startsWith('import ');

function saidBy(page: Words): Said[] {
  const own = OWN.map((part) => ({ part, text: page.data[part] }));
  const lists = [
    {
      part: 'steps',
      text: stepsOf(page)
        .map(({ text }) => text)
        .join('\n'),
    },
    { part: 'how', text: texts(page.data['how']).join('\n') },
    { part: 'says', text: texts(page.data['says']).join('\n') },
  ];
  const told = page.body.split(/\n{2,}/).map((text) => ({ part: 'text', text: text.trim() }));
  return [...own, ...lists, ...told.filter(({ text }) => isPara(text))].flatMap(({ part, text }) =>
    typeof text === 'string' && text.trim() !== '' ? [{ part, text: text.trim().toLowerCase() }] : [],
  );
}

/** Each page and part that says what a page before it says, as a sentence. */
export function copied(pages: readonly Words[]): string[] {
  const first = new Map<string, string>();
  return pages.flatMap((page) =>
    saidBy(page).flatMap(({ part, text }) => {
      const key = `${part}: ${text}`;
      const other = first.get(key);
      if (other === undefined) first.set(key, page.id);
      return other === undefined || other === page.id
        ? []
        : [
            `"${page.id}" says what "${other}" says (${part}: "${text.slice(0, 60)}"): a page of its own has words of its own.`,
          ];
    }),
  );
}

/** A page as it would lie in the folder, for a made-up case. */
export const madePage = (id: string, data: unknown, body = ''): Words => ({
  id,
  file: `${id}.mdx`,
  data: isRecord(data) ? data : {},
  body,
});

// The one place that builds addresses: every link and file stands under the base path the site is built for.
import { BASE, FALLBACK, type Language, languageNamed } from '../components/words/index.ts';

export { type Language, languageOf } from '../components/words/index.ts';

/** Address of a file in the root of the site, such as `favicon.svg`. */
export const asset = (path: string): string => BASE + path;

/** Address of a page, given below its language: `href('learn/')`. Pages end in a slash; a query or fragment may follow. */
export const href = (path: string, language: Language = FALLBACK): string => `${BASE}${language}/${path}`;

/** The part of an address below its language, the same in each; nothing on a page that stands below none. */
export function pathBelow(url: URL): string | undefined {
  const [language, ...path] = url.pathname.slice(BASE.length).split('/');
  return languageNamed(language) === undefined ? undefined : path.join('/');
}

/** The last part of a content id: `en/fixes/larger-supply` gives `larger-supply`. */
export const nameOf = (id: string): string => id.slice(id.lastIndexOf('/') + 1);

/** The language that an entry of the content is written in: the first part of its id. */
export const writtenIn = (id: string): Language => languageNamed(id.split('/')[0]) ?? FALLBACK;

/** What an element says of its language, where that is not the language round it. */
export const langOf = (id: string, language: Language): Language | undefined =>
  writtenIn(id) === language ? undefined : writtenIn(id);

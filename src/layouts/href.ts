// The one place that builds addresses: every link and file stands under the base path the site is built for.
import { BASE, type Language } from '../components/words/index.ts';

export { type Language, languageOf } from '../components/words/index.ts';

/** Address of a file in the root of the site, such as `favicon.svg`. */
export const asset = (path: string): string => BASE + path;

/** Address of a page, given below its language: `href('learn/')`. Pages end in a slash; a query or fragment may follow. */
export const href = (path: string, language: Language = 'en'): string => `${BASE}${language}/${path}`;

/** The last part of a content id: `en/fixes/larger-supply` gives `larger-supply`. */
export const nameOf = (id: string): string => id.slice(id.lastIndexOf('/') + 1);

// The one place that builds addresses: every link and file stands under the base path the site is built for.

const BASE = import.meta.env.BASE_URL.replace(/\/*$/, '/');

export const LANGUAGES = ['en'] as const;
export type Language = (typeof LANGUAGES)[number];

/** Address of a file in the root of the site, such as `favicon.svg`. */
export const asset = (path: string): string => BASE + path;

/** Address of a page, given below its language: `href('learn/')`. Pages end in a slash; a query or fragment may follow. */
export const href = (path: string, language: Language = 'en'): string => `${BASE}${language}/${path}`;

/** The language a page is written in, read from its address; English where the address names none. */
export const languageOf = (url: URL): Language => {
  const first = url.pathname.slice(BASE.length).split('/')[0];
  return LANGUAGES.find((language) => language === first) ?? 'en';
};

/** The last part of a content id: `en/fixes/larger-supply` gives `larger-supply`. */
export const nameOf = (id: string): string => id.slice(id.lastIndexOf('/') + 1);

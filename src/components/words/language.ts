// The languages of the site; each has a folder of its own in the addresses and in src/content.

/** The path the site is built for, with a slash at its end. */
export const BASE = import.meta.env.BASE_URL.replace(/\/*$/, '/');

export const LANGUAGES = ['en'] as const;
export type Language = (typeof LANGUAGES)[number];

/** The language a page is written in, read from its address; English where the address names none. */
export const languageOf = (url: URL): Language => {
  const first = url.pathname.slice(BASE.length).split('/')[0];
  return LANGUAGES.find((language) => language === first) ?? 'en';
};

// Which language a page is in: its address says so.
import { FALLBACK, type Language, languageNamed } from './languages.ts';

/** The path the site is built for, with a slash at its end. */
export const BASE = import.meta.env.BASE_URL.replace(/\/*$/, '/');

/** The language of a page, read from its address; the first of the site where the address names none. */
export const languageOf = (url: URL): Language =>
  languageNamed(url.pathname.slice(BASE.length).split('/')[0]) ?? FALLBACK;

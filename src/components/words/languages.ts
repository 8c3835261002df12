// The languages of the site. A language is a line here and a folder of that name in src/content.

/** `id` stands in the addresses; `name` is the language's own; `locale` writes its numbers, plurals, lists and order. */
interface Line {
  readonly id: string;
  readonly name: string;
  readonly locale: string;
  readonly direction: 'ltr' | 'rtl';
}

/** The first is the one that every page is there in: what another lacks is shown in it. */
export const LANGUAGES = [{ id: 'en', name: 'English', locale: 'en', direction: 'ltr' }] as const satisfies readonly [
  Line,
  ...Line[],
];

export type Language = (typeof LANGUAGES)[number]['id'];

export const FALLBACK: Language = LANGUAGES[0].id;

/** The language of this name; nothing where the site has none. */
export const languageNamed = (id: string | undefined): Language | undefined =>
  LANGUAGES.find((language) => language.id === id)?.id;

/** Everything said of a language in its line. */
export const lineOf = (id: Language): Line => LANGUAGES.find((language) => language.id === id) ?? LANGUAGES[0];

export const localeOf = (id: Language): string => lineOf(id).locale;

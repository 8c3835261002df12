// Things in a row, as a language strings them together.
const LISTS = new Map<string, Intl.ListFormat>();

/** A short list, as the language writes one: "a, b, c" in English. */
export function listed(things: readonly string[], language: string): string {
  const format = LISTS.get(language) ?? new Intl.ListFormat(language, { type: 'unit', style: 'short' });
  LISTS.set(language, format);
  return format.format(things);
}

// Things in a row, as a language strings them together.
const LISTS = new Map<string, Intl.ListFormat>();

function list(language: string, type: Intl.ListFormatOptions['type'], things: readonly string[]): string {
  const key = `${language} ${type}`;
  const format =
    LISTS.get(key) ?? new Intl.ListFormat(language, { type, ...(type === 'unit' ? { style: 'short' } : {}) });
  LISTS.set(key, format);
  return format.format(things);
}

/** A short list, as the language writes one: "a, b, c" in English. */
export const listed = (things: readonly string[], language: string): string => list(language, 'unit', things);

/** Things that belong together: "a, b, and c" in English. */
export const joined = (things: readonly string[], language: string): string => list(language, 'conjunction', things);

// Pages that are made alike are slow to look at one by one: npm test looks at some of them, always the same, EVERYTHING=1 npm test at all.

/** Every `nth` of `all`, from place `from` on. @param nth at least 1 @param from 0 to nth - 1 */
export const someOf = <One>(all: readonly One[], nth: number, from = 0): readonly One[] =>
  process.env['EVERYTHING'] === '1' ? all : all.filter((_, place) => place % nth === from);

/** The pages of `all`, of those that `are` alike only every `nth`. */
export function fewOf(all: readonly string[], are: (path: string) => boolean, nth: number): readonly string[] {
  const alike = new Set(someOf(all.filter(are), nth));
  return all.filter((path) => !are(path) || alike.has(path));
}

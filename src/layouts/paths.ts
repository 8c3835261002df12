// The addresses that a page file makes: the same in each language.
import { LANGUAGES, type Language } from '../components/words/index.ts';

interface Path {
  readonly params: Readonly<Record<string, string>>;
}

/** The pages of a file, once for each language. */
export async function inEachLanguage<One extends Path>(
  pages: (language: Language) => readonly One[] | Promise<readonly One[]>,
): Promise<(One & { params: { language: Language } })[]> {
  const all = await Promise.all(
    LANGUAGES.map(async ({ id: language }) =>
      (await pages(language)).map((page) => ({ ...page, params: { ...page.params, language } })),
    ),
  );
  return all.flat();
}

/** A file that makes one page in each language. */
export const onePage = (): { params: { language: Language } }[] =>
  LANGUAGES.map(({ id: language }) => ({ params: { language } }));

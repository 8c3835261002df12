// The words of one question, fetched by a walk when it asks it.
import type { APIContext } from 'astro';
import { checksFor, entryNamed } from '../../../../layouts/entries.ts';
import { languageOf } from '../../../../layouts/href.ts';
import { inEachLanguage } from '../../../../layouts/paths.ts';
import { askedWords, walkWrittenIn } from '../../../../layouts/walk-words.ts';
import { SIGN_MODEL } from '../../../../wizards/put-it-right/index.ts';

export const getStaticPaths = () =>
  inEachLanguage(() => SIGN_MODEL.checks.map(({ id: check }) => ({ params: { check } })));

export async function GET({ params, url }: APIContext): Promise<Response> {
  const language = await walkWrittenIn(languageOf(url));
  return Response.json(await askedWords(language, entryNamed(await checksFor(language), params['check'] ?? '')));
}

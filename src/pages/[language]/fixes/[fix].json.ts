// The words of one fix, fetched by a walk when it proposes it.
import type { APIContext } from 'astro';
import { entryNamed, fixesFor } from '../../../layouts/entries.ts';
import { languageOf } from '../../../layouts/href.ts';
import { inEachLanguage } from '../../../layouts/paths.ts';
import { fixWords } from '../../../layouts/walk-words.ts';
import { SIGN_MODEL } from '../../../wizards/put-it-right/index.ts';

const CLASSES = [...new Set(SIGN_MODEL.causes.map(({ fixClass }) => fixClass))];

export const getStaticPaths = () => inEachLanguage(() => CLASSES.map((fix) => ({ params: { fix } })));

export async function GET({ params, url }: APIContext): Promise<Response> {
  const language = languageOf(url);
  return Response.json(await fixWords(language, entryNamed(await fixesFor(language), params['fix'] ?? '')));
}

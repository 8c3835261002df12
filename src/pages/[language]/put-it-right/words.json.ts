// What a walk says after its first question, for all complaints alike.
import type { APIContext } from 'astro';
import { languageOf } from '../../../layouts/href.ts';
import { onePage } from '../../../layouts/paths.ts';
import { walkWords, walkWrittenIn } from '../../../layouts/walk-words.ts';

export const getStaticPaths = onePage;

export async function GET({ url }: APIContext): Promise<Response> {
  return Response.json(await walkWords(await walkWrittenIn(languageOf(url))));
}

// What the page of the layout sheet says once a sheet is worked on.
import type { APIContext } from 'astro';
import { languageOf } from '../../../layouts/href.ts';
import { onePage } from '../../../layouts/paths.ts';
import { SHEET_ROOMS } from '../../../layouts/rooms.ts';
import { wordsOf } from '../../../layouts/words.ts';

export const getStaticPaths = onePage;

export async function GET({ url }: APIContext): Promise<Response> {
  return Response.json(await wordsOf(languageOf(url), SHEET_ROOMS));
}

// What people say for each answer, in every language that has phrases: fetched by the screen on which everything is told at once.
import type { APIContext } from 'astro';
import { languageOf } from '../../../layouts/href.ts';
import { onePage } from '../../../layouts/paths.ts';
import { saidOf } from '../../../layouts/walk-words.ts';

export const getStaticPaths = onePage;

export async function GET({ url }: APIContext): Promise<Response> {
  return Response.json(await saidOf(languageOf(url)));
}

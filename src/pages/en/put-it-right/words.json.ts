// What a walk says after its first question, for all complaints alike.
import type { APIContext } from 'astro';
import { walkWords } from '../../../layouts/walk-words.ts';

export async function GET({ url }: APIContext): Promise<Response> {
  return Response.json(await walkWords(url));
}

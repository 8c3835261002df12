// What a wizard's answer says, fetched on the way there so that the first question is light.
import type { APIContext } from 'astro';
import { answerWords, WIZARDS } from '../../../layouts/wizard-words.ts';

export const getStaticPaths = () => WIZARDS.map((wizard) => ({ params: { wizard } }));

export async function GET({ params, url }: APIContext): Promise<Response> {
  const wizard = WIZARDS.find((one) => one === params['wizard']);
  if (wizard === undefined) return new Response(null, { status: 404 });
  return Response.json(await answerWords(url, wizard));
}

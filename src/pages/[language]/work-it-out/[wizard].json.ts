// What a wizard's answer says, fetched on the way there so that the first question is light.
import type { APIContext } from 'astro';
import { languageOf } from '../../../layouts/href.ts';
import { inEachLanguage } from '../../../layouts/paths.ts';
import { answerWords, wizardWrittenIn } from '../../../layouts/wizard-words.ts';
import { WIZARD_IDS } from '../../../wizards/index.ts';

export const getStaticPaths = () => inEachLanguage(() => WIZARD_IDS.map((wizard) => ({ params: { wizard } })));

export async function GET({ params, url }: APIContext): Promise<Response> {
  const wizard = WIZARD_IDS.find((one) => one === params['wizard']);
  if (wizard === undefined) return new Response(null, { status: 404 });
  return Response.json(await answerWords(await wizardWrittenIn(languageOf(url), wizard), wizard));
}

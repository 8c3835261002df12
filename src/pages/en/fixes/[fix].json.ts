// The words of one fix, fetched by a walk when it proposes it.
import type { APIContext } from 'astro';
import { fixesFor } from '../../../layouts/entries.ts';
import { nameOf } from '../../../layouts/href.ts';
import { fixWords } from '../../../layouts/walk-words.ts';
import { FAULT_MODEL } from '../../../wizards/put-it-right/index.ts';

const CLASSES = [...new Set(FAULT_MODEL.faults.map(({ fixClass }) => fixClass))];

export const getStaticPaths = () => CLASSES.map((fix) => ({ params: { fix } }));

export async function GET({ params, url }: APIContext): Promise<Response> {
  const entry = (await fixesFor(url)).find(({ id }) => nameOf(id) === params['fix']);
  if (entry === undefined) throw new Error(`No words for the fix "${params['fix']}"`);
  return Response.json(await fixWords(url, entry));
}

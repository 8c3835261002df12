// What the build tells the worker that keeps a copy (scripts/build/offline.mjs): how many releases for safety there were, and what is said in
// each language where a page is neither on the device nor to be had.
import type { APIRoute } from 'astro';
import { LANGUAGES } from '../components/words/index.ts';
import { SAFETY_RELEASES } from '../layouts/release.ts';
import { wordsFor } from '../layouts/words.ts';

export const GET: APIRoute = async () => {
  const said = LANGUAGES.map(async ({ id }) => {
    const say = await wordsFor(id, 'lost');
    return [
      id,
      { title: say('lost-offline-title'), lead: say('lost-offline-lead'), again: say('lost-offline-again') },
    ] as const;
  });
  return Response.json({ safety: SAFETY_RELEASES, lost: Object.fromEntries(await Promise.all(said)) });
};

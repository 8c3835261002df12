// What the build tells the worker that keeps a copy (scripts/build/offline.mjs): how many releases for safety there were, and what is said in
// each language where a page is neither on the device nor to be had; and what pages say of a new release (page-scripts/offline.ts).
import type { APIRoute } from 'astro';
import { LANGUAGES, type Language } from '../components/words/index.ts';
import { SAFETY_RELEASES } from '../layouts/release.ts';
import { wordsFor } from '../layouts/words.ts';

const inEach = async <Words>(words: (language: Language) => Promise<Words>): Promise<Record<string, Words>> =>
  Object.fromEntries(await Promise.all(LANGUAGES.map(async ({ id }) => [id, await words(id)] as const)));

const lost = async (language: Language) => {
  const say = await wordsFor(language, 'lost');
  return { title: say('lost-offline-title'), lead: say('lost-offline-lead'), again: say('lost-offline-again') };
};

const news = async (language: Language) => {
  const say = await wordsFor(language);
  return {
    kept: say('copy-ready'),
    ready: say('release-ready'),
    switch: say('release-switch'),
    safety: say('release-safety'),
    understood: say('release-understood'),
  };
};

export const GET: APIRoute = async () =>
  Response.json({ safety: SAFETY_RELEASES, lost: await inEach(lost), news: await inEach(news) });

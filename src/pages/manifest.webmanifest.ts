// What a device is told that installs the site: its name, its pictures, where it begins.
import type { APIRoute } from 'astro';
import { FALLBACK, LANGUAGES } from '../components/words/index.ts';
import { asset, href } from '../layouts/href.ts';
import { wordsFor } from '../layouts/words.ts';

/** The colour of the pages, from src/styles/tokens.css. */
const PAPER = '#faf6ec';

const picture = (name: string, pixels: number, purpose: 'any' | 'maskable') => ({
  src: asset(`icons/${name}.png`),
  sizes: `${pixels}x${pixels}`,
  type: 'image/png',
  purpose,
});

export const GET: APIRoute = async () => {
  const say = await wordsFor(FALLBACK, 'entry');
  return Response.json({
    id: asset(''),
    name: say('site-name'),
    short_name: say('site-name'),
    description: say('entry-lead'),
    lang: FALLBACK,
    // Where there is a choice of languages, the entry leads on to the reader's.
    start_url: LANGUAGES.length > 1 ? asset('') : href(''),
    scope: asset(''),
    display: 'standalone',
    background_color: PAPER,
    theme_color: PAPER,
    icons: [picture('192', 192, 'any'), picture('512', 512, 'any'), picture('whole-512', 512, 'maskable')],
  });
};

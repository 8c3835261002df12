// What the search page asks, made once for each language.
import type { APIRoute } from 'astro';
import { pack } from '../../components/search/index.ts';
import { languageOf } from '../../layouts/href.ts';
import { onePage } from '../../layouts/paths.ts';
import { sameWords, searchedFor } from '../../layouts/searched.ts';

export const getStaticPaths = onePage;

export const GET: APIRoute = async ({ url }) =>
  new Response(pack(await searchedFor(languageOf(url)), await sameWords()));

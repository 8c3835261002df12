// What changed, as a feed (Atom): only where the site knows its own address, which every entry has to say.
import type { APIRoute } from 'astro';
import { languageOf } from '../../components/words/index.ts';
import { changesFor } from '../../layouts/entries.ts';
import { href, nameOf } from '../../layouts/href.ts';
import { onePage } from '../../layouts/paths.ts';
import { wordsFor } from '../../layouts/words.ts';

export const getStaticPaths = () => (import.meta.env.SITE === undefined ? [] : onePage());

const asXml = (text: string): string => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);

export const GET: APIRoute = async ({ url, site }) => {
  const language = languageOf(url);
  const say = await wordsFor(language, 'home');
  const changes = await changesFor(language);
  const at = (path: string): string => asXml(new URL(path, site).href);
  const time = (date: string): string => `${date}T00:00:00Z`;
  const here = at(url.pathname);
  const entries = changes.map(
    ({ id, data }) => `<entry><id>${here}#${nameOf(id)}</id><title>${asXml(data.title)}</title>
<link href="${at(href(data.leads, language))}"/><updated>${time(data.date)}</updated><summary>${asXml(data.says)}</summary></entry>`,
  );
  const feed = `<?xml version="1.0" encoding="UTF-8"?>
<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="${language}"><id>${here}</id><title>${asXml(say('site-name'))}</title>
<subtitle>${asXml(say('home-lead'))}</subtitle><author><name>${asXml(say('site-name'))}</name></author>
<link rel="self" href="${here}"/><link href="${at(href('', language))}"/>
<updated>${time(changes[0]?.data.date ?? '')}</updated>
${entries.join('\n')}
</feed>
`;
  return new Response(feed, { headers: { 'content-type': 'application/atom+xml; charset=utf-8' } });
};

// What passing on needs beyond a link and plain text; loaded when it is wanted.
import { shortened } from '../../wizards/short-links/index.ts';
import { BASE } from '../words/index.ts';

export { markdown } from './markdown.ts';

/** The short link to where one is, told by its address from "?"; undefined for a page, or a state, that has none. */
export function shortLink(search: string): string | undefined {
  const [language = '', ...path] = location.pathname.slice(BASE.length).split('/');
  const short = shortened({ page: path.slice(0, 2).join('/'), search });
  return short === undefined ? undefined : `${location.origin}${BASE}${language}/a/?${short}${location.hash}`;
}

// What this room lets out.
export { type Page, pack, type Searched, Searcher } from './searcher.ts';
export type { Same } from './terms.ts';
export { fitting } from './within.ts';

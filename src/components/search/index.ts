// What this room lets out.
export { type Kind, type Page, pack, type Searched, Searcher } from './searcher.ts';

// What this room lets out.
export { default as Drawing } from './Drawing.astro';
export type { Say } from './say.ts';

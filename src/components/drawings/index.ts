// What this room lets out.
export { captionKeys } from './captions.ts';
export { default as Drawing } from './Drawing.astro';
export type { Say } from './say.ts';

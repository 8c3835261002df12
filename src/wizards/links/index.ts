// What this room lets out.
export type { Made } from './made.ts';
export { HANDED_ON, MADE, madeIn, madeText, readMade, sinceThen, withMade } from './made.ts';
export { isMark } from './marks.ts';

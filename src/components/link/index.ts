// What this room lets out.
export { MadeThen } from './MadeThen.tsx';
export { markdown } from './markdown.ts';
export type { Answer, Parts } from './plain-text.ts';
export { guarded, partsOf, plainOf, plainText } from './plain-text.ts';
export { Share } from './Share.tsx';

// What this room lets out.
export { MadeThen } from './MadeThen.tsx';
export { plainText } from './plain-text.ts';
export { Share } from './Share.tsx';

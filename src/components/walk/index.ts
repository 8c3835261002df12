// What this room lets out.
export { default } from './Walk.tsx';
export type { CheckWords, DangerWords, FetchedFix, FirstWords, WalkWords } from './words.ts';

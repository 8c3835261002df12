// What this room lets out.
export { MadeThen } from './MadeThen.tsx';
export { Share } from './Share.tsx';

// What this room lets out.
export type { TakeInProps } from './given.ts';
export { TakeIn } from './TakeIn.tsx';

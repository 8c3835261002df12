// What this room lets out.
export type { TakeInProps } from './TakeIn.tsx';
export { TakeIn } from './TakeIn.tsx';

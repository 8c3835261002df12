// What this room lets out.
export type { State, Unfolded } from './short-link.ts';
export { shortened, unfolded } from './short-link.ts';

// What this room lets out. Loaded only once somebody writes: nothing that a walk needs from the start may import it.
export type { HeardOf, Said } from './listener.ts';
export { Listener } from './listener.ts';

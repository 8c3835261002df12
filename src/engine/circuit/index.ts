// What this room lets out.
export { impedance } from './along.ts';
export type { Prepared } from './matrix.ts';
export { prepare } from './matrix.ts';
export type { Branch, Network, NetworkProblem, Pair } from './parts.ts';

// A resistive network: ordered and factored once, then the volts and currents of any load. Kirchhoff's laws and Norton's theorem: textbook.
export { impedance } from './along.ts';
export type { Prepared } from './matrix.ts';
export { prepare } from './matrix.ts';
export type { Branch, Network, NetworkProblem, Pair } from './parts.ts';

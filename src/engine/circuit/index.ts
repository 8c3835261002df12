// A resistive network: ordered and factored once, then what one ampere costs anywhere. Kirchhoff's laws: textbook.
export { impedance } from './impedance.ts';
export type { Prepared } from './matrix.ts';
export { prepare } from './matrix.ts';
export type { Branch, Network, NetworkProblem, Pair } from './parts.ts';

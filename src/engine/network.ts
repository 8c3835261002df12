// Resistive networks by nodal analysis: ordered and factored once, then solved for any load. Loads of constant current or constant power,
// supplies with an inner resistance and a current limit. Kirchhoff's laws and Norton's theorem: textbook.
export type { Along, Lowest, SectionEnds } from './network-along.ts';
export { impedance, impedanceAlong, lowestAlong, lowestOnWay } from './network-along.ts';
export type { Prepared } from './network-matrix.ts';
export { prepare } from './network-matrix.ts';
export type {
  Branch,
  CurrentLoad,
  Load,
  Network,
  NetworkProblem,
  NetworkReason,
  Pair,
  PowerLoad,
  Source,
} from './network-parts.ts';
export { LARGEST, NETWORK_REASONS } from './network-parts.ts';
export type { Operating } from './network-solve.ts';
export { solve } from './network-solve.ts';

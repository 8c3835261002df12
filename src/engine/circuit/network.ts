// Resistive networks by nodal analysis: ordered and factored once, then solved for any load. Loads of constant current or constant power,
// supplies with an inner resistance and a current limit. Kirchhoff's laws and Norton's theorem: textbook.
export type { Along, Lowest, SectionEnds } from './along.ts';
export { impedance, impedanceAlong, lowestAlong, lowestOnWay } from './along.ts';
export type { Prepared } from './matrix.ts';
export { prepare } from './matrix.ts';
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
} from './parts.ts';
export { LARGEST, NETWORK_REASONS } from './parts.ts';
export type { Operating } from './solve.ts';
export { solve } from './solve.ts';

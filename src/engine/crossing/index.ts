// What this room lets out.
export type { CrossingResult, InPhaseCrossing } from './crossing.ts';
export { crossingInPhase } from './crossing.ts';
export { SINE_FACTOR } from './meters.ts';
export type { CrossingMoment, CrossingMoments, PlacedSide } from './moments.ts';
export { CROSSING_MOMENTS, crossingOf } from './moments.ts';
export type { Reckoned } from './range.ts';
export { crossingReversed } from './reversed.ts';
export type { CrossingPush, CrossingSide } from './sides.ts';
export { crossingSkew } from './skew.ts';
export type { CrossingAdviceId, WithheldAdvice } from './verdict.ts';
export { CROSSING_ADVICE } from './verdict.ts';

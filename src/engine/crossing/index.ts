// A train over a gap: what flows between the two sides, for how long, what meters and lamps show of it, and what to do about it.
export type { InPhaseCrossing } from './crossing.ts';
export { crossingInPhase } from './crossing.ts';
export type { GapExpected } from './expected.ts';
export { gapExpected } from './expected.ts';
export { twoLamps } from './lamps.ts';
export type { GapReading, MeterKind } from './meters.ts';
export { METER_KINDS, railsRead, SINE_FACTOR } from './meters.ts';
export type { CrossingMoment, CrossingMoments, PlacedSide } from './moments.ts';
export { CROSSING_MOMENTS, crossingOf } from './moments.ts';
export type { Reckoned } from './range.ts';
export { crossingReversed } from './reversed.ts';
export type { SectionEnd, SectionFound, TurningDevice } from './section.ts';
export { throughSection } from './section.ts';
export type { CrossingPush, CrossingSide } from './sides.ts';
export { crossingSkew } from './skew.ts';
export type { CrossingAdviceId, WithheldAdvice } from './verdict.ts';
export { CROSSING_ADVICE, largestPush } from './verdict.ts';

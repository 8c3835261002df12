// A train over a gap: what flows between the two sides, for how long, what meters and lamps show of it, and what to do about it.
export type { CrossingResult, InPhaseCrossing } from './crossing.ts';
export { crossingInPhase } from './crossing.ts';
export type { LampFinding, LampLook, TwoLamps } from './lamps.ts';
export { oneLamp, readTwoLamps, twoLamps } from './lamps.ts';
export type { CommonReference, CrossingLoop, CrossingPhase, LoopInput, RailsBridged } from './loops.ts';
export { crossingLoop } from './loops.ts';
export type { GapMeasurement, GapReading, GapReadings, GapTie, MeterKind, PhaseComparison } from './meters.ts';
export { comparePhase, gapReadings, SINE_FACTOR } from './meters.ts';
export type { CrossingMoment, CrossingMoments, PlacedSide } from './moments.ts';
export { CROSSING_MOMENTS, crossingOf } from './moments.ts';
export type { Reckoned } from './range.ts';
export { crossingReversed } from './reversed.ts';
export type { CrossingPush, CrossingSide } from './sides.ts';
export { crossingSkew } from './skew.ts';
export type { BridgingTime, GapMovement, Rake, RakeTime, WheelBridge } from './time.ts';
export { bridgingTime, GAP_WIDTH, gapMovement, rakeTime, wheelBridge } from './time.ts';
export type { CrossingAdviceId, WithheldAdvice } from './verdict.ts';
export { CROSSING_ADVICE, largestPush } from './verdict.ts';

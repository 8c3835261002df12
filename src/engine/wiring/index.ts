// Wires and rails of a district: what reaches a train, what a short circuit draws, whether it trips, and what mends it.

export type { Opening } from './breakers.ts';
export { gradeBreaker, openedBy } from './breakers.ts';
export type { Rewired, WiringChange } from './changes.ts';
export { GAUGE_SIZES, gaugeAtLeast } from './gauges.ts';
export { railGrowth } from './growth.ts';
export { DROP_LIMIT, dropFinding, FEEDER_WIRE, trainLevels } from './limits.ts';
export { loadedVolts, METER_STEP, shortFromLoadTest } from './load-test.ts';
export type { FeedingPlan, FeedingProblem } from './plan.ts';
export { evenFeeders, sourceOhms } from './plan.ts';
export type { PlanCircuit, TrainAlong } from './plan-circuit.ts';
export { solvePlan, voltsAt } from './plan-circuit.ts';
export type { WiringCandidate } from './remedies.ts';
export { leastWiring, presentWiring, suggestWiring } from './remedies.ts';
export type { ShortAlong } from './short-circuit.ts';
export { shortAmpsAt } from './short-circuit.ts';
export type { ShortTest } from './short-test.ts';
export { shortTest, TEST_RESISTOR } from './short-test.ts';
export type { TripLevel } from './trip-level.ts';
export { tripLevel } from './trip-level.ts';
export { faultHeatAlong, loopLimit, SHORT_MARGIN, shortOver, sureTrip, tripFinding, worstFaultHeat } from './trips.ts';
export { weakStretches } from './weak-stretches.ts';
export type { Conductor, RailKind } from './wire.ts';
export {
  heatingLimit,
  METRIC_SIZES,
  ohmsPerMetre,
  pairLikeTrack,
  pairLoss,
  RAILS,
  railOhms,
  SCALE_RAILS,
} from './wire.ts';

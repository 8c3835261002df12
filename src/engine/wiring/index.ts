// What this room lets out.
export type { FeedingPlan, FeedingProblem, TrainAlong } from './feeding.ts';
export { evenFeeders, shortAlong, shortAmpsAt, sourceOhms, trainAlong, voltsAt } from './feeding.ts';
export type { DropFinding } from './limits.ts';
export { dropFinding, FEEDER_WIRE, STAGE_OHMS, trainLevels } from './limits.ts';
export type { WiringCandidate, WiringChange } from './remedies.ts';
export { DROP_LIMIT, leastWiring, presentWiring, suggestWiring } from './remedies.ts';
export type { LoadResistor, ShortAlong, TripLevel, WeakStretch } from './short-circuit.ts';
export {
  chooseResistor,
  faultHeatAlong,
  leastLoadedVolts,
  loadedVolts,
  loopLimit,
  shortFromLoadTest,
  sureTrip,
  tripFinding,
  tripLevel,
  weakStretches,
} from './short-circuit.ts';
export type { Conductor, RailKind } from './wire.ts';
export { GAUGE_SIZES, gaugeOf, METRIC_SIZES, ohmsPerMetre, railOhms } from './wire.ts';

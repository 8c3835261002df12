// What this room lets out.
export type { FeedingPlan, FeedingProblem, TrainAlong } from './feeding.ts';
export { evenFeeders, shortAlong, sourceOhms, trainAlong } from './feeding.ts';
export type { WiringCandidate, WiringChange } from './remedies.ts';
export { DROP_LIMIT, DROP_WANTED, leastWiring, presentWiring, suggestWiring } from './remedies.ts';
export type { LoadResistor, ShortAlong, TripLevel, WeakStretch } from './short-circuit.ts';
export {
  chooseResistor,
  leastLoadedVolts,
  loadedVolts,
  loopLimit,
  SHORT_MARGIN,
  shortFromLoadTest,
  tripFinding,
  tripLevel,
  weakStretches,
  worstFaultHeat,
} from './short-circuit.ts';
export type { Conductor, RailKind } from './wire.ts';
export { GAUGE_SIZES, gaugeOf, METRIC_SIZES, ohmsPerMetre, railOhms } from './wire.ts';

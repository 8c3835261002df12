// What trains, coaches and accessories of a district draw, how likely they overload it, what supplies give, and what would mend a shortage.
export type { Capacity, RailSetting, Stage, Supply } from './capacity.ts';
export {
  AC_FACTOR,
  COMMON_RATINGS,
  capacity,
  limitFor,
  MODEL_SUPPLY_LIMIT,
  RESERVE,
  trackCurrent,
  withinModelLimit,
  worthOfOneAmpere,
} from './capacity.ts';
export type { Bar, Summary } from './demand.ts';
export { gather, histogram, isAbove, summarise } from './demand.ts';
export type { Evenness } from './districts.ts';
export { evenness, evennessOf } from './districts.ts';
export type { Scale, Sureness } from './draws.ts';
export { BOOSTER_OWN_USE, DRAWS, OWN_USE, OWN_USE_DOUBT } from './draws.ts';
export type { Fleet } from './fleet.ts';
export {
  coldFilaments,
  countedTrains,
  demandWorking,
  districtLoad,
  drawsSure,
  jointLoad,
  largestMoving,
  measuredTrains,
  moreTrains,
  muted,
  plainSum,
  trackAsMeasured,
  trainCount,
  withAllSound,
} from './fleet.ts';
export { bothBusy, chanceEither } from './joint.ts';
export type { InputLabel, LabelFinding, Plug, SupplyLabel } from './labels.ts';
export { checkLabels } from './labels.ts';
export type { DistrictAdvice, DistrictFinder, DistrictFinding, DividedLayout, OwnDistrict } from './own-districts.ts';
export {
  allHaveEnough,
  bearsShare,
  districtFinder,
  districtFindings,
  districtsAlike,
  dividedLayout,
  fewerDistricts,
} from './own-districts.ts';
export type { NeighbourVolts, OutOfReach, RailFinding, RailVoltage } from './rail-voltage.ts';
export {
  dcVoltsFor,
  highestRails,
  isAboveUsual,
  isCommonVolts,
  judgedVolts,
  judgeRails,
  neighbourVolts,
  ROUNDING_VOLTS,
  railFromConverter,
  railsOutOfReach,
  railsTooHigh,
  railsTooLow,
  railVoltage,
  SCALE_RANGE,
  sags,
  stageOhms,
  TRACK_LIMITS,
} from './rail-voltage.ts';
export type { OnceQuiet, Remedy, RemedyInput } from './remedies.ts';
export {
  allParked,
  BREAKERS_COST,
  chosenOf,
  divisionTakes,
  onceQuiet,
  remedies,
  SECOND_DISTRICT_COST,
  SUPPLY_COST,
  supplyFor,
  tightBeside,
} from './remedies.ts';
export type { DistrictLoad, Judgement, OverloadSeen, RuleResult, Verdict } from './rules.ts';
export {
  atLeast,
  GOALS,
  judge,
  judgeInGroups,
  overloadSeen,
  overloadsIn,
  worstVerdict,
} from './rules.ts';
export { STEP_LIMIT, STEP_TOO_LARGE, stepFinding, stepSize } from './steps.ts';
export type { Arrangement, LoadedStage, NamedSupply, Placed } from './supplies.ts';
export { arrange } from './supplies.ts';
export type { Unknown, Untold } from './sureness.ts';
export { sureness } from './sureness.ts';
export type { SupplyTrip } from './trip-reach.ts';
export { recommendedRating, supplyTrip } from './trip-reach.ts';

// The door of the division: a sheet is divided into districts, in its own marks.
export type { Reason, SheetDivided, Way } from './divided.ts';
export { apartIn, dividedSheet, divideSheet, missingIn } from './divided.ts';
export { advisedOf, bestOf } from './evenness.ts';
export { divisionProblem, isGappedAnyway } from './problem.ts';

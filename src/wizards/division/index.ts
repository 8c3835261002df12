// The door of the division: a sheet is divided into districts, in its own marks.
export type { Reason, SheetDivided, Way } from './divided.ts';
export { apartIn, divideSheet, missingIn } from './divided.ts';

// What this wizard can end in. Each has a fix page of the same id in src/content/<language>/fixes.
import { OUT_OF_SCOPE } from '../planning/index.ts';

export const WHICH_SUPPLY_OUTCOMES = [
  'supplies-either-way',
  'larger-to-command-station',
  'larger-to-booster',
  'higher-rails-to-command-station',
  'set-both-outputs-equal',
  'two-supplies-alike',
  'measure-rail-volts-first',
  'read-both-labels',
  'wrong-supply',
  'rail-voltage-too-high',
  'regulated-supply',
  'volts-too-low',
  'supply-cannot-trip',
  'lower-trip-level',
  ...OUT_OF_SCOPE,
] as const;
export type WhichSupplyOutcome = (typeof WHICH_SUPPLY_OUTCOMES)[number];

/** Advice about a train across the gap that is no outcome and has a fix page all the same. */
export const BESIDE_THE_OUTCOME = ['fewer-trains-there', 'do-not-stop-across-the-gap'] as const;

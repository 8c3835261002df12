// What this wizard can end in. Each has a fix page of the same id in src/content/<language>/fixes.
import { OUT_OF_SCOPE } from '../planning/index.ts';

export const WIRE_IT_OUTCOMES = [
  'wiring-not-known',
  'rail-voltage-too-high',
  'volts-too-low',
  'supply-cannot-trip',
  'wiring-good',
  'more-feeders',
  'thicker-feeders',
  'thicker-bus',
  'feed-bus-from-middle',
  'pair-to-the-middle',
  'bus-as-a-ring',
  'lower-trip-level',
  'booster-near-load',
  ...OUT_OF_SCOPE,
] as const;
export type WireItOutcome = (typeof WIRE_IT_OUTCOMES)[number];

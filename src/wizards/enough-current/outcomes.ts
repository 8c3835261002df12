// What this wizard can end in. Each has a fix page of the same id in src/content/<language>/fixes.
import { OUT_OF_SCOPE } from '../planning/index.ts';

export const ENOUGH_CURRENT_OUTCOMES = [
  'wrong-supply',
  'volts-too-low',
  'rail-voltage-too-high',
  'regulated-supply',
  'lower-trip-level',
  'read-both-labels',
  'supply-cannot-trip',
  'power-is-enough',
  'breakers-and-sub-districts',
  'put-on-in-two-groups',
  'mute-and-park',
  'calm-the-consumption',
  'larger-supply',
  'leds-and-larger-supply',
  'booster-with-freed-supply',
  'booster-with-own-supply',
  'larger-unit',
  'more-districts',
  'lopsided-split',
  'fewer-moving',
  ...OUT_OF_SCOPE,
] as const;
export type EnoughCurrentOutcome = (typeof ENOUGH_CURRENT_OUTCOMES)[number];

// What this wizard can end in. Each has a fix page of the same id in src/content/<language>/fixes.
import { OUT_OF_SCOPE } from '../planning/index.ts';

export const ENOUGH_CURRENT_OUTCOMES = [
  'power-is-enough',
  'calm-the-consumption',
  'fewer-moving',
  'put-on-in-two-groups',
  'larger-supply',
  'leds-and-larger-supply',
  'booster-with-freed-supply',
  'booster-with-own-supply',
  'more-districts',
  'breakers-and-sub-districts',
  'read-both-labels',
  'wrong-supply',
  'rail-voltage-too-high',
  ...OUT_OF_SCOPE,
] as const;
export type EnoughCurrentOutcome = (typeof ENOUGH_CURRENT_OUTCOMES)[number];

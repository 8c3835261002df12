// What this wizard can end in. Each has a fix page of the same id in src/content/<language>/fixes.
import { OUT_OF_SCOPE } from '../planning/index.ts';

/** What keeps the supplies from being plugged, or a short from being noticed: before any gap. */
export const STOPS = [
  'wrong-supply',
  'volts-too-low',
  'rail-voltage-too-high',
  'regulated-supply',
  'lower-trip-level',
  'supply-cannot-trip',
] as const;

/** One unit bears everything, and one short shall not stop everyone. */
export const BREAKERS = 'breakers-and-sub-districts';

export const SHARE_OUT_OUTCOMES = [
  'divide-the-track',
  BREAKERS,
  'power-is-enough',
  'more-districts',
  'fewer-moving',
  ...STOPS,
  ...OUT_OF_SCOPE,
] as const;
export type ShareOutOutcome = (typeof SHARE_OUT_OUTCOMES)[number];

/** Its steps come first where a label is not read. */
export const LABELS_FIRST = 'read-both-labels';

/** A loop needs what turns its rails over, however the layout is divided. */
export const LOOP_DEVICE = 'loop-no-device';

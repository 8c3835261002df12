// The page that tells what to do first.
import type { Remedy } from './power.ts';

/** Each has a fix page of that name; nothing to fix where the sheet is not told to its end. */
export const FIX_OF_REMEDY = {
  'read-labels': 'read-both-labels',
  'no-trains': undefined,
  'too-many-trains': undefined,
  'own-supplies': 'booster-with-own-supply',
  'not-permitted': 'wrong-supply',
  'rails-too-high': 'rail-voltage-too-high',
  'rails-too-low': 'volts-too-low',
  'lower-trip': 'lower-trip-level',
  'set-equal': 'set-both-outputs-equal',
  'cannot-trip': 'supply-cannot-trip',
  'share-out': 'lopsided-split',
  'larger-supply': 'larger-supply',
  divide: 'more-districts',
  another: 'more-districts',
  'fewer-moving': 'fewer-moving',
  nothing: undefined,
} as const satisfies Readonly<Record<Remedy, string | undefined>>;

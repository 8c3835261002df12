// How much current a short circuit draws at every place of a track, and where least.
import type { TrackPiece } from './along-track.ts';
import { extreme, pointsOf, valueAt } from './along-track.ts';
import type { FeedingPlan } from './plan.ts';

/** What a short circuit meets along a track. */
export interface ShortAlong {
  readonly kind: 'along';
  /** No-load volts, and the most the supply or stage passes, amperes; Infinity where nothing but the loop limits. */
  readonly volts: number;
  readonly limit: number;
  /** Resistance of the short itself, ohms. */
  readonly faultOhms: number;
  /** Ohms of the whole loop, piece by piece; each opens downwards. */
  readonly pieces: readonly TrackPiece[];
  /** Along the track in order, metres and amperes. */
  readonly points: readonly { readonly at: number; readonly amps: number }[];
  /** Where a short draws least; `ohms` is the loop there without the short's own. */
  readonly weakest: { readonly at: number; readonly amps: number; readonly ohms: number };
}

/** What the short draws at this spot, metres along the track, amperes. */
export const shortAmpsAt = (short: ShortAlong, at: number): number => drawn(short, valueAt(short.pieces, at));

const drawn = ({ volts, limit, faultOhms }: Pick<ShortAlong, 'volts' | 'limit' | 'faultOhms'>, ohms: number): number =>
  Math.min(limit, volts / (ohms + faultOhms));

/**
 * A short circuit of `faultOhms` (>= 0) along a track whose loop has these ohms piece by piece (at least one piece), fed by `source`.
 * `step`: metres between points, > 0. Source: own-derivation.
 */
export function shortAlong(
  pieces: readonly TrackPiece[],
  { volts, limit = Number.POSITIVE_INFINITY }: FeedingPlan['source'],
  faultOhms: number,
  step?: number,
): ShortAlong {
  const fault = { volts, limit, faultOhms };
  const farthest = extreme(pieces, 1);
  return {
    kind: 'along',
    ...fault,
    pieces,
    points: pointsOf(pieces, step).map(({ at, value }) => ({ at, amps: drawn(fault, value) })),
    weakest: { at: farthest.at, amps: drawn(fault, farthest.value), ohms: farthest.value },
  };
}

// The fuse between a supply and its unit: it guards the wire where the unit's own protection fails, and must never be the first to act.
import type { SupplyTrip } from '../power/index.ts';
import { MODEL_SUPPLY_LIMIT } from '../power/index.ts';
import { heatingLimit, METRIC_SIZES } from '../wiring/index.ts';

/** Currents that small fuses are marked with, amperes (the common steps of IEC 60127). Source: from-memory. */
export const FUSE_RATINGS: readonly number[] = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10];

export type Fuse =
  /** Marked with these amperes, slow; and the thinnest wire on sale that bears it for as long as it likes, square metres. */
  | { readonly kind: 'fuse'; readonly amps: number; readonly area: number }
  /** What the unit takes as it trips is more than a supply of a model railway may give at all. */
  | { readonly kind: 'none'; readonly because: 'beyond-nem-609' };

/**
 * The smallest slow fuse that still carries what the unit takes from the supply at its trip current, so that the unit opens first.
 * Source: common-practice, nem-609.
 */
export function fuseFor({ ratingAbove }: Pick<SupplyTrip, 'ratingAbove'>): Fuse {
  const amps = FUSE_RATINGS.find((one) => one >= ratingAbove - SAME && one <= MODEL_SUPPLY_LIMIT.amps);
  const area = METRIC_SIZES.find((size) => amps !== undefined && heatingLimit(size) >= amps);
  return amps === undefined || area === undefined
    ? { kind: 'none', because: 'beyond-nem-609' }
    : { kind: 'fuse', amps, area };
}

/** Currents nearer than this are one, amperes. Source: own-choice. */
const SAME = 1e-9;

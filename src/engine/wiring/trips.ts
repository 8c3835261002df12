// Will the protection trip? What a short circuit has to draw for it, and what a fault that does not trip turns into heat.
import type { Working } from '../workings.ts';
import { working } from '../workings.ts';
import { extreme } from './along-track.ts';
import type { ShortAlong } from './short-circuit.ts';

/** A short circuit has to draw this many times the trip current, so that a dirty contact still trips. Source: common-practice. */
export const SHORT_MARGIN = 1.5;
/** What feeds the fault: no-load volts and everything in its loop, ohms; `limit` where a supply or stage holds the current back, amperes. */
export interface FaultLoop {
  readonly volts: number;
  readonly ohms: number;
  readonly limit?: number;
}

/** What a clean short draws through this loop, amperes; no more than what holds it back. Volts >= 0, ohms > 0. Formula: own-derivation. */
export const shortOver = ({ volts, ohms, limit = Number.POSITIVE_INFINITY }: FaultLoop): number =>
  Math.min(limit, volts / ohms);

export type TripFinding = 'trips' | 'close' | 'does-not-trip';

/** A short has to draw this, amperes, to trip a protection of `trip` amperes surely. Source: common-practice. */
export const sureTrip = (trip: number): number => SHORT_MARGIN * trip;

/** Whether this current trips a protection of `trip` amperes (> 0): surely, only just, or not. At the trip current itself it does not. */
export function tripFinding(amps: number, trip: number, margin = SHORT_MARGIN): TripFinding {
  if (amps >= margin * trip) return 'trips';
  return amps > trip ? 'close' : 'does-not-trip';
}

/** Most ohms in the loop at which a short still draws `margin` times the trip current. Volts and trip > 0. Formula: own-derivation. */
export function loopLimit(volts: number, trip: number, margin = SHORT_MARGIN): Working {
  const inputs = [
    ['volts', volts, 'V'],
    ['trip', trip, 'A'],
    ['margin', margin, 'times'],
  ] as const;
  return working('loop-limit', volts / (margin * trip), 'ohm', inputs, ['own-derivation', 'common-practice']);
}

export interface FaultHeat {
  /** Most heat a fault can make without tripping, watts. */
  readonly watts: number;
  /** The current at which it does, amperes. */
  readonly atAmps: number;
  /** Heat of a fault that draws just the trip current, watts; 0 where the loop cannot carry that much. */
  readonly justBelowTrip: number;
  readonly working: Working;
}

/**
 * Worst heat at a fault that never trips: I (V - I R) has its top at V/2R, so the worst current is the trip current or V/2R,
 * whichever is less; a supply that limits below both is worst at its limit. Volts > 0, ohms >= 0, trip > 0. Source:
 * own-derivation.
 */
export function worstFaultHeat({ volts, ohms, limit = Number.POSITIVE_INFINITY }: FaultLoop, trip: number): FaultHeat {
  const top = ohms > 0 ? volts / (2 * ohms) : Number.POSITIVE_INFINITY;
  const atAmps = Math.min(trip, top, limit);
  const heat = (amps: number): number => amps * (volts - amps * ohms);
  const watts = heat(atAmps);
  const inputs = [
    ['volts', volts, 'V'],
    ['loop-ohms', ohms, 'ohm'],
    ['trip', trip, 'A'],
    ['worst-amps', atAmps, 'A'],
  ] as const;
  return {
    watts,
    atAmps,
    justBelowTrip: trip <= limit ? Math.max(0, heat(trip)) : 0,
    working: working('fault-heat', watts, 'W', inputs, ['own-derivation']),
  };
}

export interface FaultHeatAlong extends FaultHeat {
  /** Where along the track, metres. */
  readonly at: number;
}

/**
 * Most heat of a poor contact anywhere along a track that trips nothing. At every current that trips nothing the fault has I (V - I R),
 * and what the loop takes of it, I² R, is least where R is least. So it is hottest where a clean short draws most, which trips most
 * surely. Trip > 0. Source: own-derivation.
 */
export function faultHeatAlong({ volts, limit, pieces }: ShortAlong, trip: number): FaultHeatAlong {
  const nearest = extreme(pieces, -1);
  return { ...worstFaultHeat({ volts, ohms: nearest.value, limit }, trip), at: nearest.at };
}

// The one regime by which people prove that a short trips a unit: one resistor for everybody, how long it may stay, what must be left
// of the volts before any coin is put on the rails, and when to leave the test out.
import { leastLoadedVolts, RESISTOR_MARGIN } from './load-test.ts';

/** The one resistor to buy, screwed on a metal plate: ohms, and watts it bears there. Source: common-practice. */
export const TEST_RESISTOR = { ohms: 15, rating: 50 } as const;
/** Heat that one reading may make, joules: 20 s at 15 V. On a plate of 100 g it warms both by some 3 K. Source: own-derivation. */
export const TEST_HEAT = 300;
/** A reading lasts no longer than this, and is counted in steps of five, seconds. Source: common-practice. */
export const TEST_SECONDS = { most: 20, step: 5 } as const;
/** A unit that trips below this gets no load test: the resistor alone comes too near, amperes. Source: common-practice. */
export const LEAST_TRIP_TESTED = 1.5;
/** The resistor draws no more than this share of the trip current, so that it is never taken for a short. Source: common-practice. */
export const MOST_OF_TRIP = 0.8;

export type ShortTest =
  | {
      readonly kind: 'test';
      readonly ohms: number;
      /** Watts to buy. */
      readonly rating: number;
      /** What the resistor draws and the heat it makes with all the volts on it, amperes and watts. */
      readonly amps: number;
      readonly watts: number;
      /** Longest reading, seconds: 5, 10, 15 or 20. */
      readonly seconds: number;
      /** Least volts across the resistor, and most volts lost, for the coin to be allowed. */
      readonly leastVolts: number;
      readonly mayLose: number;
      /** The same as a share of the volts before, in which the meter's own error cancels. */
      readonly mayLoseShare: number;
    }
  | { readonly kind: 'none'; readonly because: 'small-unit' | 'too-many-volts' | 'not-a-number' };

/**
 * The load test for rail volts and trip current (amperes). The pass mark is a short of one and a half times the trip current:
 * I_short = (V1 / R) x V0 / (V0 - V1). None for a unit that trips below 1.5 A or close to what the resistor draws, and none
 * where the resistor would bear less than one and a half times its heat V²/R. Source: loop-test, common-practice, own-derivation.
 */
export function shortTest({ volts, trip }: { readonly volts: number; readonly trip: number }): ShortTest {
  if (!(volts > 0 && trip > 0 && Number.isFinite(volts) && Number.isFinite(trip)))
    return { kind: 'none', because: 'not-a-number' };
  const { ohms, rating } = TEST_RESISTOR;
  const amps = volts / ohms;
  const watts = volts * amps;
  if (watts * RESISTOR_MARGIN > rating) return { kind: 'none', because: 'too-many-volts' };
  if (trip < LEAST_TRIP_TESTED || amps > MOST_OF_TRIP * trip) return { kind: 'none', because: 'small-unit' };
  const leastVolts = leastLoadedVolts(volts, trip, ohms);
  const mayLose = volts - leastVolts;
  return {
    kind: 'test',
    ...{ ohms, rating, amps, watts, leastVolts, mayLose },
    mayLoseShare: mayLose / volts,
    seconds: secondsFor(watts),
  };
}

/** Seconds that a reading may last at this heat (watts > 0), in whole steps, never less than one. */
function secondsFor(watts: number): number {
  const { most, step } = TEST_SECONDS;
  return Math.max(step, Math.min(most, Math.floor(TEST_HEAT / watts / step) * step));
}

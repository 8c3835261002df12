import fc from 'fast-check';

const STEPS = 1_000_000;

/**
 * Numbers spread evenly from `min` to `max`, both included and tried more often. `fc.double` goes through all numbers that a
 * machine can write: between 0 and 1 nearly all that it gives are as good as 0, and what happens in between is hardly tried.
 */
export const spread = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((step) => min + ((max - min) * step) / STEPS);

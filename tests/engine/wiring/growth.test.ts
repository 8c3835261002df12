// How rail grows with warmth: data sheets of nickel silver give 16 to 19 millionths for each degree.
import { expect, test } from 'vitest';
import { railGrowth } from '../../../src/engine/wiring/growth.ts';

test('Ten metres of rail, ten degrees warmer, grow by more than a sawn gap of a millimetre is wide', () => {
  expect(railGrowth(10, 10)).toBeGreaterThanOrEqual(10 * 10 * 16e-6);
  expect(railGrowth(10, 10)).toBeLessThanOrEqual(10 * 10 * 19e-6);
  expect(railGrowth(10, 10)).toBeGreaterThan(0.001);
});

test('Rail that gets colder gets shorter by as much', () => {
  expect(railGrowth(4, -15)).toBeCloseTo(-railGrowth(4, 15), 12);
});

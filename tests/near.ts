// The one tolerance helper of the tests.
import { expect } from 'vitest';

/** Passes where `actual` lies within `tolerance` (same unit) of `expected`; NaN never does. */
export function near(actual: number, expected: number, tolerance: number, what = 'value'): void {
  const close = Math.abs(actual - expected) <= tolerance;
  expect(close, `${what}: ${actual} is not within ${tolerance} of ${expected}`).toBe(true);
}

/** The same for two lists of equal length. */
export function allNear(
  actual: ArrayLike<number>,
  expected: readonly number[],
  tolerance: number,
  what = 'value',
): void {
  expect(actual.length, `${what}: length`).toBe(expected.length);
  for (const [i, value] of expected.entries()) near(actual[i] ?? Number.NaN, value, tolerance, `${what} ${i}`);
}

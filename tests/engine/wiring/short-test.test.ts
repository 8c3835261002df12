// One regime for proving that a short trips: Joule's law and Ohm's law (textbook), the loop test of electricians (source
// loop-test), and what is judgement is said.
import { describe, expect, test } from 'vitest';
import { shortFromLoadTest } from '../../../src/engine/wiring/load-test.ts';
import { shortTest } from '../../../src/engine/wiring/short-test.ts';

function tested(volts: number, trip: number) {
  const found = shortTest({ volts, trip });
  if (found.kind !== 'test') throw new Error(`no test at ${volts} V and ${trip} A: ${found.because}`);
  return found;
}

/** Rail volts from Z to the 22 V that no track passes (S-9.1). */
const VOLTS = Array.from({ length: 131 }, (_, i) => 9 + i / 10);

describe('One resistor of 15 ohms and 50 W', () => {
  test.each([
    // I = U / R and P = U² / R: 15 V and 15 ohms make 1 A and 15 W, 18 V 1.2 A and 21.6 W, 22 V 1.47 A and 32.3 W.
    [15, 1, 15],
    [18, 1.2, 21.6],
    [22, 1.467, 32.27],
  ])('at %d V draws %d A and makes %d W', (volts, amps, watts) => {
    expect(tested(volts, 5).amps).toBeCloseTo(amps, 2);
    expect(tested(volts, 5).watts).toBeCloseTo(watts, 1);
  });

  test('bears one and a half times its heat at any rail volts up to 22 V, and no test is offered above that', () => {
    for (const volts of VOLTS) expect(tested(volts, 5).watts * 1.5).toBeLessThanOrEqual(50);
    expect(shortTest({ volts: 24, trip: 5 })).toEqual({ kind: 'none', because: 'too-many-volts' });
  });

  // Judgement: 300 J into a resistor of 30 g and a plate of 100 g of aluminium, 0.9 J/(g K), warm both by 2.6 K.
  test.each([
    [12, 20],
    [15, 20],
    [16, 15],
    [18, 10],
    [20, 10],
    [22, 5],
  ])('at %d V stays on for %d s at most', (volts, seconds) => {
    expect(tested(volts, 5).seconds).toBe(seconds);
    expect(tested(volts, 5).watts * seconds).toBeLessThanOrEqual(300);
  });
});

describe('The pass mark', () => {
  test('is the reading at which the loop test gives a short of one and a half times the trip current', () => {
    for (const trip of [2, 3, 5, 8])
      for (const volts of VOLTS) {
        const { leastVolts, ohms } = tested(volts, trip);
        const read = shortFromLoadTest({ open: volts, loaded: leastVolts, ohms });
        expect(read.kind === 'measured' ? read.amps : 0).toBeCloseTo(1.5 * trip, 6);
      }
  });

  // By hand, 15 V: 3 A wants 4.5 A, so at most 15 / 4.5 = 3.33 ohms in the way; behind them 15 ohms keep 15 x 15 / 18.33 = 12.27 V.
  test('at 15 V and 3 A allows 2.7 V to be lost, at 5 A 1.8 V, at 8 A 1.2 V', () => {
    expect([3, 5, 8].map((trip) => Math.round(tested(15, trip).mayLose * 10) / 10)).toEqual([2.7, 1.8, 1.2]);
  });

  test('is a share of the volts before, so that a meter which reads all of them too high changes nothing', () => {
    const { mayLose, mayLoseShare } = tested(15, 3);
    expect(mayLoseShare).toBeCloseTo(mayLose / 15, 12);
  });
});

describe('No load test, and so no coin', () => {
  // Common practice, no source: such a unit passes hardly more than the resistor draws.
  test('is asked of a unit that trips below 1.5 A', () => {
    for (const volts of [9, 12, 15, 22])
      expect(shortTest({ volts, trip: 1.4 })).toEqual({ kind: 'none', because: 'small-unit' });
  });

  test('is asked where the resistor would draw more than four fifths of the trip current', () => {
    expect(shortTest({ volts: 22, trip: 1.5 })).toEqual({ kind: 'none', because: 'small-unit' });
    for (const volts of VOLTS)
      for (const trip of [1.5, 2, 3, 5, 10]) {
        const found = shortTest({ volts, trip });
        if (found.kind === 'test') expect(found.amps).toBeLessThanOrEqual(0.8 * trip);
      }
  });

  test('is not asked where the resistor draws just four fifths of it', () => {
    // 18.75 V over 15 ohms are 1.25 A, four fifths of 1.5625 A.
    expect(tested(18.75, 1.5625).amps).toBe(1.25);
    expect(tested(18, 1.5).amps).toBe(1.2);
  });

  test('comes out of numbers that are none', () => {
    for (const wrong of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(shortTest({ volts: wrong, trip: 3 })).toEqual({ kind: 'none', because: 'not-a-number' });
  });
});

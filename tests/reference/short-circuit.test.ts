// Short circuits: arithmetic that is printed elsewhere, and figures worked out by hand for this site.
import { describe, expect, test } from 'vitest';
import { shortFromLoadTest } from '../../src/engine/wiring/load-test.ts';
import { tripLevel } from '../../src/engine/wiring/trip-level.ts';
import { loopLimit, worstFaultHeat } from '../../src/engine/wiring/trips.ts';
import { near } from '../near.ts';

describe('a loop tester’s manual: Zmax = U0 / Ia for breakers of a house at 230 V', () => {
  // The table printed with a maker of test instruments' loop tester: type B opens at 5, type C at 10 times its rating.
  test.each([
    ['B10', 50, 4.6],
    ['B16', 80, 2.87],
    ['B32', 160, 1.44],
    ['C16', 160, 1.44],
    ['C32', 320, 0.72],
  ])('%s, %d A: %d ohm', (_, amps, most) => {
    near(loopLimit(230, amps, 1).value, most, 0.0051);
  });
});

// Worked out by hand for this site: volts / (1.5 x trip current).
describe('the loop behind which a short still trips with margin, at 14 V', () => {
  test.each([
    [3, 3.1],
    [5, 1.9],
    [8, 1.2],
  ])('%d A: %d ohm', (trip, most) => {
    const limit = loopLimit(14, trip);
    near(limit.value, most, 0.05);
    expect(limit.formula).toBe('loop-limit');
  });

  // A club's mailing list: a fault path above about 2.75 ohm never reaches 5 A. 14 V / 5 A = 2.8 ohm.
  test('without margin 5 A are reached up to 2.8 ohm', () => near(loopLimit(14, 5, 1).value, 2.8, 1e-12));
});

// Worked out by hand for this site: max of I (V - I R) for I up to the trip current; beside it the heat at the trip current
// itself, which is often taken for the worst and is not.
describe('the worst heat of a fault that does not trip', () => {
  test.each([
    [15, 2.5, 5, 22.5, 3, 12.5],
    [15, 2.9, 5, 19.4, 2.586, 2.5],
    [18, 2, 8, 40.5, 4.5, 16],
  ])('%d V, %d ohm, %d A: %d W at %d A, against %d W at the trip current', (volts, ohms, trip, watts, amps, below) => {
    const heat = worstFaultHeat({ volts, ohms }, trip);
    near(heat.watts, watts, 0.05);
    near(heat.atAmps, amps, 0.001);
    near(heat.justBelowTrip, below, 0.05);
  });

  // A club's mailing list: 5 A at 12 to 16 V are 60 to 80 W at one spot.
  test.each([
    [12, 60],
    [16, 80],
  ])('a loop without resistance, %d V and 5 A: %d W', (volts, watts) => {
    near(worstFaultHeat({ volts, ohms: 0 }, 5).watts, watts, 1e-12);
  });
});

// Loop-test arithmetic as measuring practice prints it: R = (V0 - V1) / I, and I_sc = V0 / R.
describe('the loop test', () => {
  test('14.2 V falls to 12.9 V at 10 ohm: 1.29 A, 1.008 ohm, 14.1 A', () => {
    const result = shortFromLoadTest({ open: 14.2, loaded: 12.9, ohms: 10 });
    expect(result.kind).toBe('measured');
    if (result.kind !== 'measured') return;
    near(result.ohms, (14.2 - 12.9) / 1.29, 1e-12);
    near(result.amps, 14.2 / ((14.2 - 12.9) / 1.29), 1e-9);
    near(result.amps, 14.09, 0.005);
  });
});

// A trade magazine of April 2015: 3 to 5 A for S and smaller, 8 A for H0, S and 0, 10 A for 0 and G, and choose the smallest that
// works. What is allowed here is never more than that.
describe('the ceiling of the trip current', () => {
  test.each([
    ['z', 5],
    ['n', 5],
    ['tt', 5],
    ['h0', 8],
    ['0', 10],
    ['1', 10],
  ] as const)('%s: at most %d A', (scale, most) => {
    expect(tripLevel(scale, most + 0.1).finding).toBe('above-ceiling');
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CrossingSkew, SkewInput } from '../../../src/engine/crossing/skew.ts';
import { crossingSkew, skewFinding } from '../../../src/engine/crossing/skew.ts';
import type { BridgingTime } from '../../../src/engine/crossing/time.ts';
import { bridgingTime } from '../../../src/engine/crossing/time.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';

const longest = (time: BridgingTime): number => (time.kind === 'seconds' ? time.seconds.to : Number.NaN);
const shortest = (time: BridgingTime): number => (time.kind === 'seconds' ? time.seconds.from : Number.NaN);

describe('a vehicle with through pick-ups', () => {
  test('of 0.2 m joins both sides for one second at 0.2 m/s, for ten at 0.02 m/s', () => {
    near(longest(bridgingTime(0.2, 0.2, 0)), 1, 1e-12);
    near(longest(bridgingTime(0.2, 0.02, 0)), 10, 1e-12);
    near(longest(bridgingTime(0.2, 0.2, 0.001)), 0.995, 1e-12);
  });

  test('that stands across joins them without limit, and one that may stop may as well', () => {
    expect(bridgingTime(0.2, 0)).toEqual({ kind: 'without-limit' });
    expect(bridgingTime(0.2, { from: 0, to: 0.3 })).toEqual({ kind: 'without-limit' });
  });

  test('whose wheels do not reach across never joins them', () => {
    expect(bridgingTime(0.004, 0.1, 0.005)).toEqual({ kind: 'never' });
    expect(bridgingTime(0.004, 0, 0.005)).toEqual({ kind: 'never' });
  });

  test('at a range of speeds gives a range of times', () => {
    const time = bridgingTime(0.1, { from: 0.05, to: 0.5 }, 0);
    near(shortest(time), 0.2, 1e-12);
    near(longest(time), 2, 1e-12);
  });
});

const skew = (input: SkewInput): CrossingSkew => {
  const found = crossingSkew(input);
  if (found.kind !== 'skew') throw new Error(`no answer: ${found.because}`);
  return found;
};

describe('two stages that switch apart', () => {
  test('30 V, half an ohm, 2 uH, 5 us: time constant 4 us, 42.81 A, 2.03 mJ, at most 9 mJ', () => {
    const found = skew({ volts: 30, ohms: 0.5, henries: 2e-6, seconds: 5e-6 });
    near(found.timeConstant, 4e-6, 1e-18);
    near(found.peak, 42.809712, 5e-7);
    near(found.energy, 2.030163e-3, 5e-10);
    near(found.energyBound, 9e-3, 1e-12);
  });

  test('3 us with 10 uH and 1 ohm at 15 V: about 8 A, 90 uC an edge, about 1 A on average', () => {
    const found = skew({ volts: 30, ohms: 1, henries: 10e-6, seconds: 3e-6 });
    near(found.peak, 7.8, 0.05);
    near(found.wholeCharge, 90e-6, 1e-12);
    near(found.meanCurrent, 1.2, 0.05);
    expect(found.charge).toBeLessThan(found.wholeCharge);
  });

  test('without inductance the full current flows at once', () => {
    const found = skew({ volts: 30, ohms: 1, henries: 0, seconds: 3e-6 });
    near(found.peak, 30, 1e-12);
    near(found.charge, 90e-6, 1e-15);
    near(found.energy, found.energyBound, 1e-15);
    expect(skew({ volts: 30, ohms: 1, henries: 0, seconds: 0 }).peak).toBe(0);
  });

  // The first terms of the series: half of what the full current would carry in x, and a third of its heat, of x times as much.
  test('a skew that is short against the time constant keeps its digits', () => {
    for (const x of [1e-9, 1e-7, 1e-5]) {
      const found = skew({ volts: 30, ohms: 1, henries: 1e-3, seconds: 1e-3 * x });
      near(found.charge / (30 * 1e-3 * (x ** 2 / 2)), 1, 1e-4);
      near(found.energy / (900 * 1e-3 * (x ** 3 / 3)), 1, 1e-4);
    }
  });

  test.each([
    [0, 'fine'],
    [1, 'fine'],
    [3, 'noticeable'],
    [5, 'noticeable'],
    [5.1, 'not-usable'],
  ])('by %d us: %s', (microseconds, finding) => {
    expect(skewFinding(microseconds * 1e-6)).toBe(finding);
    expect(skew({ volts: 30, ohms: 1, henries: 10e-6, seconds: microseconds * 1e-6 }).finding).toBe(finding);
  });

  const any = fc.record({
    volts: spread(1, 44),
    ohms: spread(0.1, 5),
    henries: fc.double({ min: 1e-12, max: 1e-3, noNaN: true }),
    seconds: spread(1e-8, 2e-5),
  });

  test('what the stages give is heat and what the inductance holds: volts times charge', () => {
    fc.assert(
      fc.property(any, (input) => {
        const found = skew(input);
        near(found.wholeEnergy / (input.volts * found.charge), 1, 1e-7);
      }),
    );
  });

  test('inductance never makes current or heat larger', () => {
    fc.assert(
      fc.property(any, (input) => {
        const [found, more] = [skew(input), skew({ ...input, henries: input.henries * 1.5 })];
        expect(more.peak).toBeLessThanOrEqual(found.peak * (1 + 1e-9));
        expect(more.energy).toBeLessThanOrEqual(found.energy * (1 + 1e-7));
        expect(found.energy).toBeLessThanOrEqual(found.energyBound * (1 + 1e-9));
      }),
    );
  });

  test('a very small inductance comes to the same as none, a very large one lets nothing through', () => {
    const base = { volts: 30, ohms: 1, seconds: 3e-6 };
    const [none, little] = [skew({ ...base, henries: 0 }), skew({ ...base, henries: 1e-15 })];
    near(little.energy / none.energy, 1, 1e-8);
    near(skew({ ...base, henries: 1 }).peak, 30 * 3e-6, 1e-9);
  });
});

describe('input that makes no sense names its part', () => {
  test('times', () => {
    expect(bridgingTime(-0.1, 0.1)).toMatchObject({ because: 'negative', parts: ['pick-up-span'] });
    expect(bridgingTime(0.1, Number.NaN)).toMatchObject({ because: 'not-a-number', parts: ['speed'] });
    expect(bridgingTime(0.1, { from: 0.3, to: 0.1 })).toMatchObject({ because: 'wrong-order', parts: ['speed'] });
    expect(bridgingTime(0.1, 0.1, -0.001)).toMatchObject({ because: 'negative', parts: ['gap'] });
  });

  test('skew', () => {
    const good = { volts: 30, ohms: 1, henries: 1e-6, seconds: 3e-6 };
    expect(crossingSkew({ ...good, ohms: 0 })).toEqual({
      kind: 'no-solution',
      because: 'not-positive',
      parts: ['ohms'],
    });
    expect(crossingSkew({ ...good, volts: Number.NaN })).toMatchObject({ parts: ['volts'] });
    expect(crossingSkew({ ...good, edges: 0 })).toMatchObject({ because: 'not-positive', parts: ['edges'] });
  });
});

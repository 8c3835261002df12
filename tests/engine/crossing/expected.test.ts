// What there is to measure at a gap: time, meters, lamps, and the short of a part that is turned round.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gapExpected, usualEngine } from '../../../src/engine/crossing/expected.ts';
import { gapReadings, METER_KINDS, railsRead } from '../../../src/engine/crossing/meters.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';

function expected(nearVolts: number, farVolts: number) {
  const found = gapExpected('h0', nearVolts, farVolts);
  if (found === undefined) throw new Error('nothing to expect');
  return found;
}

describe('an engine of its scale', () => {
  test('has about 12 cm between its outermost pick-up wheels in H0, and 5 cm in Z', () => {
    near(usualEngine('h0').pickUpSpan, 0.12, 0.002);
    near(usualEngine('z').pickUpSpan, 0.048, 0.001);
  });

  test('is across for a quarter of a second at full speed, and for more than two when it shunts', () => {
    const { lasts } = expected(15, 15);
    if (lasts.kind !== 'seconds') throw new Error(lasts.kind);
    near(lasts.seconds.from, 0.234, 0.01);
    near(lasts.seconds.to, 2.34, 0.1);
  });
});

describe('two parts of 15 V', () => {
  const { meters, lamps, reversed } = expected(15, 15);
  const read = (kind: (typeof METER_KINDS)[number]) => meters.find(({ meter }) => meter === kind);

  test('an ordinary meter shows 11 % more than there is, a true-RMS one just what there is', () => {
    expect(read('averaging')?.railToRail).toMatchObject({ kind: 'shows', volts: expect.closeTo(16.66, 2) });
    expect(read('true-rms')?.railToRail).toMatchObject({ kind: 'shows', volts: expect.closeTo(15, 9) });
  });

  test('the same rail across the gap has nothing in phase, and the sum of both with one part turned round', () => {
    expect(read('true-rms')?.inPhase).toMatchObject({ kind: 'shows', volts: expect.closeTo(0, 9) });
    expect(read('true-rms')?.reversed).toMatchObject({ kind: 'shows', volts: expect.closeTo(30, 9) });
    expect(read('cheapest')?.inPhase).toEqual({ kind: 'means-nothing', below: 1 });
  });

  test('two lamps are dark in phase and lit with one part turned round', () => {
    expect([lamps['in-phase'].lookA, lamps['in-phase'].lookB]).toEqual(['dark', 'dark']);
    expect([lamps.reversed.lookA, lamps.reversed.lookB]).toEqual(['lit', 'lit']);
  });

  test('turned round, a train across is a short of both volts over the way through it', () => {
    near(reversed.typicalAmps, 30, 1e-9);
    near(reversed.amps.from, 10, 1e-9);
    near(reversed.amps.to, 100, 1e-9);
  });
});

test('crosswise over the gap any meter shows what it shows from rail to rail, whatever the volts and the phase', () => {
  const volts = spread(5, 22);
  fc.assert(
    fc.property(volts, volts, fc.constantFrom(...METER_KINDS), fc.boolean(), (nearVolts, farVolts, meter, turned) => {
      const phase = turned ? 'reversed' : 'in-phase';
      const found = gapReadings({ nearVolts, farVolts, meter, phase, tie: 'other-pair' });
      if (found.kind !== 'readings' || found.diagonal.kind !== 'shows') throw new Error(found.kind);
      const rails = railsRead(meter, nearVolts);
      near(found.diagonal.volts, rails.kind === 'shows' ? rails.volts : Number.NaN, 1e-9);
    }),
  );
});

test('a part without volts has nothing to expect', () => {
  expect(gapExpected('h0', 0, 15)).toBeUndefined();
});

// Fuses, what is always on, and what meters show of a plan that is built right.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { HARDLY, leadAmps, lostAsPlanned, metersShow } from '../../../src/engine/plan/expected.ts';
import { withFixedDraw } from '../../../src/engine/plan/fixed.ts';
import { FUSE_RATINGS, fuseFor } from '../../../src/engine/plan/fuse.ts';
import { isLongBus } from '../../../src/engine/plan/wires.ts';
import { capacity } from '../../../src/engine/power/capacity.ts';
import { supplyTrip } from '../../../src/engine/power/trip-reach.ts';
import { heatingLimit } from '../../../src/engine/wiring/wire.ts';
import { ac, dc, unit } from '../../samples.ts';
import { spread } from '../../spread.ts';

describe('The fuse between a supply and its unit', () => {
  test('never blows before the unit opens, and its wire bears it for as long as it likes', () => {
    fc.assert(
      fc.property(spread(0.5, 9), spread(0, 0.5), (limit, ownUse) => {
        const trip = supplyTrip(dc(10), unit(limit, { ownUse }));
        const fuse = fuseFor(trip);
        // All that is asked for here is within NEM 609.
        if (fuse.kind === 'none') throw new Error(`no fuse for ${limit} A`);
        expect(fuse.amps).toBeGreaterThanOrEqual(limit + ownUse - 1e-9);
        expect(heatingLimit(fuse.area)).toBeGreaterThanOrEqual(fuse.amps);
        // The next smaller one would blow while trains run.
        const smaller = FUSE_RATINGS.filter((one) => one < fuse.amps).at(-1) ?? 0;
        expect(smaller).toBeLessThan(limit + ownUse);
      }),
    );
  });

  test('behind a rectifier it carries the alternating current, which is more than the track draws', () => {
    // 3 A on the track take 5.4 A from the winding: a winder's table, source rectifier-table.
    expect(fuseFor(supplyTrip(ac(6), unit(3)))).toMatchObject({ kind: 'fuse', amps: 6.3 });
  });

  test('there is none where NEM 609 allows no such supply', () => {
    expect(fuseFor(supplyTrip(dc(10), unit(11)))).toEqual({ kind: 'none', because: 'beyond-nem-609' });
  });
});

describe('Half an ampere of lighting that is always on', () => {
  test.each([
    ['of a supply that decides', dc(3), unit(5)],
    ['of a unit that decides', dc(5), unit(3)],
    ['behind a transformer', ac(5), unit(5)],
    ['behind a step-down converter', dc(3, 20), unit(5, { rails: { kind: 'converter', volts: 15 } })],
  ])('takes half an ampere from the trains %s', (_, supply, stage) => {
    const less = capacity(supply, stage).hard - capacity(supply, withFixedDraw(supply, stage, 0.5)).hard;
    expect(less).toBeCloseTo(0.5, 9);
  });

  test('changes nothing about what trips', () => {
    for (const supply of [dc(2.9), dc(3), dc(3.2), ac(5)]) {
      const stage = unit(3);
      expect(supplyTrip(supply, withFixedDraw(supply, stage, 0.5)).kind).toBe(supplyTrip(supply, stage).kind);
    }
  });

  test('and nothing that is on changes nothing', () => {
    expect(withFixedDraw(dc(3), unit(3), 0)).toEqual(unit(3));
  });
});

describe('What a meter shows of 15 V on the rails', () => {
  test('is 15 V on a true one and 16.7 V on one that averages', () => {
    const { from, to } = metersShow({ from: 15, to: 15 });
    expect(from).toBe(15);
    expect(to).toBeCloseTo(16.66, 2);
  });

  test('in the lead of the supply is what the track draws and what the unit takes for itself', () => {
    expect(leadAmps(dc(3), unit(3, { ownUse: 0.2 }), 1)).toBeCloseTo(1.2, 9);
    expect(leadAmps(ac(3), unit(3), 1)).toBeUndefined();
  });

  test('is less behind a step-down converter, which gives more amperes than it takes', () => {
    const stepped = unit(5, { rails: { kind: 'converter', volts: 15 } });
    expect(leadAmps(dc(3, 20), stepped, 1)).toBeCloseTo(15 / (20 * 0.85), 9);
  });
});

test('A bus of ten metres is long, one of nine is not', () => {
  // common practice, no source
  expect([9, 10].map(isLongBus)).toEqual([false, true]);
});

describe('What the load test may show lost where all is as planned', () => {
  test('is what 0.4 ohms take beside the resistor of 15, and a step of the meter', () => {
    // By hand: 15 V x 0.4 / 15.4 = 0.39 V, and 0.1 V.
    expect(lostAsPlanned(15, 0.4)).toBeCloseTo(0.49 / 15, 3);
  });

  test('grows with the way, and is never more than what people call hardly', () => {
    expect(lostAsPlanned(15, 0.8)).toBeGreaterThan(lostAsPlanned(15, 0.4));
    expect(lostAsPlanned(15, 5)).toBe(HARDLY);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pointsOf } from '../../../src/engine/wiring/along-track.ts';
import { dropFinding, FEEDER_WIRE, trainLevels } from '../../../src/engine/wiring/limits.ts';
import type { FeedingPlan } from '../../../src/engine/wiring/plan.ts';
import { voltsAt } from '../../../src/engine/wiring/plan-circuit.ts';
import { shortAmpsAt } from '../../../src/engine/wiring/short-circuit.ts';
import { faultHeatAlong, sureTrip, tripFinding, worstFaultHeat } from '../../../src/engine/wiring/trips.ts';
import { ohmsPerMetre } from '../../../src/engine/wiring/wire.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';
import { shortAlong, trainAlong } from './along.ts';

/** A long track on a thin bus, two feeders near its start: beyond the last one the volts fall evenly, metre by metre. */
const LONG: FeedingPlan = {
  source: { volts: 15, ohms: 0.2 },
  bus: { length: 40, ohmsPerMetre: ohmsPerMetre({ area: 0.75e-6, make: 'flexible' }), fedAt: 0, ring: false },
  feeders: [2, 6].map((at) => ({ at, length: FEEDER_WIRE.length, ohmsPerMetre: ohmsPerMetre(FEEDER_WIRE) })),
  rails: { length: 40, ohmsPerMetre: 0.108, joints: [] },
};

function train(plan = LONG, amps = 1.5) {
  const along = trainAlong(plan, amps);
  if (along.kind === 'no-solution') throw new Error(along.because);
  return along;
}

function short(plan = LONG) {
  const along = shortAlong(plan);
  if (along.kind === 'no-solution') throw new Error(along.because);
  return along;
}

describe('the value at a spot', () => {
  test('a train 23.5 m along has 8.60 V, not the 8.54 V of the nearest point that is drawn', () => {
    const along = train();
    expect(voltsAt(along, 23.5)).toBeCloseTo(8.6, 2);
    const drawn = along.points.reduce((best, one) => (Math.abs(one.at - 23.5) < Math.abs(best.at - 23.5) ? one : best));
    expect(drawn.volts).toBeCloseTo(8.54, 2);
  });

  test('is what a train finds that is worked out for this very spot', () => {
    fc.assert(
      fc.property(spread(0.5, 39.5), spread(0.1, 1.5), (at, amps) => {
        // The spot becomes an end of two stretches, and so a point of its own.
        const asked = trainAlong({ ...LONG, rails: { ...LONG.rails, joints: [{ at, ohms: 0 }] } }, amps);
        if (asked.kind === 'no-solution') throw new Error(asked.because);
        const point = asked.points.find((one) => Math.abs(one.at - at) < 1e-9);
        near(voltsAt(train(LONG, amps), at), point?.volts ?? Number.NaN, 1e-9);
      }),
    );
  });

  test('a short there draws the volts over the ohms there, and never more than the supply lets pass', () => {
    const along = short();
    expect(shortAmpsAt(along, along.weakest.at)).toBeCloseTo(along.weakest.amps, 9);
    const held = short({ ...LONG, source: { ...LONG.source, limit: 3 } });
    expect(shortAmpsAt(held, 0)).toBe(3);
  });

  test('at a joint it is the side towards the start, and off the track the nearer end', () => {
    const jointed = short({ ...LONG, rails: { ...LONG.rails, joints: [{ at: 20, ohms: 0.5 }] } });
    expect(shortAmpsAt(jointed, 20)).toBeGreaterThan(shortAmpsAt(jointed, 20.001) + 0.2);
    expect(voltsAt(train(), -5)).toBe(voltsAt(train(), 0));
    expect(voltsAt(train(), 99)).toBe(voltsAt(train(), 40));
  });
});

describe('what wiring is judged by', () => {
  test('a train should keep 95 % of the volts and may have 90 %', () => {
    expect(trainLevels(15, 0)).toEqual({ wanted: 14.25, least: 13.5 });
    expect(trainLevels(15, 0.5)).toEqual({ wanted: 13.75, least: 13 });
  });

  test('a loss of a twentieth is good, of a tenth bearable, of more poor', () => {
    expect([0, 0.05, 0.051, 0.1, 0.101, 0.5].map(dropFinding)).toEqual([
      'good',
      'good',
      'bearable',
      'bearable',
      'poor',
      'poor',
    ]);
  });

  test('what surely trips is one and a half times the trip current, and is found to trip', () => {
    expect(sureTrip(3)).toBe(4.5);
    expect(tripFinding(sureTrip(3), 3)).toBe('trips');
    expect(tripFinding(sureTrip(3) - 0.01, 3)).toBe('close');
  });

  test('the most heat of a poor contact that trips nothing is that of every contact at every place, tried one by one', () => {
    fc.assert(
      fc.property(
        spread(0.5, 10),
        fc.constantFrom(undefined, 2, 4),
        fc.constantFrom(0, 10, 40),
        (trip, limit, fedAt) => {
          const source = limit === undefined ? LONG.source : { ...LONG.source, limit };
          const along = short({ ...LONG, source, bus: { ...LONG.bus, fedAt } });
          const found = faultHeatAlong(along, trip);
          let most = 0;
          for (const { value: ohms } of pointsOf(along.pieces, 0.1)) {
            for (let contact = 0.05; contact < 60; contact *= 1.02) {
              const amps = along.volts / (ohms + contact);
              if (amps <= Math.min(trip, along.limit)) most = Math.max(most, amps ** 2 * contact);
            }
          }
          expect(most).toBeLessThanOrEqual(found.watts * (1 + 1e-9));
          expect(most).toBeGreaterThan(found.watts * 0.97);
        },
      ),
      { numRuns: 30 },
    );
  });

  test('it is made where a clean short draws most: 3 A at 15 V leave more to a contact near the unit than far away', () => {
    const along = short();
    const { watts, at } = faultHeatAlong(along, 3);
    expect(at).toBeCloseTo(2, 6);
    expect(watts).toBeCloseTo(3 * (15 - (3 * 15) / shortAmpsAt(along, 2)), 6);
    const far = worstFaultHeat({ volts: along.volts, ohms: along.weakest.ohms }, 3);
    expect(watts).toBeGreaterThan(far.watts);
  });
});

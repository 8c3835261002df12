import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { capacity } from '../../../src/engine/power/capacity.ts';
import { summarise } from '../../../src/engine/power/demand.ts';
import type { Scale } from '../../../src/engine/power/draws.ts';
import { ACCESSORY_DRAW, COACH_DRAWS, DRAWS, STORED_ENERGY_INRUSH } from '../../../src/engine/power/draws.ts';
import type { Fleet } from '../../../src/engine/power/fleet.ts';
import {
  coldFilaments,
  countedTrains,
  districtLoad,
  drawsSure,
  largestMoving,
  measuredTrains,
  moreTrains,
  muted,
  parked,
  trackAsMeasured,
  trainCount,
  withAllSound,
  withSound,
} from '../../../src/engine/power/fleet.ts';
import { atLeast } from '../../../src/engine/power/rules.ts';
import { middle } from '../../../src/engine/units.ts';
import { near } from '../../near.ts';
import { dc, h0, judged, unit } from '../../samples.ts';
import { spread } from '../../spread.ts';

const SCALES: readonly Scale[] = ['z', 'n', 'tt', 'h0', '0', '1'];

describe('the default draws', () => {
  test('older motors, stalls and the scales are in a believable order', () => {
    for (const scale of SCALES) {
      const draws = DRAWS[scale];
      for (const span of [draws.modern, draws.older, draws.standing, draws.sound, draws.trip]) {
        expect(span.from).toBeLessThanOrEqual(span.to);
        expect(span.from).toBeGreaterThan(0);
      }
      expect(draws.older.to).toBeGreaterThan(draws.modern.to);
      expect(draws.standing.to).toBeLessThan(draws.modern.from);
      expect(middle(draws.modernStall)).toBeGreaterThan(draws.modern.to);
      expect(middle(draws.olderStall)).toBeGreaterThan(draws.older.to);
      expect(draws.tripCeiling).toBeGreaterThanOrEqual(draws.trip.to);
    }
    const modern = SCALES.map((scale) => DRAWS[scale].modern.to);
    expect(modern).toEqual([...modern].sort((a, b) => a - b));
  });
});

describe('a fleet told by kinds', () => {
  test('keeps its count, and as many have sound as were said', () => {
    fc.assert(
      fc.property(fc.constantFrom(...SCALES), fc.nat(20), fc.nat(20), fc.nat(40), (scale, modern, older, wanted) => {
        const sound = Math.min(wanted, modern + older);
        const groups = countedTrains(scale, modern, older, sound);
        expect(trainCount({ trains: groups })).toBe(modern + older);
        const loud = groups.filter(({ kind }) => kind.endsWith('-sound'));
        expect(trainCount({ trains: loud })).toBe(sound);
        expect(groups.every(({ count }) => count > 0)).toBe(true);
      }),
    );
  });

  test('sound goes to modern locomotives first, and draws running and standing alike', () => {
    const [plain, loud] = countedTrains('h0', 3, 1, 1);
    expect([plain?.kind, plain?.count, loud?.kind, loud?.count]).toEqual(['modern', 2, 'modern-sound', 1]);
    near((loud?.running.from ?? 0) - (plain?.running.from ?? 0), 0.05, 1e-12);
    near((loud?.running.to ?? 0) - (plain?.running.to ?? 0), 0.2, 1e-12);
    near((loud?.standing ?? 0) - (plain?.standing ?? 0), 0.125, 1e-12);
  });
});

describe('measured trains', () => {
  test('never draw more standing than running, and jam at twice the most', () => {
    expect(measuredTrains(2, { from: 0.3, to: 0.6 }, 0.5)).toMatchObject({ standing: 0.3, stall: 1.2, count: 2 });
    expect(measuredTrains(2, { from: 0.3, to: 0.6 }, 0.1).standing).toBe(0.1);
  });
});

describe('the load of the whole fleet', () => {
  const fleet: Fleet = { ...h0(4, 1, 2), coaches: 6, lamps: 'filament', accessories: 5, stored: 2 };

  test('averages what moves, what stands, lamps and accessories', () => {
    const standing = 0.04;
    const running = (4 * 0.35 + 1 * 0.75) / 5;
    const mean = 2 * running + 3 * standing + 6 * middle(COACH_DRAWS.filament) + 5 * middle(ACCESSORY_DRAW);
    near(summarise(districtLoad(fleet).distribution).mean, mean, 1e-9);
  });

  test('switching on wakes everything that stands and charges what stores energy', () => {
    const fixed = 6 * middle(COACH_DRAWS.filament) + 5 * middle(ACCESSORY_DRAW);
    near(districtLoad(fleet).powerUp, 5 * 0.04 + fixed + 2 * STORED_ENERGY_INRUSH, 1e-12);
  });

  test('the hungriest train counts for a jam, beyond the top of its running range', () => {
    near(districtLoad(fleet).stallExtra, 1.75 - 1, 1e-12);
    near(districtLoad(h0(4, 0, 2)).stallExtra, 0.8 - 0.5, 1e-12);
    expect(districtLoad({ ...fleet, moving: 0 }).stallExtra).toBe(0);
  });

  test('half the fleet draws half on average, and is less steady than a half', () => {
    const whole = summarise(districtLoad(fleet).distribution);
    const half = summarise(districtLoad(fleet, 0.5).distribution);
    near(half.mean, whole.mean / 2, 1e-9);
    expect(half.p95).toBeGreaterThan(whole.p95 / 2);
    near(districtLoad(fleet, 0.5).powerUp, districtLoad(fleet).powerUp / 2, 1e-12);
  });

  test('LEDs in the coaches draw less than filament lamps', () => {
    const { mean } = summarise(districtLoad({ ...fleet, lamps: 'led' }).distribution);
    near(summarise(districtLoad(fleet).distribution).mean - mean, 6 * (0.125 - 0.0175), 1e-9);
  });

  test('an empty track draws nothing', () => {
    const { distribution, powerUp, stallExtra } = districtLoad(h0(0, 0, 0));
    expect([summarise(distribution).most, powerUp, stallExtra]).toEqual([0, 0, 0]);
  });
});

describe('how many may move', () => {
  const able = capacity(dc(2), unit(2));

  test('of five modern H0 locomotives on 2 A, four may move tightly', () => {
    expect(largestMoving(h0(5, 0, 5), able, 'tight')).toBe(4);
  });

  test('is the last number before the wanted verdict fails, found by trying each', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 8 }),
        fc.integer({ min: 0, max: 4 }),
        spread(0.1, 5),
        fc.constantFrom('tight', 'enough', 'ample'),
        (modern, older, amps, wanted) => {
          const fleet = h0(modern, older, 0);
          const supply = capacity(dc(amps), unit(5));
          const passes = (moving: number): boolean => atLeast(judged({ ...fleet, moving }, supply).verdict, wanted);
          let most = -1;
          while (most < modern + older && passes(most + 1)) most++;
          expect(largestMoving(fleet, supply, wanted)).toBe(most);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('not even standing passes where the standing draw alone is too much', () => {
    expect(largestMoving({ ...h0(1, 0, 1), coaches: 40 }, able, 'tight')).toBe(-1);
  });
});

describe('how many more trains could run', () => {
  test('from three modern H0 on 2 A one more runs, tightly', () => {
    const fleet = h0(3, 0, 3);
    const [modern] = fleet.trains;
    expect(modern === undefined ? -1 : moreTrains(fleet, modern, capacity(dc(2), unit(2)), 'tight')).toBe(1);
  });

  test('none where it is short already, and never more than asked for', () => {
    const fleet = h0(6, 0, 6);
    const [modern] = fleet.trains;
    if (modern === undefined) throw new Error('a fleet of six has a first kind');
    expect(moreTrains(fleet, modern, capacity(dc(2), unit(2)), 'tight')).toBe(0);
    expect(moreTrains(fleet, modern, { hard: 1000, usable: 900 }, 'tight', 4)).toBe(4);
  });
});

describe('sound', () => {
  const mixed: Fleet = {
    ...h0(3, 2, 4),
    trains: [...countedTrains('h0', 3, 2, 1), measuredTrains(4, { from: 0.3, to: 0.4 }, 0.1)],
  };
  const counts = ({ trains }: Fleet) => Object.fromEntries(trains.map(({ kind, count }) => [kind, count]));

  test('in every train that was counted, modern or older; one’s own measurements hold theirs', () => {
    expect(withSound(mixed)).toBe(1);
    const loud = withAllSound(mixed, 'h0');
    expect(withSound(loud)).toBe(5);
    expect(trainCount(loud)).toBe(9);
    expect(loud.trains.filter(({ kind }) => kind === 'measured')).toEqual(
      mixed.trains.filter(({ kind }) => kind === 'measured'),
    );
    expect(Object.keys(counts(loud)).toSorted()).toEqual([...new Set(loud.trains.map(({ kind }) => kind))].toSorted());
  });

  test('turned off takes its amperes off what stands, and nothing off what moves or never had any', () => {
    const loud = withAllSound(mixed, 'h0');
    const quiet = muted(loud, 'h0');
    const standing = (fleet: Fleet) => fleet.trains.reduce((sum, { count, standing: amps }) => sum + count * amps, 0);
    near(standing(loud) - standing(quiet), 5 * middle(DRAWS.h0.sound), 1e-12);
    expect(quiet.trains.map(({ running }) => running)).toEqual(loud.trains.map(({ running }) => running));
    near(standing(quiet), standing(mixed) - middle(DRAWS.h0.sound), 1e-12);
  });
});

describe('cold filament lamps', () => {
  test('draw several times what warm ones do; LEDs never do', () => {
    const warm = 8 * middle(COACH_DRAWS.filament);
    const { from, to } = coldFilaments({ coaches: 8, lamps: 'filament' });
    expect(from).toBeGreaterThan(4 * warm);
    expect(to).toBeLessThan(16 * warm);
    expect(coldFilaments({ coaches: 8, lamps: 'led' })).toEqual({ from: 0, to: 0 });
  });
});

describe('track that is switched off', () => {
  test('takes away what so many standing trains draw, and no more trains than stand', () => {
    const stands: Fleet = { ...h0(0, 0, 0), trains: [measuredTrains(5, { from: 0.5, to: 0.5 }, 0.1)], moving: 1 };
    const mean = (fleet: Fleet) => summarise(districtLoad(fleet).distribution).mean;
    near(mean(stands), 0.5 + 4 * 0.1, 1e-9);
    near(mean(parked(stands, 3)), 0.5 + 0.1, 1e-9);
    expect(trainCount(parked(stands, 3))).toBe(5);
  });
});

describe('what was measured in the lead of the supply', () => {
  const measured: Fleet = { ...h0(0, 0, 0), trains: [measuredTrains(2, { from: 0.4, to: 0.6 }, 0.1)], moving: 1 };
  const converter = { rails: { kind: 'converter', volts: 14 } } as const;

  test('behind a step-down converter is the same power at fewer volts, less what the converter loses: 0.5 A at 20 V are 0.61 A at 14 V', () => {
    const found = trackAsMeasured(measured, dc(3, 20), converter);
    const times = (0.85 * 20) / 14;
    near(found?.times ?? 0, times, 1e-12);
    const [train] = found?.fleet.trains ?? [];
    expect(train?.count).toBe(2);
    near(train?.running.from ?? 0, 0.4 * times, 1e-12);
    near(train?.running.to ?? 0, 0.6 * times, 1e-12);
    near(train?.standing ?? 0, 0.1 * times, 1e-12);
  });

  test('is what flows on the track where nothing steps the volts down, and trains that were counted are none of it', () => {
    expect(trackAsMeasured(measured, dc(3, 20), { rails: { kind: 'set', volts: 14 } })).toBeUndefined();
    expect(trackAsMeasured(h0(2, 0, 1), dc(3, 20), converter)).toBeUndefined();
    const both = { ...measured, trains: [...measured.trains, ...countedTrains('h0', 1, 0, 0)] };
    expect(trackAsMeasured(both, dc(3, 20), converter)?.fleet.trains.at(-1)).toEqual(both.trains.at(-1));
  });
});

describe('what the draws of a fleet rest on', () => {
  test('is the least sure of its kinds; nothing is left to doubt where all were measured', () => {
    expect(drawsSure({ trains: countedTrains('z', 0, 2, 0) }, 'z')).toBe('sourced');
    expect(drawsSure({ trains: countedTrains('z', 1, 2, 0) }, 'z')).toBe('memory');
    expect(drawsSure({ trains: countedTrains('h0', 1, 1, 1) }, 'h0')).toBe('practice');
    expect(drawsSure({ trains: [measuredTrains(2, { from: 0.4, to: 0.6 }, 0.1)] }, 'h0')).toBeUndefined();
  });
});

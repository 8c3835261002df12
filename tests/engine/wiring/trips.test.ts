import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gradeBreaker, openedBy } from '../../../src/engine/wiring/breakers.ts';
import { leastLoadedVolts, loadedVolts, shortFromLoadTest } from '../../../src/engine/wiring/load-test.ts';
import type { ShortAlong } from '../../../src/engine/wiring/short-circuit.ts';
import { tripLevel } from '../../../src/engine/wiring/trip-level.ts';
import { loopLimit, tripFinding, worstFaultHeat } from '../../../src/engine/wiring/trips.ts';
import { weakStretches } from '../../../src/engine/wiring/weak-stretches.ts';
import { working } from '../../../src/engine/workings.ts';
import { allNear, near } from '../../near.ts';
import { spread } from '../../spread.ts';

const volts = fc.double({ min: 8, max: 22, noNaN: true });
const ohms = spread(0.01, 10);
/** Resistors that people may have at hand. */
const OHMS = [4.7, 10, 15, 33, 100] as const;
const trips = spread(0.5, 10);

describe('a protection of 3 A', () => {
  test.each([
    [2.9, 'does-not-trip'],
    [3, 'does-not-trip'],
    [3.1, 'close'],
    [4.49, 'close'],
    [4.5, 'trips'],
    [20, 'trips'],
  ] as const)('%d A: %s', (amps, finding) => expect(tripFinding(amps, 3)).toBe(finding));
});

describe('the most ohms a loop may have', () => {
  test('just let through the trip current with its margin', () => {
    fc.assert(
      fc.property(volts, trips, (v, trip) => {
        near(v / loopLimit(v, trip).value, 1.5 * trip, 1e-9);
      }),
    );
  });

  test('and the line of the working names volts, trip current and margin, and where they come from', () => {
    expect(loopLimit(15, 4, 2)).toEqual(
      working(
        'loop-limit',
        15 / 8,
        'ohm',
        [
          ['volts', 15, 'V'],
          ['trip', 4, 'A'],
          ['margin', 2, 'times'],
        ],
        ['own-derivation', 'common-practice'],
      ),
    );
  });
});

describe('the worst heat at a fault', () => {
  test('is what trying every current below the trip finds', () => {
    fc.assert(
      fc.property(volts, ohms, trips, (v, r, trip) => {
        const { watts, atAmps } = worstFaultHeat({ volts: v, ohms: r }, trip);
        let found = 0;
        for (let k = 0; k <= 2000; k++) {
          const amps = (trip * k) / 2000;
          found = Math.max(found, amps * (v - amps * r));
        }
        expect(watts).toBeGreaterThanOrEqual(found - 1e-9);
        near(watts, found, 1e-4 * watts + r * (trip / 2000) ** 2);
        expect(atAmps).toBeLessThanOrEqual(trip);
      }),
    );
  });

  test('is never less than the heat just below the trip', () => {
    fc.assert(
      fc.property(volts, ohms, trips, (v, r, trip) => {
        const { watts, justBelowTrip } = worstFaultHeat({ volts: v, ohms: r }, trip);
        expect(watts).toBeGreaterThanOrEqual(justBelowTrip - 1e-9);
      }),
    );
  });

  test('a supply that limits below the trip is worst at its limit, and never trips', () => {
    const heat = worstFaultHeat({ volts: 15, ohms: 0.5, limit: 2 }, 3);
    expect(heat).toMatchObject({ atAmps: 2, watts: 28, justBelowTrip: 0 });
    expect(heat.working).toEqual(
      working(
        'fault-heat',
        28,
        'W',
        [
          ['volts', 15, 'V'],
          ['loop-ohms', 0.5, 'ohm'],
          ['trip', 3, 'A'],
          ['worst-amps', 2, 'A'],
        ],
        ['own-derivation'],
      ),
    );
    expect(worstFaultHeat({ volts: 15, ohms: 0.5, limit: 3 }, 3).justBelowTrip, 'one that limits just there').toBe(
      3 * (15 - 1.5),
    );
  });

  test('without resistance it is all the power up to the trip', () => {
    expect(worstFaultHeat({ volts: 14, ohms: 0 }, 5)).toMatchObject({ watts: 70, atAmps: 5, justBelowTrip: 70 });
  });
});

describe('the harmless test with a resistor', () => {
  test('15.0 V open and 13.5 V across 10 ohm: 1.35 A, a loop of 1.11 ohm, 13.5 A into a short', () => {
    const result = shortFromLoadTest({ open: 15, loaded: 13.5, ohms: 10 });
    expect(result.kind).toBe('measured');
    if (result.kind !== 'measured') return;
    near(result.loadAmps, 1.35, 1e-12);
    near(result.ohms, 1.111, 0.001);
    near(result.amps, 13.5, 1e-9);
    near(result.least, (1.35 * 15) / 1.6, 1e-9);
    near(result.most ?? 0, (1.35 * 15) / 1.4, 1e-9);
    expect(result.working).toMatchObject({ formula: 'load-test', value: result.amps });
  });

  test('finds again the loop that it was taken behind', () => {
    fc.assert(
      fc.property(volts, ohms, fc.constantFrom(...OHMS), (v, r, resistor) => {
        const loaded = loadedVolts({ volts: v, ohms: r }, resistor);
        const result = shortFromLoadTest({ open: v, loaded, ohms: resistor }, 1e-6);
        expect(result.kind).toBe('measured');
        if (result.kind !== 'measured') return;
        near(result.amps / (v / r), 1, 1e-9);
        near(result.ohms / r, 1, 1e-9);
      }),
    );
  });

  test('a meter that reads a tenth too high shows the same loop', () => {
    const right = shortFromLoadTest({ open: 15, loaded: 13, ohms: 10 });
    const high = shortFromLoadTest({ open: 16.5, loaded: 14.3, ohms: 10 });
    expect([right.kind, high.kind]).toEqual(['measured', 'measured']);
    if (right.kind === 'measured' && high.kind === 'measured') near(high.ohms, right.ohms, 1e-12);
  });

  test('a drop near the step of the meter has no upper end', () => {
    const result = shortFromLoadTest({ open: 15, loaded: 14.92, ohms: 10 });
    expect(result.kind).toBe('measured');
    if (result.kind === 'measured') {
      expect(result.most).toBeUndefined();
      expect(result.least).toBeLessThan(result.amps);
    }
  });

  test.each([
    [{ open: 15, loaded: 15, ohms: 10 }, 'no-drop', ['open', 'loaded']],
    [{ open: 15, loaded: 16, ohms: 10 }, 'no-drop', ['open', 'loaded']],
    [{ open: 15, loaded: 0, ohms: 10 }, 'no-volts', ['loaded']],
    [{ open: 0, loaded: 0, ohms: 10 }, 'no-volts', ['open']],
    [{ open: 15, loaded: 14, ohms: 0 }, 'not-a-number', ['ohms']],
    [{ open: Number.NaN, loaded: -1, ohms: 10 }, 'not-a-number', ['open', 'loaded']],
  ] as const)('%j has no answer: %s', (reading, because, parts) => {
    expect(shortFromLoadTest(reading)).toEqual({ kind: 'no-solution', because, parts });
  });
});

describe('the least reading', () => {
  test('is where the short just has its margin', () => {
    fc.assert(
      fc.property(volts, trips, fc.constantFrom(...OHMS), (v, trip, resistor) => {
        const result = shortFromLoadTest(
          { open: v, loaded: leastLoadedVolts(v, trip, resistor), ohms: resistor },
          1e-9,
        );
        expect(result.kind).toBe('measured');
        if (result.kind === 'measured') near(result.amps, 1.5 * trip, 1e-6);
      }),
    );
  });
});

describe('a breaker under its stage of 5 A and 0.1 s', () => {
  const stage = { trip: 5, seconds: 0.1 };
  test.each([
    [3, 0.01, 'well-graded', false],
    [3.5, 0.03, 'well-graded', false],
    [4, 0.01, 'not-lower', false],
    [3, 0.15, 'not-faster', false],
    [3, 0.05, 'not-faster', false],
    [5, 0.5, 'neither', false],
    [3, 0.001, 'well-graded', true],
  ] as const)('%d A and %d s: %s', (trip, seconds, finding, tripsOnInrush) => {
    expect(gradeBreaker({ trip, seconds }, stage)).toMatchObject({
      finding,
      tripsOnInrush,
      tripAtMost: 3.5,
      leftForOthers: 1.5,
    });
  });

  test('has to beat a stage that is faster than usual', () => {
    expect(gradeBreaker({ trip: 3.5, seconds: 0.02 }, { trip: 5, seconds: 0.1 }).finding, 'just at the share').toBe(
      'well-graded',
    );
    const grading = gradeBreaker({ trip: 2, seconds: 0.02 }, { trip: 5, seconds: 0.015 });
    expect(grading).toMatchObject({ finding: 'not-faster', seconds: { from: 0.005, to: 0.015 } });
  });

  test('is no quicker than a stage that takes just as long', () => {
    expect(gradeBreaker({ trip: 3, seconds: 0.02 }, { trip: 5, seconds: 0.02 }).finding).toBe('not-faster');
  });

  test('that takes just the 5 ms of the inrush does not trip on it', () => {
    expect(gradeBreaker({ trip: 3, seconds: 0.005 }, stage).tripsOnInrush).toBe(false);
  });
});

describe('a short behind a breaker of 3.5 A and 20 ms, under a unit of 5 A and 300 ms, with 1.5 A drawn elsewhere', () => {
  const row = { breaker: { trip: 3.5, seconds: 0.02 }, unit: { trip: 5, seconds: 0.3 }, others: 1.5 };

  test.each([
    ['is clean: the breaker opens, and the unit stays', 8, row, 'breaker', 0.02],
    ['is poor, and the breaker alone sees it', 3.6, { ...row, others: 1 }, 'breaker', 0.02],
    ['is too poor for both: nothing opens', 3, row, 'nothing', undefined],
    [
      'is poor, and the breaker is set as high as the unit: the unit sees the other trains too, and opens',
      4,
      { ...row, breaker: { trip: 5, seconds: 0.02 } },
      'unit',
      0.3,
    ],
    [
      'is clean, and the breaker is as slow as the unit: either',
      8,
      { ...row, breaker: { trip: 3.5, seconds: 0.3 } },
      'either',
      0.3,
    ],
    [
      'is clean, and the breaker is slower than the unit: the unit opens',
      8,
      { ...row, breaker: { trip: 3.5, seconds: 0.5 }, unit: { trip: 5, seconds: 0.1 } },
      'unit',
      0.1,
    ],
    [
      'is seen by the breaker alone, and the unit would be quicker: the breaker opens, in its own time',
      4,
      { breaker: { trip: 3.5, seconds: 0.5 }, unit: { trip: 6, seconds: 0.1 }, others: 1 },
      'breaker',
      0.5,
    ],
    [
      'draws no more than each of the two carries for good: nothing opens',
      3.5,
      { ...row, others: 1.5 },
      'nothing',
      undefined,
    ],
    [
      'is clean, and the unit takes just twice as long: the breaker opens',
      8,
      { ...row, breaker: { trip: 3.5, seconds: 0.1 }, unit: { trip: 5, seconds: 0.2 } },
      'breaker',
      0.1,
    ],
    [
      'is clean, and the breaker takes just twice as long: the unit opens',
      8,
      { ...row, breaker: { trip: 3.5, seconds: 0.2 }, unit: { trip: 5, seconds: 0.1 } },
      'unit',
      0.1,
    ],
  ] as const)('%s', (_, amps, given, opens, seconds) => {
    expect(openedBy(amps, given)).toMatchObject({ opens, seconds });
  });

  test('a breaker set to its grading opens first on every short that the unit sees for the trains in that part alone', () => {
    fc.assert(
      fc.property(trips, spread(0.01, 30), (trip, amps) => {
        const unit = { trip, seconds: 0.3 };
        const breaker = { trip: gradeBreaker({ trip, seconds: 0.02 }, unit).tripAtMost, seconds: 0.02 };
        const others = 0.99 * gradeBreaker(breaker, unit).leftForOthers;
        expect(openedBy(amps, { breaker, unit, others }).opens).not.toBe('unit');
      }),
    );
  });
});

describe('the trip current', () => {
  test.each([
    ['h0', 3, 'usual'],
    ['h0', 5, 'above-usual'],
    ['h0', 8, 'above-ceiling'],
    ['n', 3, 'usual'],
    ['n', 5, 'above-ceiling'],
    ['z', 2, 'above-usual'],
    ['1', 10, 'above-usual'],
    ['1', 1, 'usual'],
  ] as const)('scale %s with %d A: %s', (scale, trip, finding) => {
    expect(tripLevel(scale, trip).finding).toBe(finding);
  });
});

describe('where the coin test fails', () => {
  // 14 V; the loop rises evenly from 1 ohm at the stage to 5 ohm at 8 m.
  const even: ShortAlong = {
    kind: 'along',
    volts: 14,
    limit: Number.POSITIVE_INFINITY,
    faultOhms: 0,
    pieces: [
      { from: 0, to: 3, constant: 1, linear: 1.5, square: 0 },
      { from: 3, to: 8, constant: 2.5, linear: 2.5, square: 0 },
    ],
    points: [],
    weakest: { at: 8, amps: 2.8, ohms: 5 },
  };

  test('3 A: close from where 4.5 A are no longer reached, dead from where 3 A are not', () => {
    const stretches = weakStretches(even, 3);
    expect(stretches.map(({ finding }) => finding)).toEqual(['close', 'does-not-trip']);
    allNear(
      stretches.flatMap(({ from, to }) => [from, to]),
      [2 * (14 / 4.5 - 1), 2 * (14 / 3 - 1), 2 * (14 / 3 - 1), 8],
      1e-12,
    );
  });

  test('a weak protection trips everywhere, a strong one nowhere', () => {
    expect(weakStretches(even, 1)).toEqual([]);
    expect(weakStretches(even, 20)).toEqual([{ from: 0, to: 8, finding: 'does-not-trip' }]);
  });

  test('the resistance of the short itself counts', () => {
    const dirty = weakStretches({ ...even, faultOhms: 1 }, 3);
    near(dirty[0]?.from ?? Number.NaN, 2 * (14 / 4.5 - 2), 1e-12);
  });

  test('a supply that holds at 4 A leaves only the wires to judge, at 3 A all of it is dead', () => {
    expect(weakStretches({ ...even, limit: 4 }, 3)).toEqual(weakStretches(even, 3));
    expect(weakStretches({ ...even, limit: 3 }, 3)).toEqual([{ from: 0, to: 8, finding: 'does-not-trip' }]);
    const hump = [{ from: 0, to: 8, constant: 1, linear: 7, square: -7 }];
    expect(weakStretches({ ...even, pieces: hump, limit: 3 }, 3)).toEqual([
      { from: 0, to: 8, finding: 'does-not-trip' },
    ]);
  });

  test('a dead middle between two parts that trip only just is told in order of place', () => {
    // 2 + 14 t (1 - t) ohm over 10 m: 14 V drive less than 7 A everywhere, 3 A where it is above 14/3 ohm.
    const middle = { ...even, pieces: [{ from: 0, to: 10, constant: 2, linear: 14, square: -14 }] };
    const told = weakStretches(middle, 3);
    expect(told.map(({ finding }) => finding)).toEqual(['close', 'does-not-trip', 'close']);
    for (const [i, one] of told.entries()) near(one.from, told[i - 1]?.to ?? one.from, 1e-9);
  });

  test('a hump between two feeders is found with both its ends', () => {
    // 1 + 7 t (1 - t) ohm over 10 m: above 2 ohm between the roots of 7 t^2 - 7 t + 1, nowhere above 3 ohm.
    const hump = { ...even, pieces: [{ from: 0, to: 10, constant: 1, linear: 7, square: -7 }] };
    const [found, ...more] = weakStretches(hump, 14 / 3);
    expect(more).toEqual([]);
    expect(found?.finding).toBe('close');
    near(found?.from ?? Number.NaN, 5 - (10 * Math.sqrt(21)) / 14, 1e-9);
    near(found?.to ?? Number.NaN, 5 + (10 * Math.sqrt(21)) / 14, 1e-9);
  });

  test('every place inside draws too little and every place outside enough', () => {
    const parts = fc.array(
      fc.record({
        constant: spread(0.2, 4),
        linear: spread(-3, 6),
        square: spread(-3, 0),
      }),
      { minLength: 1, maxLength: 5 },
    );
    fc.assert(
      fc.property(parts, trips, (shapes, trip) => {
        const pieces = shapes.map((shape, i) => ({ ...shape, from: i, to: i + 1 }));
        const stretches = weakStretches({ ...even, pieces }, trip);
        for (const [i, { constant, linear, square }] of shapes.entries()) {
          for (let t = 0.05; t < 1; t += 0.1) {
            const loop = constant + linear * t + square * t * t;
            const finding = tripFinding(loop > 0 ? 14 / loop : Number.POSITIVE_INFINITY, trip);
            const inside = stretches.find(({ from, to }) => from <= i + t && i + t <= to);
            expect(inside?.finding ?? 'trips').toBe(finding);
          }
        }
      }),
      { numRuns: 500 },
    );
  });
});

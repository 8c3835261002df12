// The demand against published values, exact values computed apart, a brute-force twin and a simulation.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DemandInput } from '../../src/engine/power/demand.ts';
import { chanceAbove, constant, demand, even, quantile, summarise } from '../../src/engine/power/demand.ts';
import type { Draw } from '../../src/engine/power/kernels.ts';
import { allNear, near } from '../near.ts';
import { onceATest } from '../once-a-test.ts';
import { independent, movers } from '../samples.ts';
import { seeded } from '../seeded.ts';
import { spread } from '../spread.ts';
import { asList, bruteForce } from './brute-force.ts';

describe('on-off consumers of 1 A follow the Poisson-binomial law', () => {
  // Published: values of Hong's R package poibin (Y. Hong, CSDA 59 (2013) 41-51), as listed by the tests of its port to
  // Python, github.com/tsakim/poibin, test_poibin.py. Tolerance there 1e-8.
  const EIGHT = [0.9955901, 0.5696224, 0.8272597, 0.3818746, 0.4290036, 0.8707646, 0.8858267, 0.7557183];

  test('three chances (poibin): the whole table', () => {
    const { mass } = demand(independent([0.4163448, 0.334027, 0.9689613]));
    allNear(mass, [0.0120647, 0.39129134, 0.46189012, 0.13475384], 1e-8);
  });

  test('eight chances (poibin): none, two, seven and all of them', () => {
    const { mass } = demand(independent(EIGHT));
    near(mass[0] ?? Number.NaN, 4.17079659e-7, 1e-8);
    near(mass[2] ?? Number.NaN, 2.46250608e-3, 1e-8);
    near(mass[7] ?? Number.NaN, 0.202460933, 1e-8);
    near(mass[8] ?? Number.NaN, 0.0448023378, 1e-8);
  });

  test('the far end keeps its relative accuracy: none of eight to nine digits', () => {
    const none = EIGHT.reduce((product, chance) => product * (1 - chance), 1);
    near((demand(independent(EIGHT)).mass[0] ?? Number.NaN) / none, 1, 1e-12);
  });

  test('.1 .5 .7 (poibin): at most none, one, two', () => {
    const distribution = demand(independent([0.1, 0.5, 0.7]));
    allNear(
      [0, 1, 2].map((most) => 1 - chanceAbove(distribution, most)),
      [0.135, 0.6, 0.965],
      1e-8,
    );
  });

  test.each([
    { chances: [0.3, 0.8, 0.3], table: [0.098, 0.476, 0.354, 0.072] },
    { chances: [0.2, 0.5], table: [0.4, 0.5, 0.1] },
  ])('$chances (poibin)', ({ chances, table }) => {
    allNear(demand(independent(chances)).mass, table, 1e-8);
  });

  test('.1 to .5, each twice: computed with exact rationals, not published', () => {
    const { mass } = demand(independent([0.1, 0.1, 0.2, 0.2, 0.3, 0.3, 0.4, 0.4, 0.5, 0.5]));
    const table = [
      0.02286144, 0.11231136, 0.23694372, 0.28171848, 0.20829484, 0.09968032, 0.03113484, 0.00623848, 0.00076372,
      0.00005136, 0.00000144,
    ];
    allNear(mass, table, 1e-12);
  });

  test('.9 .5 .5 .2: computed, not published; mean and variance by the sums of p and p(1 - p)', () => {
    const distribution = demand(independent([0.9, 0.5, 0.5, 0.2]));
    allNear(distribution.mass, [0.02, 0.225, 0.435, 0.275, 0.045], 1e-12);
    const { mean, deviation } = summarise(distribution);
    near(mean, 2.1, 1e-12);
    near(deviation ** 2, 0.75, 1e-12);
  });

  // The binomial limit is a test of JuliaStats/Distributions.jl, test/poissonbinomial.jl, with the same chances.
  test.each([
    { chance: 0.8, count: 6 },
    { chance: 0.5, count: 10 },
    { chance: 0.04, count: 20 },
  ])('$count with equal chances of $chance are binomial', ({ chance, count }) => {
    const table = Array.from(
      { length: count + 1 },
      (_, k) => ways(count, k) * chance ** k * (1 - chance) ** (count - k),
    );
    allNear(demand(independent(Array.from({ length: count }, () => chance))).mass, table, 1e-12);
  });
});

function ways(n: number, k: number): number {
  return k === 0 ? 1 : (ways(n - 1, k - 1) * n) / k;
}

describe('a small fleet: computed with exact rationals, not published', () => {
  const locomotive: Draw = {
    kind: 'states',
    states: [
      { current: 0.05, probability: 0.3 },
      { current: 0.4, probability: 0.5 },
      { current: 0.8, probability: 0.2 },
    ],
  };
  const coach: Draw = {
    kind: 'states',
    states: [
      { current: 0, probability: 0.1 },
      { current: 0.1, probability: 0.9 },
    ],
  };
  const turnout: Draw = {
    kind: 'states',
    states: [
      { current: 0, probability: 0.98 },
      { current: 1, probability: 0.02 },
    ],
  };
  const distribution = onceATest(() =>
    demand({
      trains: [],
      moving: 0,
      fixed: [
        { count: 5, draw: locomotive },
        { count: 6, draw: coach },
        { count: 3, draw: turnout },
      ],
    }),
  );

  test('mean, variance and extremes', () => {
    const { mean, deviation, least, most } = summarise(distribution());
    near(mean, 2.475, 1e-12);
    near(deviation ** 2, 0.404825, 1e-12);
    near(least, 0.25, 1e-12);
    near(most, 7.6, 1e-12);
  });

  test.each([
    [0.5, 2.5],
    [0.9, 3.35],
    [0.95, 3.55],
    [0.99, 4.1],
    [0.999, 4.8],
  ])('the %d point is %d A', (q, amperes) => {
    near(quantile(distribution(), q), amperes, 1e-9);
  });

  test.each([
    [3, 0.1866891451086],
    [3.5, 0.0523382307651],
    [4, 0.0132808519099],
    [4.5, 0.00222713659784],
    [5, 0.00040756870499752],
  ])('%d A is passed in %d of moments', (limit, chance) => {
    near(chanceAbove(distribution(), limit) / chance, 1, 1e-10);
  });
});

describe('against every case counted one by one', () => {
  const STEP = 0.25;
  const amperes = fc.integer({ min: 0, max: 5 }).map((cells) => cells * STEP);
  const draw: fc.Arbitrary<Draw> = fc.oneof(
    amperes.map((current) => constant(current)),
    fc.array(fc.tuple(amperes, fc.integer({ min: 1, max: 6 })), { minLength: 1, maxLength: 2 }).map((states): Draw => {
      const sum = states.reduce((total, [, weight]) => total + weight, 0);
      return { kind: 'states', states: states.map(([current, weight]) => ({ current, probability: weight / sum })) };
    }),
  );
  const fleets: fc.Arbitrary<DemandInput> = fc
    .tuple(
      fc.array(
        fc.record({
          count: fc.integer({ min: 1, max: 3 }),
          running: draw,
          standing: draw,
          alwaysMoving: fc.boolean(),
        }),
        { minLength: 1, maxLength: 2 },
      ),
      fc.array(fc.record({ count: fc.constant(1), draw }), { maxLength: 1 }),
      fc.constantFrom(1, 0.5, 0.3),
      spread(0, 1),
    )
    .map(([trains, fixed, share, busy]) => {
      const always = trains.reduce((sum, group) => sum + (group.alwaysMoving ? group.count : 0), 0);
      const all = trains.reduce((sum, group) => sum + group.count, 0);
      return { trains, fixed, share, step: STEP, moving: always + Math.round(busy * (all - always)) };
    });

  test('up to seven consumers, any number moving, here or in the other district', () => {
    fc.assert(
      fc.property(fleets, (input) => {
        const { mass } = demand(input);
        const counted = bruteForce(input);
        expect(Math.max(...counted.keys())).toBeLessThan(mass.length);
        allNear(mass, asList(counted, mass.length), 1e-12, 'cell');
      }),
      { numRuns: 150 },
    );
  });

  test.each([0, 1, 2, 3, 4, 5, 6, 7])('%i of seven unlike trains moving, a third of them here', (moving) => {
    const train = (running: number, standing: number, count: number) => ({
      count,
      running: {
        kind: 'states',
        states: [
          { current: running, probability: 0.25 },
          { current: 2 * running, probability: 0.75 },
        ],
      } as const,
      standing: constant(standing),
    });
    const input = { trains: [train(0.5, 0.25, 3), train(1.25, 0, 4)], moving, fixed: [], share: 1 / 3, step: STEP };
    const { mass } = demand(input);
    allNear(mass, asList(bruteForce(input), mass.length), 1e-12, 'cell');
  });

  test('an even spread is the mean of many single currents, each split between its neighbours on the grid', () => {
    fc.assert(
      fc.property(spread(0, 1), spread(0.01, 1.5), (from, width) => {
        const points = 4000;
        const expected = new Map<number, number>();
        for (let i = 0; i < points; i++) {
          const place = (from + ((i + 0.5) / points) * width) / STEP;
          const over = place - Math.floor(place);
          const add = (cell: number, weight: number) => expected.set(cell, (expected.get(cell) ?? 0) + weight / points);
          add(Math.floor(place), 1 - over);
          add(Math.floor(place) + 1, over);
        }
        const { mass } = demand(movers(1, 1, { from, to: from + width }, STEP));
        allNear(mass, asList(expected, mass.length), 1e-3, 'cell');
      }),
      { numRuns: 50 },
    );
  });
});

describe('against a simulation of 40 trains, 12 of them moving', () => {
  const DRAWS = 200_000;
  const input: DemandInput = {
    trains: [
      { count: 28, running: even(0.2, 0.5), standing: constant(0.04) },
      { count: 12, running: even(0.5, 1), standing: constant(0.04) },
    ],
    moving: 12,
    fixed: [{ count: 6, draw: even(0.05, 0.2) }],
  };
  const exact = onceATest(() => demand(input));
  const totals = simulate(DRAWS, seeded(20_240_101));

  test('the mean agrees within four standard errors', () => {
    const mean = totals.reduce((sum, total) => sum + total, 0) / DRAWS;
    near(mean, summarise(exact()).mean, 4 * (summarise(exact()).deviation / Math.sqrt(DRAWS)), 'mean in A');
  });

  test.each([6, 7, 8, 9])('the chance of passing %i A agrees within four standard errors', (limit) => {
    const chance = chanceAbove(exact(), limit);
    const seen = totals.filter((total) => total > limit).length / DRAWS;
    expect(chance).toBeGreaterThan(1e-4);
    near(seen, chance, 4 * Math.sqrt((chance * (1 - chance)) / DRAWS), `above ${limit} A`);
  });
});

function simulate(draws: number, random: () => number): Float64Array {
  const order = Array.from({ length: 40 }, (_, i) => i);
  return Float64Array.from({ length: draws }, () => {
    let total = 28 * 0.04;
    for (let i = 0; i < 12; i++) {
      const other = i + Math.floor(random() * (40 - i));
      const train = order[other] ?? 0;
      order[other] = order[i] ?? 0;
      order[i] = train;
      total += train < 28 ? 0.2 + 0.3 * random() : 0.5 + 0.5 * random();
    }
    for (let coach = 0; coach < 6; coach++) total += 0.05 + 0.15 * random();
    return total;
  });
}

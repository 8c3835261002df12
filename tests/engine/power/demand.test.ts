import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DemandInput, TrainGroup } from '../../../src/engine/power/demand.ts';
import {
  chanceAbove,
  constant,
  demand,
  demandRows,
  even,
  gather,
  histogram,
  isAbove,
  MOST_CONSUMERS,
  meanOf,
  quantile,
  summarise,
} from '../../../src/engine/power/demand.ts';
import type { Draw } from '../../../src/engine/power/kernels.ts';
import { allNear, near } from '../../near.ts';
import { movers, onOff } from '../../samples.ts';
import { spread } from '../../spread.ts';
import { mixed } from './mixed.ts';

const COARSE = 0.05;

/** A draw that never goes below `least` grid cells: one current, an even spread, or some states. */
const drawFrom = (least: number): fc.Arbitrary<Draw> =>
  fc.oneof(
    fc.integer({ min: least, max: least + 8 }).map((cells) => constant(cells * COARSE)),
    fc
      .tuple(fc.integer({ min: least, max: least + 5 }), spread(0.02, 0.4))
      .map(([cells, spread]) => even(cells * COARSE, cells * COARSE + spread)),
    fc
      .array(fc.tuple(fc.integer({ min: least, max: least + 8 }), fc.integer({ min: 1, max: 9 })), {
        minLength: 1,
        maxLength: 3,
      })
      .map((states): Draw => {
        const sum = states.reduce((total, [, weight]) => total + weight, 0);
        return {
          kind: 'states',
          states: states.map(([cells, weight]) => ({ current: cells * COARSE, probability: weight / sum })),
        };
      }),
  );

/** Trains that never draw more standing than running. */
const trainGroup: fc.Arbitrary<TrainGroup> = fc
  .tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 1, max: 4 }))
  .chain(([standing, count]) =>
    fc.record({
      count: fc.constant(count),
      running: drawFrom(standing),
      standing: fc.constant(constant(standing * COARSE)),
    }),
  );

const layouts: fc.Arbitrary<DemandInput> = fc
  .tuple(
    fc.array(trainGroup, { minLength: 1, maxLength: 3 }),
    fc.array(fc.record({ count: fc.integer({ min: 1, max: 3 }), draw: drawFrom(0) }), { maxLength: 2 }),
    fc.constantFrom(1, 0.5, 0.35),
    spread(0, 1),
  )
  .map(([trains, fixed, share, busy]) => ({
    trains,
    fixed,
    share,
    step: COARSE,
    moving: Math.round(busy * trains.reduce((sum, group) => sum + group.count, 0)),
  }));

const trainsOf = (input: DemandInput): number => input.trains.reduce((sum, group) => sum + group.count, 0);

function analyticMean(input: DemandInput): number {
  const moves = input.moving / trainsOf(input);
  const trains = input.trains.reduce(
    (sum, { count, running, standing }) => sum + count * (moves * meanOf(running) + (1 - moves) * meanOf(standing)),
    0,
  );
  const fixed = input.fixed.reduce((sum, { count, draw }) => sum + count * meanOf(draw), 0);
  return (input.share ?? 1) * (trains + fixed);
}

describe('whatever stands on the track', () => {
  test('the chances add up to one, and none is negative', () => {
    fc.assert(
      fc.property(layouts, (input) => {
        const { mass } = demand(input);
        near(
          mass.reduce((sum, chance) => sum + chance, 0),
          1,
          1e-9,
          'sum of chances',
        );
        expect(mass.every((chance) => chance >= 0)).toBe(true);
      }),
    );
  });

  test('the mean of the distribution is the sum of the means', () => {
    fc.assert(
      fc.property(layouts, (input) => near(summarise(demand(input)).mean, analyticMean(input), 1e-9, 'mean in A')),
    );
  });

  test('the 50, 95 and 99 % points are in order between the least and the most', () => {
    fc.assert(
      fc.property(layouts, (input) => {
        const { least, p50, p95, p99, most } = summarise(demand(input));
        const points = [least, p50, p95, p99, most];
        expect(points).toEqual([...points].sort((a, b) => a - b));
      }),
    );
  });

  test('a higher limit is never passed more often', () => {
    fc.assert(
      fc.property(layouts, fc.array(spread(0, 12), { minLength: 2 }), (input, limits) => {
        const distribution = demand(input);
        const chances = limits.sort((a, b) => a - b).map((limit) => chanceAbove(distribution, limit));
        for (const [i, chance] of chances.entries()) expect(chance).toBeLessThanOrEqual(chances[i - 1] ?? 1);
      }),
    );
  });

  const neverLower = (before: DemandInput, after: DemandInput): void => {
    const [fewer, more] = [demand(before), demand(after)];
    for (let limit = 0; limit < 6; limit += 0.2) {
      expect(chanceAbove(more, limit)).toBeGreaterThanOrEqual(chanceAbove(fewer, limit) - 1e-9);
    }
  };

  test('one more train that runs too never lowers the chance of passing any limit', () => {
    fc.assert(
      fc.property(layouts, trainGroup, (input, another) =>
        neverLower(input, {
          ...input,
          trains: [...input.trains, { ...another, count: 1 }],
          moving: input.moving + 1,
        }),
      ),
    );
  });

  test('one more parked train of the same kind never lowers it either', () => {
    fc.assert(
      fc.property(trainGroup, spread(0, 1), (group, busy) => {
        const before = { trains: [group], moving: Math.round(busy * group.count), fixed: [], step: COARSE };
        neverLower(before, { ...before, trains: [{ ...group, count: group.count + 1 }] });
      }),
    );
  });

  test('one more lit coach never lowers it', () => {
    fc.assert(
      fc.property(layouts, drawFrom(0), (input, draw) =>
        neverLower(input, { ...input, fixed: [...input.fixed, { count: 1, draw }] }),
      ),
    );
  });

  test('the order in which the groups are told makes no difference', () => {
    fc.assert(
      fc.property(layouts, (input) => {
        const told = demand(input);
        const turned = demand({ ...input, trains: [...input.trains].reverse(), fixed: [...input.fixed].reverse() });
        for (let limit = 0; limit < 6; limit += 0.2) {
          near(chanceAbove(turned, limit), chanceAbove(told, limit), 1e-12, `above ${limit} A`);
        }
      }),
    );
  });

  test('all numbers of movers at once give what each gives alone', () => {
    fc.assert(
      fc.property(layouts, (input) => {
        const rows = demandRows({ ...input, moving: 0 }, 0, trainsOf(input));
        expect(rows).toHaveLength(trainsOf(input) + 1);
        for (const [moving, row] of rows.entries()) {
          const alone = demand({ ...input, moving });
          for (let limit = 0; limit < 6; limit += 0.5) {
            near(chanceAbove(row, limit), chanceAbove(alone, limit), 1e-12, `${moving} moving, above ${limit} A`);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  test.each([1, 0.3])(
    'trains told as one group or as many groups of one are the same, a share of %d of them here',
    (share) => {
      const train = { running: even(0.2, 0.5), standing: even(0, 0.1) };
      const fixed = [{ count: 2, draw: even(0.05, 0.15) }];
      const told = (groups: readonly number[]) =>
        demand({ trains: groups.map((count) => ({ ...train, count })), moving: 4, fixed, share });
      const apart = told([1, 1, 1, 1, 1, 1]);
      for (const groups of [[6], [2, 4], [6, 0]]) allNear(told(groups).mass, [...apart.mass], 1e-14, 'cell');
    },
  );
});

describe('trains that always move', () => {
  test('are among the movers: with two of three always moving, two movers are these two', () => {
    const distribution = demand({
      trains: [
        { count: 2, running: constant(1), standing: constant(0), alwaysMoving: true },
        { count: 1, running: constant(5), standing: constant(0) },
      ],
      moving: 2,
      fixed: [],
      step: 1,
    });
    expect([...distribution.mass]).toEqual([0, 0, 1]);
  });
});

describe('trains whose standing draw is spread too', () => {
  const running = even(0.3, 1);
  const standing = even(0, 0.2);

  test.each([0, 1, 3, 5, 6])('draw like so many lamps of each kind: %i of six run, the others stand', (moving) => {
    const trains = demand({ trains: [{ count: 6, running, standing }], moving, fixed: [] });
    const lamps = demand({
      trains: [],
      moving: 0,
      fixed: [
        { count: moving, draw: running },
        { count: 6 - moving, draw: standing },
      ],
    });
    allNear(trains.mass, [...lamps.mass], 1e-14, 'cell');
  });

  test('with two of five moving it may be any two of the unlike ones', () => {
    const [hungry, hungryStanding] = [even(1, 2), even(0.1, 0.4)];
    const told = demand({
      trains: [
        { count: 2, running, standing },
        { count: 3, running: hungry, standing: hungryStanding },
      ],
      moving: 2,
      fixed: [],
    });
    const withMovers = (modest: number) =>
      demand({
        trains: [],
        moving: 0,
        fixed: [
          { count: modest, draw: running },
          { count: 2 - modest, draw: standing },
          { count: 2 - modest, draw: hungry },
          { count: 1 + modest, draw: hungryStanding },
        ],
      });
    const both = mixed([
      { probability: 0.3, distribution: withMovers(0) },
      { probability: 0.6, distribution: withMovers(1) },
      { probability: 0.1, distribution: withMovers(2) },
    ]);
    for (let limit = 0.1; limit < 5; limit += 0.1) {
      near(chanceAbove(told, limit), chanceAbove(both, limit), 1e-12, `above ${limit} A`);
    }
  });
});

describe('reading a distribution', () => {
  const distribution = { step: 0.5, mass: Float64Array.of(0.5, 0.3, 0.15, 0.05) };

  test('passing a limit means more than it, not just as much', () => {
    near(chanceAbove(distribution, 1), 0.05, 1e-15);
    near(chanceAbove(distribution, 0.999), 0.2, 1e-15);
    expect(chanceAbove(distribution, 1.5)).toBe(0);
    expect(chanceAbove(distribution, -1)).toBe(1);
  });

  test('of a spread draw half of the moments in the cell at the limit are above it', () => {
    const spread = { ...distribution, spread: true };
    near(chanceAbove(spread, 1), 0.05 + 0.15 / 2, 1e-15);
    near(chanceAbove(spread, 1.125), 0.05 + 0.15 / 4, 1e-15);
    near(chanceAbove(spread, 1.25), 0.05, 1e-15);
  });

  test('a single current just at the limit is no overload, a spread one around it is one half of the time', () => {
    const fixed = (draw: Draw) => demand({ trains: [], moving: 0, fixed: [{ count: 1, draw }] });
    expect(chanceAbove(fixed(constant(2)), 2)).toBe(0);
    near(chanceAbove(fixed(even(1.5, 2.5)), 2), 0.5, 1e-12);
  });

  test('a percentage point is the least current that so many moments keep', () => {
    expect([0.4, 0.5, 0.51, 0.8, 0.95, 0.99].map((q) => quantile(distribution, q))).toEqual([0, 0, 0.5, 0.5, 1, 1.5]);
  });

  test('mean and spread are those of the table', () => {
    const { mean, deviation, least, most } = summarise(distribution);
    near(mean, 0.375, 1e-15);
    near(deviation, Math.sqrt(0.3 * 0.25 + 0.15 + 0.05 * 2.25 - 0.375 ** 2), 1e-12);
    expect([least, most]).toEqual([0, 1.5]);
  });

  test('least and most are what is drawn at all', () => {
    expect(summarise({ step: 0.5, mass: Float64Array.of(0, 0.5, 0.5, 0) })).toMatchObject({ least: 0.5, most: 1 });
  });

  test('bars hold every moment, and a current on an edge belongs to the lower bar', () => {
    const bars = histogram(distribution, 1);
    expect(bars.map(({ from, to }) => [from, to])).toEqual([
      [0, 1],
      [1, 2],
    ]);
    allNear(
      bars.map(({ probability }) => probability),
      [0.95, 0.05],
      1e-12,
    );
  });

  test('bars half an ampere wide end where the next begins', () => {
    const bars = histogram({ step: 0.5, mass: Float64Array.of(0, 0, 0.25, 0.5, 0.25) }, 0.5);
    expect(bars).toEqual([
      { from: 0.5, to: 1, probability: 0.25 },
      { from: 1, to: 1.5, probability: 0.5 },
      { from: 1.5, to: 2, probability: 0.25 },
    ]);
  });

  test('a cell of a spread draw belongs to all bars that it reaches into, and nothing lies below 0', () => {
    // Cells of 1 A around 0, 1 and 2 A: half of the first is below nothing and stays in the first bar.
    const bars = histogram({ step: 1, mass: Float64Array.of(0.2, 0.4, 0.4), spread: true }, 0.75);
    allNear(
      bars.map(({ probability }) => probability),
      [0.2 + 0.4 * 0.25, 0.4 * 0.75, 0.4 * 0.75, 0.4 * 0.25],
      1e-12,
    );
  });

  test('bars in between that hold nothing are there with nothing', () => {
    const apart = { step: 1, mass: Float64Array.of(0.5, 0, 0, 0.5) };
    expect(histogram(apart, 1).map(({ probability }) => probability)).toEqual([0.5, 0, 0.5]);
  });
});

describe('what cannot be reckoned with is refused by name', () => {
  const good = movers(3, 2, { from: 0.2, to: 0.5 });
  const train = (more: Partial<TrainGroup>): DemandInput => ({
    ...good,
    trains: [{ count: 3, running: even(0.2, 0.5), standing: constant(0), ...more }],
  });
  const cases: readonly (readonly [string, DemandInput, string])[] = [
    ['half a train', train({ count: 2.5 }), '2.5'],
    ['fewer than no trains', train({ count: -1 }), '-1'],
    ['a number of trains that is none', train({ count: Number.NaN }), 'NaN'],
    ['10 000 trains', train({ count: 10_000 }), String(MOST_CONSUMERS)],
    ['a negative current', train({ running: even(-0.1, 0.5) }), '-0.1'],
    ['a billion amperes', train({ running: constant(1e9) }), '1000000000'],
    ['a current that is no number', train({ standing: constant(Number.NaN) }), 'NaN'],
    ['a span that runs backwards', train({ running: even(0.5, 0.2) }), 'backwards'],
    [
      'chances that do not add up',
      train({ running: { kind: 'states', states: [{ current: 1, probability: 0.4 }] } }),
      '0.4',
    ],
    ['more moving than there are', { ...good, moving: 4 }, '4 moving'],
    ['half a train moving', { ...good, moving: 1.5 }, '1.5'],
    ['fewer moving than always move', { ...train({ alwaysMoving: true }), moving: 2 }, '3 always move'],
    ['a share of nothing', { ...good, share: 0 }, 'share 0'],
    ['a share of more than all', { ...good, share: 1.2 }, '1.2'],
    ['a grid without width', { ...good, step: 0 }, 'step 0'],
    ['a grid that is no number', { ...good, step: Number.NaN }, 'NaN'],
    ['an on-off draw without a current', train({ running: onOff(0.5, Number.NaN) }), 'NaN'],
  ];
  test.each(cases)('%s', (_, input, named) => {
    expect(() => demand(input)).toThrow(RangeError);
    expect(() => demand(input)).toThrow(named);
  });

  test('nothing at all on the track draws nothing', () => {
    expect(summarise(demand({ trains: [], moving: 0, fixed: [] }))).toMatchObject({ mean: 0, p95: 0, most: 0 });
  });
});

test('a bar lies above a current where its middle does', () => {
  const bar = { from: 1, to: 1.2, probability: 1 };
  expect([1, 1.09, 1.1, 1.2].map((amps) => isAbove(bar, amps))).toEqual([true, true, false, false]);
});

describe('bars gathered into few rows', () => {
  const bars = Array.from({ length: 31 }, (_, i) => ({ from: i, to: i + 1, probability: 1 / 31 }));

  test('keep the whole range and every chance', () => {
    const rows = gather(bars, 14);
    expect(rows.length).toBeLessThanOrEqual(14);
    expect([rows[0]?.from, rows.at(-1)?.to]).toEqual([0, 31]);
    near(
      rows.reduce((sum, { probability }) => sum + probability, 0),
      1,
      1e-12,
    );
    expect(rows.slice(1).every(({ from }, i) => from === rows[i]?.to)).toBe(true);
  });

  test('stay as they are where they are few', () => {
    expect(gather(bars, 31)).toEqual(bars);
    expect(gather([], 14)).toEqual([]);
  });
});

// The law of many draws against cases counted one by one, and against laws of textbooks: binomial, Irwin-Hall (sum of even spreads), from
// memory.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DemandInput } from '../../../src/engine/power/demand.ts';
import { chanceAbove, constant, even, fittingDemand, summarise } from '../../../src/engine/power/demand.ts';
import { complexRow, transform } from '../../../src/engine/power/fourier.ts';
import type { JointInput } from '../../../src/engine/power/joint.ts';
import { jointLaw } from '../../../src/engine/power/joint.ts';
import type { Draw } from '../../../src/engine/power/kernels.ts';
import type { Complex, Many } from '../../../src/engine/power/smooth.ts';
import {
  binomialLaw,
  characteristic,
  leastOf,
  MoversPolynomial,
  momentsOf,
  mostOf,
  power,
  times,
  totalMoments,
} from '../../../src/engine/power/smooth.ts';
import { allNear, near } from '../../near.ts';
import { onOff } from '../../samples.ts';
import { spread } from '../../spread.ts';

const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k);
const factorial = (n: number): number => (n === 0 ? 1 : n * factorial(n - 1));
const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);
const sumOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0);

/** All choices of `moving` out of `of`. */
const choicesOf = (of: number, moving: number): readonly (readonly boolean[])[] =>
  upTo(2 ** of)
    .map((bits) => upTo(of).map((i) => ((bits >> i) & 1) === 1))
    .filter((moves) => moves.filter(Boolean).length === moving);

const states: fc.Arbitrary<Draw> = fc.tuple(spread(0, 1), spread(0, 1), spread(0, 1)).map(([low, high, chance]) => ({
  kind: 'states',
  states: [
    { current: low, probability: chance },
    { current: high, probability: 1 - chance },
  ],
}));

const evens: fc.Arbitrary<Draw> = fc
  .tuple(spread(0, 1), spread(0.01, 1))
  .map(([from, wide]) => even(from, from + wide));

/** Mean of what `of` gives over a draw: its states, or very many places of its span. */
function meanOver(draw: Draw, of: (current: number) => number): number {
  if (draw.kind === 'states') return sumOf(draw.states.map(({ current, probability }) => probability * of(current)));
  const pieces = 2000;
  const { from, to } = draw.span;
  return sumOf(upTo(pieces).map((i) => of(from + ((i + 0.5) * (to - from)) / pieces))) / pieces;
}

describe('one draw that is here in a share of moments', () => {
  const draws = fc.oneof(states, evens);

  test('has the mean and the variance of its currents, and of nothing while it is elsewhere', () => {
    fc.assert(
      fc.property(draws, spread(0, 1), (draw, share) => {
        const mean = share * meanOver(draw, (current) => current);
        const square = share * meanOver(draw, (current) => current ** 2);
        const found = momentsOf(draw, share);
        near(found.mean, mean, 1e-9);
        near(found.variance, square - mean ** 2, 1e-6);
      }),
    );
  });

  test('turns the pointer of each current by as much as its amperes', () => {
    fc.assert(
      fc.property(draws, spread(-9, 9), spread(0, 1), (draw, frequency, share) => {
        const { re, im } = characteristic(draw, frequency, share);
        near(re, 1 - share + share * meanOver(draw, (current) => Math.cos(frequency * current)), 1e-6);
        near(im, share * meanOver(draw, (current) => Math.sin(frequency * current)), 1e-6);
      }),
      { numRuns: 50 },
    );
  });

  test('draws between its least and its most, and what it never draws is neither', () => {
    const seldom: Draw = {
      kind: 'states',
      states: [0.3, 0.1, 0.5, 9].map((current) => ({ current, probability: current === 9 ? 0 : 1 / 3 })),
    };
    expect([leastOf(seldom), mostOf(seldom)]).toEqual([0.1, 0.5]);
    expect([leastOf(even(0.2, 0.6)), mostOf(even(0.2, 0.6))]).toEqual([0.2, 0.6]);
  });
});

describe('trains of which some move', () => {
  interface Told {
    readonly groups: readonly { readonly count: number; readonly running: Draw; readonly standing: Draw }[];
    readonly moving: number;
  }
  const told: fc.Arbitrary<Told> = fc
    .array(fc.record({ count: fc.integer({ min: 1, max: 3 }), running: states, standing: states }), {
      minLength: 1,
      maxLength: 3,
    })
    .chain((groups) =>
      fc.record({ groups: fc.constant(groups), moving: fc.nat(sumOf(groups.map(({ count }) => count))) }),
    );
  const eachOf = ({ groups }: Told) => groups.flatMap((group) => upTo(group.count).map(() => group));

  test('give on average what all choices of movers give, counted out', () => {
    fc.assert(
      fc.property(told, spread(-6, 6), (fleet, frequency) => {
        const trains = eachOf(fleet);
        const choices = choicesOf(trains.length, fleet.moving);
        const products = choices.map((moves) =>
          trains
            .map(({ running, standing }, i) => characteristic(moves[i] === true ? running : standing, frequency))
            .reduce(times, { re: 1, im: 0 }),
        );
        const at = (draw: 'running' | 'standing'): Complex[] =>
          fleet.groups.map((group) => characteristic(group[draw], frequency));
        const counts = fleet.groups.map(({ count }) => count);
        const found = new MoversPolynomial(counts, fleet.moving).at(at('running'), at('standing'));
        near(found.re, sumOf(products.map(({ re }) => re)) / choices.length, 1e-9);
        near(found.im, sumOf(products.map(({ im }) => im)) / choices.length, 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  test('trains that always move draw as lamps would of the same draw', () => {
    const free = { count: 20, running: even(0.2, 0.6), standing: constant(0.02) };
    const shuttle = even(0.3, 0.5);
    const told = { step: 0.005, share: 0.6 };
    const always = { count: 5, running: shuttle, standing: constant(0), alwaysMoving: true };
    const law = fittingDemand({ ...told, trains: [free, always], moving: 15, fixed: [] });
    const lamps = fittingDemand({ ...told, trains: [free], moving: 10, fixed: [{ count: 5, draw: shuttle }] });
    for (const amps of [1, 3, 4, 5]) near(chanceAbove(law, amps), chanceAbove(lamps, amps), 1e-6);
    near(summarise(law).mean, 0.6 * (10 * 0.4 + 10 * 0.02 + 5 * 0.4), 0.01);
  });

  test('together with what always draws they have the mean and the variance of all cases, counted out', () => {
    fc.assert(
      fc.property(told, states, spread(0, 1), spread(0.1, 1), fc.nat(2), (fleet, lamp, chance, share, always) => {
        const { groups } = fleet;
        const [shuttle] = groups;
        fc.pre(shuttle !== undefined);
        const many: Many = {
          trains: [...groups, { ...shuttle, count: always, alwaysMoving: true }],
          ...{ moving: fleet.moving + always, share, fixed: [{ count: 2, draw: lamp, chance }] },
        };
        const trains = eachOf(fleet);
        const steady = [
          ...upTo(2).map(() => momentsOf(lamp, share * chance)),
          ...upTo(always).map(() => momentsOf(shuttle.running, share)),
        ];
        // Given who moves, all draw by themselves: means and variances add up. Over all choices, the means vary too.
        const cases = choicesOf(trains.length, fleet.moving).map((moves) => {
          const all = [
            ...steady,
            ...trains.map(({ running, standing }, i) => momentsOf(moves[i] === true ? running : standing, share)),
          ];
          return { mean: sumOf(all.map(({ mean }) => mean)), variance: sumOf(all.map(({ variance }) => variance)) };
        });
        const mean = sumOf(cases.map((one) => one.mean)) / cases.length;
        const within = sumOf(cases.map((one) => one.variance)) / cases.length;
        const between = sumOf(cases.map((one) => (one.mean - mean) ** 2)) / cases.length;
        const found = totalMoments(many);
        near(found.mean, mean, 1e-9);
        near(found.variance, within + between, 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  test('k of n lamps that are on by themselves: the binomial law, at its ends too', () => {
    for (const [count, p] of [
      ...[0, 0.1, 0.5, 0.9, 1].map((chance) => [7, chance] as const),
      [0, 0.3],
      [1, 0.3],
    ] as const) {
      const law = upTo(count + 1).map((k) => choose(count, k) * p ** k * (1 - p) ** (count - k));
      allNear(binomialLaw(count, p), law, 1e-12);
    }
  });

  test('a pointer to a power is that many of it one after the other', () => {
    const one: Complex = { re: 0.6, im: -0.5 };
    const three = times(one, times(one, one));
    near(power(one, 3).re, three.re, 1e-12);
    near(power(one, 3).im, three.im, 1e-12);
  });
});

/** Chance that `count` even spreads from 0 to 1 add up to more than `limit` (Irwin-Hall). */
function manyAbove(count: number, limit: number): number {
  if (count === 0) return limit < 0 ? 1 : 0;
  const rest = count - limit;
  if (rest <= 0) return 0;
  if (rest >= count) return 1;
  const terms = upTo(Math.floor(rest) + 1).map((k) => (-1) ** k * choose(count, k) * (rest - k) ** count);
  return sumOf(terms) / factorial(count);
}

describe('the tails of many even spreads', () => {
  const LIMITS = [0.5, 0.6, 0.7, 0.75, 0.8];
  const asIn = (input: DemandInput, above: (limit: number) => number, most: number): void => {
    const law = fittingDemand(input);
    for (const limit of LIMITS.map((part) => part * most)) {
      const chance = above(limit);
      if (chance > 1e-5) near(chanceAbove(law, limit) / chance, 1, 0.02, `above ${limit} A`);
    }
    expect(summarise(law).most).toBeLessThanOrEqual(most + 1e-9);
  };

  // A table of kernels would be finer or coarser: the grid of a smooth law follows its deviation alone.
  test.each<[string, DemandInput, boolean]>([
    ['13 draws', { trains: [], moving: 0, fixed: [{ count: 13, draw: even(0, 1) }] }, true],
    ['20 draws', { trains: [], moving: 0, fixed: [{ count: 20, draw: even(0, 1) }] }, true],
    ['12 draws', { trains: [], moving: 0, fixed: [{ count: 12, draw: even(0, 1) }] }, false],
    [
      '60 that are here in most moments',
      { trains: [], moving: 0, fixed: [{ count: 60, draw: even(0, 1) }], share: 0.8 },
      true,
    ],
    [
      '40 trains of which half move',
      { trains: [{ count: 40, running: even(0.2, 0.6), standing: even(0, 0.1) }], moving: 20, fixed: [] },
      true,
    ],
  ])('%s: a grid of about a twentieth of the deviation where there are more than twelve', (_, input, isSmooth) => {
    const law = fittingDemand(input);
    const cells = summarise(law).deviation / law.step;
    expect(cells >= 20 - 1e-6 && cells < 20 * 2.5).toBe(isSmooth);
  });

  test.each([1, 3, 8, 12, 13, 16])('%d draws that are always there', (count) =>
    asIn({ trains: [], moving: 0, fixed: [{ count, draw: even(0, 1) }] }, (limit) => manyAbove(count, limit), count),
  );

  test.each([
    [5, 3],
    [20, 12],
    [20, 16],
    [16, 16],
  ])('of %d trains %d move, the others draw nothing', (count, moving) =>
    asIn(
      { trains: [{ count, running: even(0, 1), standing: constant(0) }], moving, fixed: [] },
      (limit) => manyAbove(moving, limit),
      moving,
    ),
  );

  test.each([
    [4, 0.5],
    [14, 0.5],
    [18, 0.9],
  ])('%d draws of which each is here with the chance %d', (count, share) =>
    asIn(
      { trains: [], moving: 0, fixed: [{ count, draw: even(0, 1) }], share },
      (limit) =>
        sumOf(
          upTo(count + 1).map((k) => choose(count, k) * share ** k * (1 - share) ** (count - k) * manyAbove(k, limit)),
        ),
      count,
    ),
  );

  test('draws that are there or not are no spread: of twenty lamps more than twelve are on as the binomial law says', () => {
    const law = fittingDemand({ trains: [], moving: 0, fixed: [{ count: 20, draw: onOff(0.5) }] });
    near(chanceAbove(law, 12.5), sumOf(upTo(21).map((k) => (k > 12 ? choose(20, k) : 0))) / 2 ** 20, 1e-6);
  });
});

// Up to 6000 cells for what varies: what is drawn at every moment only moves the law, so it needs none.
describe('the grid of a few draws is as fine as its table may be', () => {
  const train = { count: 1, running: even(0.2, 0.5), standing: constant(0) };
  const step = (more: Partial<DemandInput>): number =>
    fittingDemand({ trains: [train], moving: 1, fixed: [], ...more }).step;
  const lamps = (chance?: number) => [{ count: 10, draw: constant(0.3), ...(chance === undefined ? {} : { chance }) }];

  test.each<[string, Partial<DemandInput>, number]>([
    // 0.5 A take 1000 cells of half a milliampere.
    ['one train', {}, 0.0005],
    ['one train beside 3 A that are always on', { fixed: lamps() }, 0.0005],
    ['beside 3 A that are on in every moment', { fixed: lamps(1) }, 0.0005],
    // 3.5 A would take 7000.
    ['beside ten lamps of 0.3 A that are on in half of the moments', { fixed: lamps(0.5) }, 0.001],
    [
      'beside a shuttle that always draws 3 A',
      { trains: [train, { count: 1, running: constant(3), standing: constant(0), alwaysMoving: true }], moving: 2 },
      0.0005,
    ],
    [
      'beside a train that draws 3 A if it is the one that moves',
      { trains: [train, { count: 1, running: constant(3), standing: constant(0) }] },
      0.0005,
    ],
    [
      'two of which both may draw 2 A',
      { trains: [{ count: 3, running: constant(2), standing: constant(0) }], moving: 2 },
      0.001,
    ],
    // Twenty that stand and draw the same are no draws that vary: what varies is the two that move.
    [
      'two of twenty trains that draw the same while they stand',
      { trains: [{ ...train, count: 20, standing: constant(0.04) }], moving: 2 },
      0.0005,
    ],
  ])('%s', (_, more, expected) => {
    expect(step(more)).toBe(expected);
  });

  test('an input that is none is refused there too', () => {
    expect(() => fittingDemand({ trains: [{ ...train, count: 0.5 }], moving: 0, fixed: [] })).toThrow(RangeError);
    expect(() => fittingDemand({ trains: [train], moving: 2, fixed: [] })).toThrow(RangeError);
  });
});

describe('the near district and the whole layout at the same moment', () => {
  /** Means, variances and covariance of near and whole. */
  function momentsIn(input: JointInput, share: number) {
    const { step, cells, nearFrom, totalFrom, mass } = jointLaw(input, share);
    const over = (of: (near: number, whole: number) => number): number =>
      mass.reduce(
        (sum, chance, at) =>
          sum + chance * of(nearFrom + Math.floor(at / cells) * step, totalFrom + (at % cells) * step),
        0,
      );
    const [here, whole] = [over((one) => one), over((_, one) => one)];
    return [
      ...[here, whole, over((one) => (one - here) ** 2), over((_, one) => (one - whole) ** 2)],
      over((one, other) => (one - here) * (other - whole)),
    ];
  }

  // Each of n draws by itself: near draws x in the share s of moments, the whole layout x always. So the means are n s m and n m, and the
  // covariance is that of s x with x.
  test.each([
    [1, 0, 0.8, 0.3, 1e-7],
    [5, 0, 0.4, 0.5, 1e-7],
    [5, 0.1, 0.5, 0.5, 5e-5],
    [16, 0.1, 0.5, 0.65, 2e-3],
    [80, 0.1, 0.5, 0.5, 2e-2],
    [80, 0.1, 0.5, 0.3, 2e-2],
  ])(
    '%d draws of %d to %d A, each near with the chance %d: means, variances and covariance',
    (count, from, to, share, tolerance) => {
      const mean = (from + to) / 2;
      const variance = (to - from) ** 2 / 12;
      const square = variance + mean ** 2;
      const found = momentsIn({ trains: [], moving: 0, fixed: [{ count, draw: even(from, to) }] }, share);
      const expected = [share * mean, mean, share * square - (share * mean) ** 2, variance, share * variance];
      allNear(
        found,
        expected.map((one) => count * one),
        tolerance,
      );
    },
  );
});

describe('the transform', () => {
  test('gives each frequency the sum of all turned by it, one way and the other', () => {
    for (const length of [1, 2, 8]) {
      for (const sign of [1, -1] as const) {
        const values = upTo(length).map((i): Complex => ({ re: Math.sqrt(i + 2), im: 1 / (i + 3) }));
        const row = complexRow(length);
        row.re.set(values.map(({ re }) => re));
        row.im.set(values.map(({ im }) => im));
        transform(row, sign);
        for (const k of upTo(length)) {
          const turned = values.map((value, j) => {
            const angle = (sign * 2 * Math.PI * j * k) / length;
            return times(value, { re: Math.cos(angle), im: Math.sin(angle) });
          });
          near(row.re[k] ?? Number.NaN, sumOf(turned.map(({ re }) => re)), 1e-12);
          near(row.im[k] ?? Number.NaN, sumOf(turned.map(({ im }) => im)), 1e-12);
        }
      }
    }
  });

  test.each([0, 3, 6])('refuses %d cells', (length) => {
    expect(() => transform(complexRow(length), 1)).toThrow(RangeError);
  });
});

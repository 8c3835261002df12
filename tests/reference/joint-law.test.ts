// Two districts that hold the same moving trains, against every case counted one by one, and against a simulation.
import { describe, expect, test } from 'vitest';
import { chanceAbove, constant, even, quantile, summarise } from '../../src/engine/power/demand.ts';
import { countedTrains, districtLoad, jointLoad } from '../../src/engine/power/fleet.ts';
import type { JointInput } from '../../src/engine/power/joint.ts';
import { bothBusy, chanceEither, jointLaw } from '../../src/engine/power/joint.ts';
import type { Draw } from '../../src/engine/power/kernels.ts';
import { near } from '../near.ts';
import { h0 } from '../samples.ts';
import { seeded } from '../seeded.ts';
import { besideBusy, chanceBoth } from './joint-moments.ts';

/** Chance of each pair of near and far current, in cells of 10 mA. */
type Pairs = ReadonlyMap<string, { readonly near: number; readonly far: number; readonly chance: number }>;

const CELL = 0.01;

function everyCase({ trains, moving, fixed }: JointInput, share: number): Pairs {
  const all = trains.flatMap((group) => Array.from({ length: group.count }, () => group));
  const choices = subsets(all.length).filter((moves) => moves.filter(Boolean).length === moving);
  const found = new Map<string, { near: number; far: number; chance: number }>();
  for (const moves of choices) {
    const draws = [
      ...all.map((train, i) => (moves[i] === true ? train.running : train.standing)),
      ...fixed.flatMap(({ count, draw }) => Array.from({ length: count }, () => draw)),
    ];
    let pairs = [{ near: 0, far: 0, chance: 1 / choices.length }];
    for (const draw of draws) {
      pairs = gathered(
        pairs.flatMap(({ near: a, far: b, chance }) =>
          statesOf(draw).flatMap(([cells, p]) => [
            { near: a + cells, far: b, chance: chance * p * share },
            { near: a, far: b + cells, chance: chance * p * (1 - share) },
          ]),
        ),
      );
    }
    for (const one of pairs) {
      const key = `${one.near} ${one.far}`;
      found.set(key, { ...one, chance: one.chance + (found.get(key)?.chance ?? 0) });
    }
  }
  return found;
}

function gathered(pairs: readonly { readonly near: number; readonly far: number; readonly chance: number }[]) {
  const found = new Map<string, { near: number; far: number; chance: number }>();
  for (const one of pairs) {
    const key = `${one.near} ${one.far}`;
    found.set(key, { ...one, chance: one.chance + (found.get(key)?.chance ?? 0) });
  }
  return [...found.values()];
}

const statesOf = (draw: Draw): (readonly [number, number])[] =>
  draw.kind === 'even'
    ? [[Math.round(draw.span.from / CELL), 1]]
    : draw.states.map(({ current, probability }) => [Math.round(current / CELL), probability] as const);

function subsets(of: number): boolean[][] {
  if (of === 0) return [[]];
  return subsets(of - 1).flatMap((rest) => [
    [...rest, false],
    [...rest, true],
  ]);
}

const states = (...rows: readonly (readonly [number, number])[]): Draw => ({
  kind: 'states',
  states: rows.map(([current, probability]) => ({ current, probability })),
});

describe('every case counted one by one', () => {
  // 2.48 A at most, so that the grid of the law is 10 mA and every current lies on it.
  const input: JointInput = {
    trains: [
      { count: 3, running: states([0.2, 0.25], [0.5, 0.75]), standing: constant(0.04) },
      { count: 2, running: states([0.5, 0.5], [0.8, 0.5]), standing: constant(0.04) },
    ],
    moving: 3,
    fixed: [{ count: 3, draw: constant(0.1) }],
  };

  test.each([0.5, 0.65, 0.2])('with the share %d: both, either, each alone, at every pair of limits', (share) => {
    const law = jointLaw(input, share);
    near(law.step, CELL, 1e-12, 'grid');
    const pairs = [...everyCase(input, share).values()];
    for (let nearLimit = 0.005; nearLimit < 2.5; nearLimit += 0.13) {
      for (let farLimit = 0.005; farLimit < 2.5; farLimit += 0.13) {
        const limits = { near: nearLimit, far: farLimit };
        const passing = (both: boolean): number =>
          pairs.reduce((sum, { near: a, far: b, chance }) => {
            const [here, there] = [a * CELL > nearLimit, b * CELL > farLimit];
            return (both ? here && there : here || there) ? sum + chance : sum;
          }, 0);
        near(chanceBoth(law, limits), passing(true), 1e-9, `both above ${nearLimit} and ${farLimit}`);
        near(chanceEither(law, limits), passing(false), 1e-9, `either above ${nearLimit} and ${farLimit}`);
      }
    }
  });

  test('what each draws while the whole draws so much is its share of it', () => {
    const share = 0.65;
    const pairs = [...everyCase(input, share).values()];
    for (const total of new Set(pairs.map(({ near: a, far: b }) => a + b))) {
      const these = pairs.filter(({ near: a, far: b }) => a + b === total);
      const weight = these.reduce((sum, { chance }) => sum + chance, 0);
      const mean = these.reduce((sum, { near: a, chance }) => sum + a * chance, 0) / weight;
      near(mean, share * total, 1e-9, `near of ${total} cells`);
    }
  });
});

describe('against a simulation with a fixed seed', () => {
  const MOMENTS = 300_000;
  const input: JointInput = {
    trains: [
      { count: 8, running: even(0.2, 0.5), standing: constant(0.04) },
      { count: 2, running: even(0.5, 1), standing: constant(0.04) },
    ],
    moving: 5,
    fixed: [{ count: 4, draw: even(0.05, 0.2) }],
  };

  test.each([0.5, 0.65])('share %d: chances within four standard errors', (share) => {
    const law = jointLaw(input, share);
    const moments = simulate(input, share, MOMENTS, seeded(20_260_801));
    const limits = [
      { near: 1.2, far: 1.2 },
      { near: 1.6, far: 1 },
      { near: 2, far: 0.8 },
      { near: 1, far: 1.8 },
    ];
    for (const limit of limits) {
      const both = moments.filter(([a, b]) => a > limit.near && b > limit.far).length / MOMENTS;
      const exact = chanceBoth(law, limit);
      expect(exact).toBeGreaterThan(1e-4);
      near(
        both,
        exact,
        4 * Math.sqrt((exact * (1 - exact)) / MOMENTS) + 0.02 * exact,
        `both above ${JSON.stringify(limit)}`,
      );
    }
  });

  test('what the far district seldom passes while the near one is busy', () => {
    const law = jointLaw(input, 0.5);
    const moments = simulate(input, 0.5, MOMENTS, seeded(7));
    const beside = besideBusy(law, 'far', 1.8);
    const far = moments
      .filter(([a]) => a > 1.8)
      .map(([, b]) => b)
      .sort((a, b) => a - b);
    near(beside ?? Number.NaN, far[Math.floor(0.95 * far.length)] ?? Number.NaN, 0.03, '95 % point beside a busy one');
    expect(besideBusy(law, 'far', 50)).toBeUndefined();
  });
});

function simulate({ trains, moving, fixed }: JointInput, share: number, moments: number, random: () => number) {
  const all = trains.flatMap((group) => Array.from({ length: group.count }, () => group));
  const current = (draw: Draw): number =>
    draw.kind === 'even' ? draw.span.from + (draw.span.to - draw.span.from) * random() : 0;
  return Array.from({ length: moments }, (): readonly [number, number] => {
    const order = all.map((_, i) => i);
    for (let i = 0; i < moving; i++) {
      const other = i + Math.floor(random() * (order.length - i));
      const train = order[other] ?? 0;
      order[other] = order[i] ?? 0;
      order[i] = train;
    }
    const moves = new Set(order.slice(0, moving));
    const draws = [
      ...all.map((train, i) => current(moves.has(i) ? train.running : train.standing)),
      ...fixed.flatMap(({ count, draw }) => Array.from({ length: count }, () => current(draw))),
    ];
    let [a, b] = [0, 0];
    for (const amps of draws) {
      if (random() < share) a += amps;
      else b += amps;
    }
    return [a, b];
  });
}

describe('eight modern and two older locomotives, five moving, two thirds of the traffic here', () => {
  const fleet = h0(8, 2, 5);
  const share = 0.65;
  const { distribution: whole } = districtLoad(fleet);

  test('the busiest of both cannot be added: 2.45 A and 1.76 A, yet the whole draws 2.95 A, and 3.70 A at most', () => {
    const parts = [share, 1 - share].map((one) => summarise(districtLoad(fleet, one).distribution).p95);
    near(parts[0] ?? Number.NaN, 2.45, 0.005);
    near(parts[1] ?? Number.NaN, 1.76, 0.005);
    const { mean, p95, most } = summarise(whole);
    near(mean, 2.35, 1e-6);
    near(p95, 2.95, 0.005);
    near(most, 3.7, 1e-9);
  });

  test('while both are busy they draw 2.95 A together', () => {
    const { near: here, far } = bothBusy(whole, share);
    near(here + far, 2.95, 0.005);
    near(here, 0.65 * 2.95, 0.005);
  });

  test('both at their own 95 % point at once is a moment that hardly ever comes', () => {
    const limits = { near: 2.452, far: 1.761 };
    expect(chanceBoth(jointLoad(fleet, share), limits)).toBe(0);
  });
});

describe('the joint law of large and small fleets', () => {
  const fleets = [
    { trains: countedTrains('h0', 100, 0, 0), moving: 50, coaches: 500, lamps: 'led', accessories: 500, stored: 0 },
    { trains: countedTrains('h0', 30, 10, 10), moving: 12, coaches: 60, lamps: 'filament', accessories: 40, stored: 0 },
    { trains: countedTrains('n', 20, 0, 0), moving: 8, coaches: 100, lamps: 'led', accessories: 80, stored: 0 },
    h0(8, 0, 6),
    h0(3, 0, 2),
  ] as const;

  test.each(fleets.map((fleet, i) => [i, fleet] as const))(
    '%i: each side has its own law, and all chances add up to one',
    (_, fleet) => {
      const share = 0.35;
      const law = jointLoad(fleet, share);
      near(
        law.mass.reduce((sum, chance) => sum + chance, 0),
        1,
        1e-9,
      );
      for (const [side, of] of [
        ['near', share],
        ['far', 1 - share],
      ] as const) {
        const alone = districtLoad(fleet, of).distribution;
        for (const q of [0.5, 0.9, 0.99]) {
          const limit = quantile(alone, q);
          const limits = { near: -1, far: -1, [side]: limit };
          const chance = chanceAbove(alone, limit);
          near(chanceBoth(law, limits) / chance, 1, 0.02, `${side} above ${limit} A`);
        }
      }
    },
  );
});

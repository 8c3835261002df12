// What can be divided at all, and the whole numbers that it is reckoned with: each border from both sides, each number by hand.
import { describe, expect, test } from 'vitest';
import type { DivisionOptions, DivisionProblem } from '../../../src/engine/districts/problem.ts';
import { wholeOf } from '../../../src/engine/districts/whole.ts';
import { alike, bearing, link } from '../../divisions.ts';

const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, at) => at);
const sections = (count: number, traffic = 1) => upTo(count).map(() => ({ traffic }));
const joinedTwice = (count: number) =>
  upTo(count).flatMap((at) => [link(at, (at + 1) % count), link(at, (at + 1) % count)]);

/** Three stretches in a row, and one stage, but for what is told. */
const row = (told: Partial<DivisionProblem>): DivisionProblem => ({
  sections: sections(3),
  joints: [link(0, 1), link(1, 2)],
  stages: alike(1),
  ...told,
});

describe('What can be divided', () => {
  test.each<[string, Partial<DivisionProblem>, Partial<DivisionProblem>]>([
    ['one stage to twelve', { stages: alike(12) }, { stages: alike(13) }],
    ['not less than one stage', { stages: alike(1) }, { stages: [] }],
    ['up to 200 sections', { sections: sections(200) }, { sections: sections(201) }],
    [
      'up to 400 joints',
      { sections: sections(200), joints: joinedTwice(200) },
      { sections: sections(200), joints: [...joinedTwice(200), link(0, 100)] },
    ],
    [
      'up to 24 joints that leave a section',
      { sections: sections(26), joints: upTo(24).map((at) => link(0, at + 1)) },
      { sections: sections(26), joints: upTo(25).map((at) => link(0, at + 1)) },
    ],
    [
      'up to 24 joints that lead to a section',
      { sections: sections(26), joints: upTo(24).map((at) => link(at + 1, 0)) },
      { sections: sections(26), joints: upTo(25).map((at) => link(at + 1, 0)) },
    ],
    ['stretches without traffic, not with less', { sections: sections(3, 0) }, { sections: sections(3, -1) }],
    ['one such stretch among others', {}, { sections: [{ traffic: 1 }, { traffic: -1 }, { traffic: 1 }] }],
    ['traffic below a thousand million', { sections: sections(3, 1e9 - 1) }, { sections: sections(3, 1e9) }],
    [
      'draws that are always on, not less than none',
      { sections: [{ traffic: 1, fixedAmps: 0 }, ...sections(2)] },
      { sections: [{ traffic: 1, fixedAmps: -0.01 }, ...sections(2)] },
    ],
    ['gaps that cost nothing, not less', { joints: [link(0, 1, 0)] }, { joints: [link(0, 1, -0.001), link(1, 2)] }],
    ['gaps that cost less than a thousand', { joints: [link(0, 1, 999)] }, { joints: [link(0, 1, 1000), link(1, 2)] }],
    ['joints that begin at a section', { joints: [link(2, 1)] }, { joints: [link(3, 1), link(1, 2)] }],
    ['joints that end at a section', { joints: [link(0, 2)] }, { joints: [link(0, 3), link(1, 2)] }],
    ['nor before the first', {}, { joints: [link(0, -1), link(1, 2)] }],
    ['nor between two', {}, { joints: [link(0, 0.5), link(1, 2)] }],
    [
      'feeds of sections that there are',
      { stages: [{ ...bearing(1), feeds: [0, 2] }] },
      { stages: [{ ...bearing(1), feeds: [0, 3] }] },
    ],
    ['of each stage', {}, { stages: [bearing(1), { ...bearing(1), feeds: [3] }] }],
    ['gaps too near each other that there are', { conflicts: [[0, 1]] }, { conflicts: [[0, 2]] }],
    [
      'in each pair',
      {},
      {
        conflicts: [
          [0, 1],
          [-1, 0],
        ],
      },
    ],
  ])('%s', (_, right, wrong) => {
    expect(() => wholeOf(row(right))).not.toThrow();
    expect(() => wholeOf(row(wrong))).toThrow(RangeError);
  });
});

describe('Whole numbers', () => {
  test('of traffic and gaps are parts of their largest common step, kept to a thousandth', () => {
    const told = (traffic: readonly number[], costs: readonly number[]) => {
      const joints = costs.map((cost, at) => link(at, at + 1, cost));
      const whole = wholeOf(row({ sections: traffic.map((one) => ({ traffic: one })), joints }));
      return [whole.traffic, whole.total, whole.links.map(({ cost }) => cost), whole.costUnits];
    };
    expect(told([20, 40, 60], [1, 2.5])).toEqual([[1, 2, 3], 6, [2, 5], 2]);
    expect(told([0.3334, 0.5, 1], [0.75, 3])).toEqual([[333, 500, 1000], 1833, [1, 4], 4 / 3]);
    expect(told([0, 0, 0], [0, 0])).toEqual([[0, 0, 0], 0, [0, 0], 1000]);
  });

  test('of what is always on are steps of 10 mA, rounded up, but not for the sake of a binary fraction', () => {
    const amps = [0.1, 0.101, 0.29, 0.07];
    const { fixed } = wholeOf(row({ sections: amps.map((fixedAmps) => ({ traffic: 1, fixedAmps })), joints: [] }));
    // 0.29 and 0.07 times a hundred come out a hair beside 29 and above 7.
    expect(fixed).toEqual([10, 11, 29, 7]);
  });

  test('are of joints that may join: one that is cut, or leads back to where it begins, joins nothing', () => {
    const joints = [
      link(0, 1),
      { ...link(0, 1), gap: 'cut' as const },
      link(1, 1),
      { ...link(1, 2), gap: 'kept' as const },
    ];
    const { links } = wholeOf(row({ joints }));
    expect(links.map(({ joint, a, b, kept }) => [joint, a, b, kept])).toEqual([
      [0, 0, 1, false],
      [3, 1, 2, true],
    ]);
  });
});

describe('Stages', () => {
  /** A hundred parts of traffic that have no common step, between so many stages. */
  const kindsOf = (stages: DivisionProblem['stages'], options: DivisionOptions = {}) =>
    wholeOf(row({ sections: [37, 62, 1].map((traffic) => ({ traffic })), stages }), options);
  const told = (stages: DivisionProblem['stages'], options: DivisionOptions = {}) =>
    kindsOf(stages, options).kinds.map(({ stages: places, least, most }) => [places, least, most(0)]);

  test('that are alike are one kind; each that has feeds is one of its own, and its sections are told', () => {
    const [strong, weak] = [bearing(0.6), bearing(0.3)];
    const whole = kindsOf([strong, weak, strong, { ...strong, feeds: [2] }, weak, { ...strong, feeds: [0] }]);
    expect(whole.kinds.map(({ stages, fed }) => [stages, fed])).toEqual([
      [[0, 2], false],
      [[1, 4], false],
      [[3], true],
      [[5], true],
    ]);
    expect(whole.fedBy).toEqual([3, -1, 2]);
    expect(whole.districts).toBe(6);
    // A stage with feeds that stands first is no kind for others either.
    expect(kindsOf([{ ...strong, feeds: [1] }, strong]).kinds.map(({ stages }) => stages)).toEqual([[0], [1]]);
  });

  test('take as much as they bear, less with what is always on there, and none where they bear not even that', () => {
    const stage = { bears: (share: number, amps: number) => share <= 0.6 - amps + 1e-9 };
    const [kind] = kindsOf([stage]).kinds;
    expect([0, 10, 60].map((amount) => kind?.most(amount))).toEqual([60, 50, 0]);
    expect(kind?.most(61)).toBeLessThan(0);
    const [half] = kindsOf([stage], { fullest: 0.5 }).kinds;
    expect([0, 10, 60].map((amount) => half?.most(amount))).toEqual([30, 25, 0]);
    expect(half?.most(61)).toBeLessThan(0);
    expect([half?.bears(0), half?.bears(10)]).toEqual([60, 50]);
  });

  test('are as full as each other where use is even: all traffic over all that they bear', () => {
    expect(kindsOf(alike(2, 0.8)).evenUse).toBeCloseTo(100 / 160, 12);
    expect(kindsOf([bearing(0.6), bearing(0.2)]).evenUse).toBeCloseTo(100 / 80, 12);
    expect(kindsOf([{ bears: () => false }]).evenUse).toBe(0);
    expect(told([{ bears: () => false }])).toEqual([[[0], 0, -1]]);
  });

  test('may be told to stay near their even share, on either side', () => {
    // Bears 60 and 20 of a hundred: an even share is 75 and 25, and a tenth of it 7.5 and 2.5. More than it bears none takes.
    const unlike = [bearing(0.6), bearing(0.2)];
    expect(told(alike(2, 0.8))).toEqual([[[0, 1], 0, 80]]);
    expect(told(alike(2, 0.8), { tolerance: 0.1 })).toEqual([[[0, 1], 45, 55]]);
    expect(told(alike(2, 0.8), { tolerance: 0 })).toEqual([[[0, 1], 50, 50]]);
    expect(told(unlike, { tolerance: 0.1 })).toEqual([
      [[0], 68, 60],
      [[1], 23, 20],
    ]);
    // Twice as far as there is to go down.
    expect(told(alike(2, 0.8), { tolerance: 2 })).toEqual([[[0, 1], 0, 80]]);
  });

  test('may be told to carry at least a part of it', () => {
    expect(told(alike(2, 0.8), { least: 0.2 })).toEqual([[[0, 1], 10, 80]]);
    expect(told([bearing(0.6), bearing(0.2)], { least: 0.2 })).toEqual([
      [[0], 15, 60],
      [[1], 5, 20],
    ]);
    // Whichever of the two asks for more.
    expect(told(alike(2, 0.8), { least: 0.2, tolerance: 0.9 })).toEqual([[[0, 1], 10, 80]]);
    expect(told(alike(2, 0.8), { least: 0.2, tolerance: 0.3 })).toEqual([[[0, 1], 35, 65]]);
  });
});

// How much of a layout is looked at, counted by hand on rows; which stage gets which part; and the nearest where no division is: by looking at all.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { atOnce } from '../../../src/engine/at-once.ts';
import { deepen } from '../../../src/engine/districts/deepen.ts';
import { divisionOf, partsOf } from '../../../src/engine/districts/division.ts';
import { orderOf, stepsOf } from '../../../src/engine/districts/order.ts';
import type { DivisionOptions, DivisionProblem, DivisionStage } from '../../../src/engine/districts/problem.ts';
import { Search } from '../../../src/engine/districts/search.ts';
import { sweep } from '../../../src/engine/districts/sweep.ts';
import { wholeOf } from '../../../src/engine/districts/whole.ts';
import { divide } from '../../../src/engine/index.ts';
import { alike, bearing, grid, layout, link } from '../../divisions.ts';
import { everyParting } from '../../reference/every-division.ts';

const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, at) => at);
const row = (count: number, stages: DivisionProblem['stages'], more: Partial<DivisionProblem> = {}) => ({
  sections: upTo(count).map(() => ({ traffic: 1 })),
  joints: upTo(count - 1).map((at) => link(at, at + 1)),
  stages,
  ...more,
});

/** Looked through from the first section on to the last, with gaps of so much at the most. */
function looked(problem: DivisionProblem, limit: number, options: DivisionOptions = {}) {
  const whole = wholeOf(problem, options);
  const sweeping = sweep(whole, stepsOf(whole, upTo(problem.sections.length)), limit);
  for (;;) {
    const turn = sweeping.next();
    if (turn.done === true) return turn.value;
  }
}

/** What is there after so many sections of a row: whole so far, or cut once at one of these places; added up over all steps, and one before the first. */
const counted = (count: number, isWhole: (taken: number) => boolean, isCut: (place: number) => boolean): number =>
  upTo(count).reduce(
    (sum, taken) =>
      sum + (taken === 0 || isWhole(taken) ? 1 : 0) + upTo(taken).filter((place) => place > 0 && isCut(place)).length,
    0,
  );

describe('Of a row in two, nothing is followed', () => {
  test('that leaves a stage less than it is to carry', () => {
    // Of twelve each is to have three at the least: half of an even part.
    const found = looked(row(12, alike(2)), 1, { least: 0.5 });
    expect(found.states).toBe(
      counted(
        12,
        () => true,
        (place) => place >= 3 && place <= 9,
      ),
    );
    expect(found.kept?.size).toBe(10);
  });

  test('that gives a stage more than it bears', () => {
    // Of ten each bears six.
    const found = looked(row(10, alike(2, 0.6)), 1);
    expect(found.states).toBe(
      counted(
        10,
        (taken) => taken <= 6,
        (place) => place >= 4 && place <= 6,
      ),
    );
  });

  test('that gives a stage more than it bears with what is always on at one end', () => {
    // 0.3 A takes three of the six parts, wherever the first stretch is; the other end bears six.
    const weakening: DivisionStage = { bears: (part, amps) => part <= 0.6 - amps + 1e-9 };
    const problem = row(8, [weakening, weakening], {
      sections: [{ traffic: 1, fixedAmps: 0.1 }, ...upTo(9).map(() => ({ traffic: 1 }))],
      joints: upTo(9).map((at) => link(at, at + 1)),
    });
    // Five with the draw, six without: it can be cut behind the fourth or the fifth.
    expect(looked(problem, 1).states).toBe(
      counted(
        10,
        (taken) => taken <= 5,
        (place) => place === 4 || place === 5,
      ),
    );
  });

  test('that would join feeds of two stages', () => {
    const stages = [
      { ...bearing(1), feeds: [1] },
      { ...bearing(1), feeds: [4] },
    ];
    // Cut between the second stretch and the fifth, and whole before that.
    const found = looked(row(6, stages), 1);
    expect(found.states).toBe(
      counted(
        6,
        (taken) => taken <= 4,
        (place) => place >= 2 && place <= 4,
      ),
    );
    expect(found.kept?.size).toBe(4);
  });

  test('that needs a gap dearer than all gaps may be, as soon as that gap is next', () => {
    const problem = row(4, alike(2, 0.6), {
      sections: [5, 5, 1, 1].map((traffic) => ({ traffic })),
      joints: [link(0, 1, 9), link(1, 2), link(2, 3)],
    });
    expect(looked(problem, 5)).toMatchObject({ kept: undefined, beyond: 9, states: 1 });
    expect(looked(problem, 9).kept).toEqual(new Set([1, 2]));
  });

  test('where a joint that may not be cut asks for more than a stage bears', () => {
    const problem = row(4, alike(2, 0.6), {
      sections: [5, 5, 1, 1].map((traffic) => ({ traffic })),
      joints: [{ ...link(0, 1), gap: 'kept' }, link(1, 2), link(2, 3)],
    });
    expect(looked(problem, 9)).toMatchObject({ kept: undefined, beyond: Number.POSITIVE_INFINITY, states: 1 });
  });
});

test('Stretches that hang on nothing are parts without a gap: each further one is one gap fewer', () => {
  // Three districts of two rows take one gap; four take two. No more is looked for.
  const problem = (districts: number) =>
    row(6, alike(districts), { joints: [0, 1, 3, 4].map((at) => link(at, at + 1)) });
  expect(looked(problem(2), 0).kept?.size).toBe(4);
  expect(looked(problem(2), 0).states).toBe(6);
  expect(looked(problem(3), 0)).toMatchObject({ kept: undefined, beyond: 1, states: 1 });
  expect(looked(problem(4), 1)).toMatchObject({ kept: undefined, beyond: 2, states: 1 });
  expect(looked(problem(4), 2).kept?.size).toBe(2);
});

test('How far it is can be looked up after every 4096 that were looked at: the share of stretches that are taken up', () => {
  const { sections, joints } = grid(5);
  const whole = wholeOf({ sections, joints, stages: alike(4) });
  const sweeping = sweep(whole, stepsOf(whole, orderOf(whole)), 9);
  const seen: number[] = [];
  let turn = sweeping.next();
  for (; turn.done !== true; turn = sweeping.next()) seen.push(turn.value);
  expect(seen).toHaveLength(Math.floor(turn.value.states / 4096));
  expect(seen.length).toBeGreaterThan(3);
  expect(seen).toEqual(seen.toSorted((a, b) => a - b));
  expect(seen[0]).toBeGreaterThan(0.1);
  expect(seen.at(-1)).toBeLessThanOrEqual(1);
  expect(new Set(seen).size).toBe(seen.length);
});

describe('What gaps may cost is raised', () => {
  const limits = (problem: DivisionProblem, options: DivisionOptions = {}) => {
    const dividing = deepen(wholeOf(problem, options), {});
    const seen: number[] = [];
    let turn = dividing.next();
    for (; turn.done !== true; turn = dividing.next()) {
      const { cost, done } = turn.value;
      expect(done >= 0 && done <= 1).toBe(true);
      if (seen.at(-1) !== cost) seen.push(cost);
    }
    return { seen, ...turn.value };
  };

  test('from nothing to what the cheapest gaps cost that are needed, told in what gaps cost', () => {
    expect(limits(row(4, alike(3)))).toMatchObject({ seen: [2], proven: true });
    expect(limits(row(4, alike(3), { joints: [1.5, 2.5, 2].map((cost, at) => link(at, at + 1, cost)) }))).toMatchObject(
      {
        seen: [3.5],
        atLeast: 7,
      },
    );
  });

  test('by a seventh at least each time, and never so far that a cheaper one would be passed over', () => {
    // Each gap costs a little more than the one before, and only the last one parts what the stages bear.
    const count = 30;
    const costs = upTo(count - 1).map((at) => 1 + 0.01 * at);
    const heavy = row(count, alike(2, 0.5), {
      sections: upTo(count).map((at) => ({ traffic: at === count - 1 ? count - 1 : 1 })),
      joints: costs.map((cost, at) => link(at, at + 1, cost)),
    });
    const { seen, kept, proven } = limits(heavy);
    expect([proven, kept?.size]).toEqual([true, count - 2]);
    for (const [at, limit] of seen.slice(1).entries()) expect(limit).toBeGreaterThanOrEqual(1.14 * (seen[at] ?? 9));
    expect(kept?.has(count - 2)).toBe(false);
  });

  test('until nothing more can be cut: then there is none, for sure', () => {
    const none = row(4, alike(2, 0.5), { sections: [3, 1, 3, 1].map((traffic) => ({ traffic })) });
    // Two and two of the four, in one piece each: 4 and 4 is one way, so it is forbidden by its joint.
    const joints = none.joints.map((one, at) => (at === 1 ? { ...one, gap: 'kept' as const } : one));
    const { proven, kept } = limits({ ...none, joints });
    expect([proven, kept]).toEqual([true, undefined]);
  });
});

describe('Gaps too near each other', () => {
  const ring = (count: number): DivisionProblem => ({
    sections: upTo(count).map(() => ({ traffic: 1 })),
    joints: upTo(count).map((at) => link(at, (at + 1) % count)),
    stages: alike(2),
  });
  const every = (count: number) => upTo(count).flatMap((a) => upTo(a).map((b) => [b, a] as const));
  const sought = (problem: DivisionProblem) => {
    const whole = wholeOf(problem);
    return atOnce(new Search(problem, whole, { order: orderOf(whole) }).run());
  };

  test('all of them, on a small oval: there is none, for sure; on a long one that is not looked through, and two gaps it takes at least', () => {
    expect(sought({ ...ring(4), conflicts: every(4) }).kind).toBe('none');
    expect(sought({ ...ring(9), conflicts: every(9) })).toEqual({ kind: 'not-found', atLeast: 2 });
  });

  test('all but one pair: that pair, however many others cost less', () => {
    const far = { ...ring(6), conflicts: every(6).filter(([a, b]) => !(a === 1 && b === 4)) };
    const joints = far.joints.map((one, at) => ({ ...one, cost: at === 1 || at === 4 ? 3 : 1 }));
    expect(sought({ ...far, joints })).toMatchObject({
      kind: 'divided',
      division: { cuts: [1, 4], cost: 6 },
      proof: { kind: 'proven' },
    });
  });

  test('one of which is there in any case: the other is not made', () => {
    // A row of five, cut behind the first; behind the second would be best.
    const joints = [{ ...link(0, 1), gap: 'cut' as const }, link(1, 2), link(2, 3, 2), link(3, 4, 2)];
    const problem = { ...row(5, alike(3), { joints }) };
    expect(divide(problem)).toMatchObject({ division: { cuts: [0, 1], cost: 1 } });
    for (const pair of [[0, 1] as const, [1, 0] as const])
      expect(divide({ ...problem, conflicts: [pair] })).toMatchObject({
        division: { cuts: [0, 2], cost: 2 },
        proof: { kind: 'proven' },
      });
  });
});

/** Every order of so many. */
const orders = (of: readonly number[]): readonly (readonly number[])[] =>
  of.length === 0
    ? [[]]
    : of.flatMap((one) => orders(of.filter((other) => other !== one)).map((rest) => [one, ...rest]));

describe('Parts that lie there, and stages for them', () => {
  const some = fc.integer({ min: 1, max: 4 }).chain((count) => {
    const each = <Value>(of: fc.Arbitrary<Value>) => fc.array(of, { minLength: count, maxLength: count });
    return fc.record({
      traffic: each(fc.integer({ min: 0, max: 6 })),
      amps: each(fc.constantFrom(0, 0, 0.1, 0.2)),
      shares: each(fc.integer({ min: 4, max: 10 })),
      usable: each(fc.integer({ min: 1, max: 5 })),
      fed: fc.integer({ min: -1, max: count - 1 }),
    });
  });

  interface Told {
    readonly traffic: readonly number[];
    readonly amps: readonly number[];
    readonly shares: readonly number[];
    readonly usable: readonly number[];
    /** The stage whose feed is on the first part, -1 where none is. */
    readonly fed: number;
  }

  /** What is told of the parts and stages, with what a stage bears of whole steps of traffic, and how full a part makes it. */
  function toldOf({ traffic, amps, shares, usable, fed }: Told) {
    const stages = shares.map(
      (share, at): DivisionStage => ({
        bears: (part, on) => part <= share / 10 - on + 1e-9,
        usable: usable[at],
        feeds: at === fed ? [0] : [],
      }),
    );
    const sections = traffic.map((one, at) => ({ traffic: one, fixedAmps: amps[at] }));
    const problem: DivisionProblem = { sections, joints: [], stages };
    const whole = wholeOf(problem);
    const borne = (stage: number, part: number): number =>
      Math.floor(((shares[stage] ?? 0) / 10 - (amps[part] ?? 0)) * whole.total + 1e-7);
    const has = (part: number): number => whole.traffic[part] ?? 0;
    const use = (stage: number, part: number): number => {
      if (has(part) > borne(stage, part) || (stage === fed) !== (part === 0 && fed !== -1))
        return Number.POSITIVE_INFINITY;
      return has(part) === 0 ? 0 : has(part) / borne(stage, part);
    };
    return { problem, whole, borne, has, use, strength: (stage: number): number => usable[stage] ?? 0 };
  }

  test('go together so that the fullest stage is least full: by trying every way', () => {
    let found = 0;
    fc.assert(
      fc.property(some, (told) => {
        const { problem, whole, borne, has, use } = toldOf(told);
        fc.pre(whole.total > 0);
        const fullest = orders([...whole.traffic.keys()]).map((parts) =>
          Math.max(...parts.map((part, stage) => use(stage, part))),
        );
        const least = Math.min(...fullest);
        const division = divisionOf(problem, whole, new Set());
        expect(division === undefined).toBe(least === Number.POSITIVE_INFINITY);
        if (division === undefined) return;
        found++;
        expect(division.busiest).toBeCloseTo(least / whole.evenUse, 9);
        expect(division.parts.flat().toSorted((a, b) => a - b)).toEqual([...whole.traffic.keys()]);
        for (const [stage, [part = 0]] of division.parts.entries()) {
          expect(division.shares[stage]).toBeCloseTo(has(part) / whole.total, 12);
          expect(division.most[stage]).toBeCloseTo(borne(stage, part) / whole.total, 9);
        }
      }),
      { numRuns: 150, seed: 5 },
    );
    expect(found).toBeGreaterThan(50);
  });

  test('and no two could be exchanged, neither stage fuller than the fuller of them, for the stronger one to have more', () => {
    fc.assert(
      fc.property(some, (told) => {
        const { problem, whole, has, use, strength } = toldOf(told);
        fc.pre(whole.total > 0);
        const parts = divisionOf(problem, whole, new Set())?.parts.map(([part = 0]) => part) ?? [];
        for (const [stage, part] of parts.entries())
          for (const [other, its] of parts.slice(0, stage).entries()) {
            const [now, then] = [
              Math.max(use(stage, part), use(other, its)),
              Math.max(use(stage, its), use(other, part)),
            ];
            if (then <= now)
              expect((strength(stage) - strength(other)) * (has(part) - has(its))).toBeGreaterThanOrEqual(0);
          }
      }),
      { numRuns: 150, seed: 6 },
    );
  });

  test('are what joints that are kept hold together, each with its sections in order, by their first', () => {
    const joints = [link(4, 2), link(0, 3), link(3, 1), link(2, 5)];
    const { traffic, links } = wholeOf(row(6, alike(2), { joints }));
    expect(partsOf({ traffic, links }, () => true)).toEqual([
      [0, 1, 3],
      [2, 4, 5],
    ]);
    expect(partsOf({ traffic, links }, (at) => at === 2)).toEqual([[0], [1, 3], [2], [4], [5]]);
  });
});

describe('Where stages bear too little', () => {
  /** How full the fuller of two stages is against an even use, in the most even of all divisions in two. */
  function mostEven(graph: Pick<DivisionProblem, 'sections' | 'joints'>, shares: readonly [number, number]): number {
    const sum = (of: readonly number[]): number => of.reduce((all, one) => all + one, 0);
    const traffic = graph.sections.map((one) => one.traffic);
    const total = sum(traffic);
    const [one = 0, other = 0] = shares.map((share) => Math.floor(share * total + 1e-9));
    const fullest = [...everyParting(graph, 2)].flatMap(([piece = 0]) => {
      const part = sum(traffic.filter((_, at) => (piece >>> at) & 1));
      return [part, total - part].map((here) => Math.max(here / one, (total - here) / other));
    });
    return (Math.min(...fullest) * (one + other)) / total;
  }

  test('the division that is shown is as even as any there is, to a hundredth: by looking at every one', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const graph = layout(9, 11, seed);
      const shares = seed % 2 === 0 ? ([0.5, 0.3] as const) : ([0.4, 0.4] as const);
      const found = divide({ ...graph, stages: shares.map(bearing) });
      const busiest = found.kind === 'impossible' ? found.nearest?.busiest : undefined;
      const best = mostEven(graph, shares);
      expect(busiest, `layout ${seed}`).toBeGreaterThan(best - 1e-9);
      expect(busiest, `layout ${seed}`).toBeLessThanOrEqual(best + 0.0101);
    }
  });

  test('none is shown that would ask twelve times as much of a stage as an even one', () => {
    // Two halves: the weak stage bears a tenth, or a fiftieth, of one of them.
    const nearest = (weak: number) => {
      const found = divide({
        sections: [50, 49, 1].map((traffic) => ({ traffic })),
        joints: [link(0, 1), { ...link(1, 2), gap: 'kept' }],
        stages: [bearing(0.5), bearing(weak)],
      });
      return found.kind === 'impossible' ? found.nearest : undefined;
    };
    // A half of all is ten times what it bears; an even use would be 1 of 0.55.
    expect(nearest(0.05)?.busiest).toBeCloseTo(5.5, 9);
    expect(nearest(0.01)).toBeUndefined();
  });
});

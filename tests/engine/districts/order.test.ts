// How a layout is looked through for its divisions: in an order that keeps few ends open, and without keeping what can come to nothing.
// Common practice, no source: what each shape asks for follows from drawing it.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Layer } from '../../../src/engine/districts/layer.ts';
import { orderOf, stepsOf } from '../../../src/engine/districts/order.ts';
import type { DivisionProblem } from '../../../src/engine/districts/problem.ts';
import { MOST_STATES, sweep } from '../../../src/engine/districts/sweep.ts';
import { wholeOf } from '../../../src/engine/districts/whole.ts';
import { alike, layout, link } from '../../divisions.ts';

const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);
const row = (count: number) => upTo(count - 1).map((at) => link(at, at + 1));
const ring = (count: number) => [...row(count), link(count - 1, 0)];
const problem = (traffic: readonly number[], joints: DivisionProblem['joints'], districts = 2): DivisionProblem => ({
  sections: traffic.map((one) => ({ traffic: one })),
  joints,
  stages: alike(districts),
});
const even = (count: number, joints: DivisionProblem['joints'], districts = 2) =>
  wholeOf(
    problem(
      upTo(count).map(() => 1),
      joints,
      districts,
    ),
  );

/** Sections that are taken up and still joined to any that are not, after each step. */
const openAfter = (whole: ReturnType<typeof wholeOf>) => stepsOf(whole, orderOf(whole)).map(({ stay }) => stay.length);

/** The same shape with its sections called anything. */
const called = (count: number, joints: DivisionProblem['joints']) =>
  fc
    .shuffledSubarray([...upTo(count)], { minLength: count, maxLength: count })
    .map((names) => joints.map((one) => ({ ...one, a: names[one.a] ?? 0, b: names[one.b] ?? 0 })));

describe('Sections are taken up so that few ends stay open', () => {
  test('of a row one, of an oval two, whatever its sections are called', () => {
    fc.assert(
      fc.property(called(9, row(9)), (joints) => {
        expect(openAfter(even(9, joints))).toEqual([1, 1, 1, 1, 1, 1, 1, 1, 0]);
      }),
      { numRuns: 20 },
    );
    fc.assert(
      fc.property(called(9, ring(9)), (joints) => {
        expect(openAfter(even(9, joints))).toEqual([1, 2, 2, 2, 2, 2, 2, 2, 0]);
      }),
      { numRuns: 20 },
    );
  });

  test('of a yard one: its stubs are taken up and done with', () => {
    // Six stubs on one throat: the throat alone stays open.
    const yard = upTo(6).map((at) => link(0, at + 1));
    fc.assert(
      fc.property(called(7, yard), (joints) => {
        expect(Math.max(...openAfter(even(7, joints)))).toBe(1);
      }),
      { numRuns: 20 },
    );
  });

  test('of a yard that forks in two and in two again one, and of one that forks once more two: fewer there cannot be', () => {
    // The path width of a complete binary tree: half its height, rounded up (graph theory, textbook, from memory).
    const forked = (times: number) => upTo(2 ** (times + 1) - 2).map((at) => link(Math.floor(at / 2), at + 1));
    for (const times of [2, 3]) {
      const count = forked(times).length + 1;
      fc.assert(
        fc.property(called(count, forked(times)), (joints) => {
          expect(Math.max(...openAfter(even(count, joints)))).toBe(Math.ceil(times / 2));
        }),
        { numRuns: 20 },
      );
    }
  });

  test.each<[string, number, number, readonly (readonly [number, number])[]]>([
    [
      'a double track with a crossover in each stretch two',
      ...([12, 2] as const),
      [...upTo(10).map((at) => [at, at + 2] as const), ...upTo(6).map((at) => [2 * at, 2 * at + 1] as const)],
    ],
    [
      'an oval with a siding at each stretch two',
      ...([16, 2] as const),
      upTo(8).flatMap((at) => [[at, (at + 1) % 8] as const, [at, at + 8] as const]),
    ],
    [
      'an oval with a yard in its middle that every stretch leads to three',
      ...([9, 3] as const),
      upTo(8).flatMap((at) => [[at, (at + 1) % 8] as const, [at, 8] as const]),
    ],
  ])('of %s', (_, count, open, pairs) => {
    const joints = pairs.map(([one, other]) => link(one, other));
    fc.assert(
      fc.property(called(count, joints), (renamed) => {
        expect(Math.max(...openAfter(even(count, renamed)))).toBe(open);
      }),
      { numRuns: 10 },
    );
  });

  test('every section once, in any layout, one part after the other where some hang on nothing', () => {
    for (const seed of upTo(20)) {
      const { sections, joints } = layout(14, 18, seed + 1, true);
      const order = orderOf(wholeOf({ sections, joints, stages: alike(2) }));
      expect([...order].sort((a, b) => a - b)).toEqual(upTo(14));
    }
    const apart = even(6, [link(0, 3), link(3, 5), link(1, 2), link(2, 4)]);
    expect([...orderOf(apart)].sort((a, b) => a - b)).toEqual(upTo(6));
    expect(openAfter(apart)).toEqual([1, 1, 0, 1, 1, 0]);
  });
});

describe('What is left beyond the open ends', () => {
  // A row of four: 0 and 1 are taken up, 2 and 3 are left.
  const joints = [link(0, 1, 5), { ...link(1, 2, 3), gap: 'kept' as const }, link(2, 3, 2)];
  const steps = () => stepsOf(wholeOf(problem([4, 3, 2, 1], joints)), [0, 1, 2, 3]);

  test('is traffic, and joints that might be cut, the cheapest first', () => {
    const [first, second, third, last] = steps();
    expect([first, second, third, last].map((step) => step?.trafficLeft)).toEqual([6, 3, 1, 0]);
    expect([first, second, third, last].map((step) => step?.cheapest)).toEqual([[0, 2, 7], [0, 2], [0, 2], [0]]);
  });

  test('is what is joined to the end that is open, and by which joints', () => {
    const [first, second, third, last] = steps();
    expect([first, second, third].map((step) => step?.ahead.map(({ traffic, links }) => [traffic, links]))).toEqual([
      [[3, [{ slot: 0, cost: 5, kept: false }]]],
      [[2, [{ slot: 0, cost: 3, kept: true }]]],
      [[1, [{ slot: 0, cost: 2, kept: false }]]],
    ]);
    expect(last?.ahead).toEqual([]);
    expect([first, second, third, last].map((step) => step?.backs.map(({ link: one, slot }) => [one, slot]))).toEqual([
      [],
      [[0, 0]],
      [[1, 0]],
      [[2, 0]],
    ]);
  });

  test('two ends of an oval are joined beyond it, two ends of a row that is taken up from its middle are not', () => {
    const joined = (links: DivisionProblem['joints'], order: readonly number[], at: number) => {
      const [one, other] = stepsOf(even(4, links), order)[at]?.joined ?? [];
      return one === other;
    };
    expect(joined(ring(4), [0, 1, 2, 3], 1)).toBe(true);
    expect(joined(row(4), [1, 2, 0, 3], 1)).toBe(false);
  });

  test('stretches that nothing joins to what is taken up are counted', () => {
    const apart = stepsOf(even(5, [link(0, 1), link(2, 3)]), upTo(5));
    expect(apart.map(({ islands }) => islands)).toEqual([2, 2, 1, 1, 0]);
  });
});

describe('States that look the same are kept once', () => {
  const state = (...numbers: number[]) => Int32Array.from(numbers);

  test('with the cheapest way to them, and of alike ways that with the less full district', () => {
    const layer = new Layer(2);
    layer.put(state(1, 2), 5, 0.8, 10, 1);
    layer.put(state(1, 3), 4, 0.1, 11, 2);
    layer.put(state(1, 2), 6, 0.1, 12, 3);
    expect([layer.count, layer.cost[0], layer.parent[0]]).toEqual([2, 5, 10]);
    layer.put(state(1, 2), 5, 0.7, 13, 4);
    expect([layer.count, layer.cost[0], layer.use[0], layer.parent[0], layer.kept[0]]).toEqual([2, 5, 0.7, 13, 4]);
    layer.put(state(1, 2), 3, 0.9, 14, 5);
    expect([layer.count, layer.cost[0], layer.use[0]]).toEqual([2, 3, 0.9]);
  });

  test('however many there are, and the cheaper half of them where there is no room for more', () => {
    const layer = new Layer(1);
    for (const at of upTo(5000)) layer.put(state(at), 5000 - at, at, at, at);
    for (const at of upTo(5000)) layer.put(state(at), 9999, 0, 0, 0);
    expect(layer.count).toBe(5000);
    expect([layer.rows[77], layer.cost[77], layer.use[77], layer.parent[77], layer.kept[77]]).toEqual([
      77, 4923, 77, 77, 77,
    ]);
    layer.halve();
    expect(layer.count).toBe(2500);
    expect([...layer.rows.subarray(0, 2500)]).toEqual(upTo(2500).map((at) => 2500 + at));
    expect([layer.cost[0], layer.use[0], layer.parent[0], layer.kept[0]]).toEqual([2500, 2500, 2500, 2500]);
    // What was dropped may come again, what stayed is still known.
    layer.put(state(2500), 1, 0, 0, 0);
    layer.put(state(3), 1, 0, 0, 0);
    expect([layer.count, layer.cost[0]]).toEqual([2501, 1]);
  });

  test('as many as are kept at the most, each found again: with all of them in one place that would not end', () => {
    const layer = new Layer(2);
    const row = state(0, 0);
    for (let at = 0; at < MOST_STATES; at++) {
      row.set([at % 500, at]);
      layer.put(row, 7, 0, at, at);
    }
    for (const at of [0, 1234, MOST_STATES - 1]) layer.put(state(at % 500, at), 7, 0, 1, 1);
    expect(layer.count).toBe(MOST_STATES);
    expect([layer.rows[2 * 1234 + 1], layer.parent[1234]]).toEqual([1234, 1234]);
  });

  test('of alike costs the half with the less full districts stays', () => {
    const layer = new Layer(1);
    for (const at of upTo(4)) layer.put(state(at), 7, [0.4, 0.1, 0.3, 0.2][at] ?? 0, at, at);
    layer.halve();
    expect([...layer.rows.subarray(0, layer.count)]).toEqual([1, 3]);
    // One that was dropped is new when it comes again.
    layer.put(state(2), 9, 0.5, 0, 0);
    expect([layer.count, layer.rows[2], layer.cost[2], layer.use[2]]).toEqual([3, 2, 9, 0.5]);
  });
});

describe('What can come to nothing is not looked at', () => {
  const looked = (whole: ReturnType<typeof wholeOf>, limit: number) => {
    const sweeping = sweep(whole, stepsOf(whole, orderOf(whole)), limit);
    for (;;) {
      const turn = sweeping.next();
      if (turn.done === true) return turn.value;
    }
  };

  test('a row in two: at each section it is whole, or was cut at one of the joints before, and never twice', () => {
    const found = looked(even(12, row(12)), 1);
    expect(found.kept?.size).toBe(10);
    // One before the first section, then one more after each.
    expect([found.whole, found.states]).toEqual([true, 1 + (11 * 12) / 2]);
  });

  test('a row in one, and one that is to cost nothing: one state a section, and what a gap would cost is told', () => {
    const one = looked(even(12, row(12), 1), 5);
    expect([one.kept?.size, one.states]).toEqual([11, 12]);
    const free = looked(even(12, row(12)), 0);
    expect([free.kept, free.beyond, free.states <= 12]).toEqual([undefined, 1, true]);
  });

  test('an oval in two for one gap is none: it takes two, so the first is never made', () => {
    const found = looked(even(12, ring(12)), 1);
    expect([found.kept, found.beyond]).toEqual([undefined, 2]);
    expect(found.states).toBe(12);
  });
});

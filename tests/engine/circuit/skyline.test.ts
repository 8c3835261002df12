// How little has to be kept of a long thin network, whatever its places are called, and that what is kept solves it.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closeOrder, ints, Skyline, skylineOf } from '../../../src/engine/circuit/skyline.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';

type Edge = readonly [number, number];

const ends = (edges: readonly Edge[]): readonly [Int32Array, Int32Array] => [
  Int32Array.from(edges, ([from]) => from),
  Int32Array.from(edges, ([, to]) => to),
];

/** Places of a network under other names. */
const renamed = (edges: readonly Edge[], names: readonly number[]): readonly Edge[] =>
  edges.map(([from, to]) => [names[from] ?? from, names[to] ?? to]);

/** Entries that are kept beside the diagonal once the places are ordered. */
function kept(count: number, edges: readonly Edge[]): number {
  const rank = closeOrder(count, ...ends(edges));
  expect([...rank].sort((a, b) => a - b)).toEqual([...rank.keys()]);
  const rows = edges.map(([from, to]): Edge => [rank[from] ?? -1, rank[to] ?? -1]);
  return skylineOf(count, ...ends(rows)).reduce((sum, first, row) => sum + row - first, 0);
}

const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);
const line = (count: number): readonly Edge[] => upTo(count - 1).map((i) => [i, i + 1]);

/** A shape of any size, its places called anything. */
const called = (shape: (count: number) => readonly Edge[]) =>
  fc.integer({ min: 4, max: 30 }).chain((count) => {
    const edges = shape(count);
    const places = 1 + Math.max(...edges.flat());
    return fc
      .shuffledSubarray([...upTo(places)], { minLength: places, maxLength: places })
      .map((names) => ({ places, edges: renamed(edges, names) }));
  });

// Common practice, no source: what each shape costs follows from drawing it.
describe('However the places of a layout are called', () => {
  const everyName = (shape: (count: number) => readonly Edge[], most: (count: number) => number) =>
    fc.assert(
      fc.property(called(shape), ({ places, edges }) => {
        expect(kept(places, edges)).toBe(most(places));
      }),
    );

  test('a line keeps one entry for each wire', () => everyName(line, (places) => places - 1));

  test('an oval keeps two for each place but three: it is a line laid double', () =>
    everyName(
      (count) => [...line(count), [count - 1, 0]],
      (places) => 2 * places - 3,
    ));

  test('a place with many feeders keeps one for each of them, not one for every pair', () =>
    everyName(
      (count) => upTo(count).map((i) => [0, i + 1]),
      (places) => places - 1,
    ));

  test('a bus with a feeder at every place keeps no more than three for two places', () => {
    const comb = (count: number) => [...line(count), ...upTo(count).map((i): Edge => [i, count + i])];
    fc.assert(
      fc.property(called(comb), ({ places, edges }) => {
        expect(kept(places, edges)).toBeLessThanOrEqual(1.5 * places);
      }),
    );
  });

  test('parts that hang together by the reference alone keep nothing of each other', () => {
    const apart: readonly Edge[] = [
      [0, 4],
      [4, 2],
      [1, 3],
      [2, -1],
      [-1, 3],
    ];
    expect(kept(5, apart)).toBe(3);
    expect(kept(3, [])).toBe(0);
  });
});

describe('What is kept', () => {
  const wires = fc.array(fc.record({ a: fc.nat(6), b: fc.nat(6), siemens: spread(0.1, 10) }), { maxLength: 12 });
  const currents = fc.array(spread(-3, 3), { minLength: 7, maxLength: 7 });

  test('gives volts that drive just what is brought into each place, from whichever place it begins', () => {
    fc.assert(
      fc.property(wires, currents, fc.nat(6), (between, brought, quiet) => {
        const matrix = new Skyline(skylineOf(7, ...ends(between.map(({ a, b }): Edge => [a, b]))));
        for (const row of upTo(7)) matrix.addBetween(row, -1, 1);
        for (const { a, b, siemens } of between) matrix.addBetween(a, b, siemens);
        expect(matrix.factor()).toBe(true);
        const right = brought.map((amps, row) => (row < quiet ? 0 : amps));
        const volts = Float64Array.from(right);
        matrix.solve(volts);
        const from = (row: number) => volts[row] ?? Number.NaN;
        for (const [row, amps] of right.entries()) {
          const away = between.map(({ a, b, siemens }) => {
            if (a === row) return siemens * (from(a) - from(b));
            return b === row ? siemens * (from(b) - from(a)) : 0;
          });
          near(
            away.reduce((sum, one) => sum + one, from(row)),
            amps,
            1e-9,
          );
        }
      }),
    );
  });

  test('a millimetre of wire behind a metre of it loses three digits; alone it loses none', () => {
    const two = new Skyline(ints(2, () => 0));
    two.addBetween(0, -1, 1);
    two.addBetween(0, 1, 999);
    expect(two.factor()).toBe(true);
    near(two.lost, 1000, 1e-6);
    const one = new Skyline(ints(1, () => 0));
    one.addBetween(-1, 0, 2);
    expect([one.factor(), one.lost]).toEqual([true, 1]);
  });

  test('what hangs on nothing, or on less than nothing, cannot be solved', () => {
    const floating = new Skyline(ints(2, () => 0));
    floating.addBetween(0, 1, 5);
    expect(floating.factor()).toBe(false);
    const below = new Skyline(ints(1, () => 0));
    below.addBetween(0, -1, -1);
    expect(below.factor()).toBe(false);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assign, FORBIDDEN } from '../../../src/engine/power/assignment.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';

/** Least cost over every way to give each row a column of its own. */
function cheapest(costs: readonly (readonly number[])[]): number {
  const [first, ...rest] = costs;
  if (first === undefined) return 0;
  return Math.min(
    ...first.map((cost, column) => cost + cheapest(rest.map((row) => row.filter((_, other) => other !== column)))),
  );
}

const cost = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 0, max: 50 }) },
  { weight: 1, arbitrary: fc.constant(FORBIDDEN) },
);
const tables = fc
  .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 0, max: 2 }))
  .chain(([rows, more]) =>
    fc.array(fc.array(cost, { minLength: rows + more, maxLength: rows + more }), { minLength: rows, maxLength: rows }),
  );

describe('giving each unit a supply of its own', () => {
  test('costs as little as the cheapest of all ways, forbidden pairs and spare supplies included', () => {
    fc.assert(
      fc.property(tables, (costs) => {
        const { columns, cost: total, permitted } = assign(costs);
        expect(new Set(columns).size).toBe(costs.length);
        near(total, cheapest(costs), 1e-3, 'cost');
        expect(permitted).toBe(cheapest(costs) < FORBIDDEN);
        expect(columns.reduce((sum, column, row) => sum + (costs[row]?.[column] ?? Number.NaN), 0)).toBe(total);
      }),
      { numRuns: 200 },
    );
  });

  test('seven by seven, against all 5040 ways', () => {
    const row = fc.array(spread(0, 1), { minLength: 7, maxLength: 7 });
    fc.assert(
      fc.property(fc.array(row, { minLength: 7, maxLength: 7 }), (costs) => {
        near(assign(costs).cost, cheapest(costs), 1e-9, 'cost');
      }),
      { numRuns: 8 },
    );
  });

  test('says when a forbidden pair cannot be avoided', () => {
    expect(assign([[FORBIDDEN, FORBIDDEN]]).permitted).toBe(false);
    expect(assign([[FORBIDDEN, 3]])).toEqual({ columns: [1], cost: 3, permitted: true });
  });

  test('nothing to give is no cost', () => expect(assign([])).toEqual({ columns: [], cost: 0, permitted: true }));

  test.each<[string, number[][], string]>([
    ['more units than supplies', [[1], [2]], '2 rows, but only 1 columns'],
    ['rows of different length', [[1, 2], [3]], 'a row of 1'],
    ['a cost without end', [[Number.POSITIVE_INFINITY]], 'Infinity'],
    ['a cost that is no number', [[Number.NaN]], 'NaN'],
  ])('%s is refused by name', (_, costs, named) => {
    expect(() => assign(costs)).toThrow(RangeError);
    expect(() => assign(costs)).toThrow(named);
  });
});

// Divisions against what is published: the fewest cut edges of a state’s counties, counts of partings of grids, perimeters of squares.
import { describe, expect, test } from 'vitest';
import type { Divided } from '../../src/engine/districts/problem.ts';
import type { DivisionProblem } from '../../src/engine/index.ts';
import { divide } from '../../src/engine/index.ts';
import { alike, grid, link, wrongWith } from '../divisions.ts';
import { everyParting } from './every-division.ts';

/** Divides with each district within so much of an even share, and checks every rule of it. */
function divided(graph: Pick<DivisionProblem, 'sections' | 'joints'>, districts: number, tolerance: number): Divided {
  const problem = { ...graph, stages: alike(districts) };
  const found = divide(problem, { tolerance });
  if (found.kind === 'divided') expect(wrongWith(problem, found.division)).toEqual([]);
  return found;
}

const gapsOf = (found: Divided): number | undefined =>
  found.kind === 'divided' && found.proof.kind === 'proven' ? found.division.cuts.length : undefined;

// Source: validi-buchanan-2022, tables 1, 9 and 13: 2020 census, deviation of 0.5 per cent.
describe('the counties of Maine in two districts', () => {
  const people = [
    153923, 32856, 71870, 54418, 30768, 52228, 57833, 38786, 34457, 197131, 39736, 35293, 107702, 122151, 281674, 17535,
  ];
  const borders =
    '0-1 0-2 0-3 0-5 0-7 0-15 1-2 1-3 2-5 2-15 3-7 3-10 4-5 4-6 4-12 4-13 5-7 5-13 5-15 6-9 6-12 6-14 7-8 7-10 7-13 8-10 8-11 8-13 9-14 11-12 11-13 11-14 12-13 12-14';
  const maine = {
    sections: people.map((traffic) => ({ traffic })),
    joints: borders.split(' ').map((border) => {
      const [a = 0, b = 0] = border.split('-').map(Number);
      return link(a, b);
    }),
  };

  test('takes 16 borders, and not the 8 that are enough where a district may lie in pieces', () => {
    const found = divided(maine, 2, 0.005);
    expect(gapsOf(found)).toBe(16);
    const shares = found.kind === 'divided' ? found.division.shares : [];
    const all = people.reduce((sum, count) => sum + count, 0);
    for (const share of shares) {
      expect(share * all).toBeGreaterThanOrEqual(660860);
      expect(share * all).toBeLessThanOrEqual(667501);
    }
  });

  test('is the same by looking at every parting in two', () => {
    let fewest = Number.POSITIVE_INFINITY;
    for (const [one = 0] of everyParting(maine, 2)) {
      const count = people.reduce((sum, number, county) => sum + ((one >>> county) & 1 ? number : 0), 0);
      if (count < 660860 || count > 667501) continue;
      fewest = Math.min(fewest, maine.joints.filter(({ a, b }) => ((one >>> a) & 1) !== ((one >>> b) & 1)).length);
    }
    expect(fewest).toBe(16);
  });
});

describe('squares in parts of the same size', () => {
  test.each([
    [3, 3, 6],
    [4, 2, 4],
    [4, 4, 8],
    // The perimeters alone would allow 15.
    [5, 5, 16],
    [6, 2, 6],
    [6, 3, 10],
    [6, 4, 12],
    [6, 6, 18],
  ])('%d by itself in %d takes %d gaps', (size, districts, gaps) => {
    expect(gapsOf(divided(grid(size), districts, 0))).toBe(gaps);
  });
});

// The counts judge the enumeration by which divisions are judged elsewhere.
describe('how many partings there are', () => {
  const count = (graph: Pick<DivisionProblem, 'sections' | 'joints'>, parts: number, size?: number): number => {
    const bitsOf = (piece: number): number => [...piece.toString(2)].filter((bit) => bit === '1').length;
    let sum = 0;
    for (const _ of everyParting(graph, parts, (piece) => size === undefined || bitsOf(piece) === size)) sum++;
    return sum;
  };

  // Source: oeis-grids.
  test.each([
    [2, 6],
    [3, 53],
    [4, 627],
  ])('a square of %d in two connected parts: %d', (size, ways) => {
    expect(count(grid(size), 2)).toBe(ways);
  });

  // Source: oeis-grids.
  test.each([
    [3, 62],
    [4, 454],
  ])('%d rows of five in five connected parts of the same size: %d', (rows, ways) => {
    expect(count(grid(rows, 5), 5, rows)).toBe(ways);
  });
});

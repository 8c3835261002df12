// Divisions against a solver of integer programmes that knows nothing of track: the same fewest gaps for the same layout.
import loadHighs from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { DivisionProblem } from '../../src/engine/index.ts';
import { divide } from '../../src/engine/index.ts';
import type { Windows } from '../division-model.ts';
import { divisionModel } from '../division-model.ts';
import { alike, bearing, layout, wrongWith } from '../divisions.ts';
import { seeded } from '../seeded.ts';

let highs: Awaited<ReturnType<typeof loadHighs>>;
beforeAll(async () => {
  highs = await loadHighs();
});

/** What the second solver finds: the cost, or that there is none. */
function second(graph: Pick<DivisionProblem, 'sections' | 'joints'>, windows: Windows, same: boolean): number | 'none' {
  const { Status, ObjectiveValue } = highs.solve(divisionModel(graph, windows, same), { mip_rel_gap: 0 });
  if (Status === 'Infeasible') return 'none';
  expect(Status).toBe('Optimal');
  return Math.round(ObjectiveValue);
}

function ours(problem: DivisionProblem, tolerance?: number): number | 'none' {
  const found = divide(problem, { tolerance });
  if (found.kind === 'impossible') return 'none';
  if (found.kind === 'not-found') throw new Error('A layout so small was not looked through');
  expect(wrongWith(problem, found.division)).toEqual([]);
  expect(found.proof).toEqual({ kind: 'proven' });
  return found.division.cost;
}

const TOLERANCE = 0.15;

function graphOf(seed: number, count: number): Pick<DivisionProblem, 'sections' | 'joints'> {
  const random = seeded(seed);
  const { sections, joints } = layout(count, count + 4, seed, seed % 2 === 0);
  return { sections, joints: joints.map((joint) => (random() < 0.08 ? { ...joint, gap: 'kept' } : joint)) };
}

describe('the same fewest gaps as a solver of integer programmes finds', () => {
  test.each(Array.from({ length: 20 }, (_, at) => [at + 1, 12 + (at % 7) * 2, at % 4 === 3 ? 3 : 2]))(
    'layout %d: %d sections in %d districts alike',
    (seed, count, districts) => {
      const graph = graphOf(seed, count);
      const even = graph.sections.reduce((sum, { traffic }) => sum + traffic, 0) / districts;
      const window = {
        least: Math.ceil(even * (1 - TOLERANCE) - 1e-9),
        most: Math.floor(even * (1 + TOLERANCE) + 1e-9),
      };
      const windows = Array.from({ length: districts }, () => window);
      expect(ours({ ...graph, stages: alike(districts) }, TOLERANCE)).toBe(second(graph, windows, true));
    },
  );

  test.each([31, 32, 33, 34, 35, 36])('layout %d: two stages of which one bears more', (seed) => {
    const graph = graphOf(seed, 18);
    const total = graph.sections.reduce((sum, { traffic }) => sum + traffic, 0);
    const windows = [0.68, 0.36].map((share) => ({ least: 0, most: Math.floor(share * total + 1e-9) }));
    expect(ours({ ...graph, stages: [bearing(0.68), bearing(0.36)] })).toBe(second(graph, windows, false));
  });
});

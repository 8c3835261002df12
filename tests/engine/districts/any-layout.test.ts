// Dividing any layout: what holds of the best division whatever its shape, traffic and stages are.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { atOnce } from '../../../src/engine/at-once.ts';
import { divisionChoiceInParts } from '../../../src/engine/districts/choices.ts';
import type { Divided } from '../../../src/engine/districts/problem.ts';
import type { DivisionProblem } from '../../../src/engine/index.ts';
import { divide } from '../../../src/engine/index.ts';
import { alike, bearing, layout, wrongWith } from '../../divisions.ts';
import { seeded } from '../../seeded.ts';
import { spread } from '../../spread.ts';

describe('whatever the layout', () => {
  const some = fc.record({
    seed: fc.integer({ min: 1, max: 1e6 }),
    count: fc.integer({ min: 6, max: 22 }),
    districts: fc.integer({ min: 2, max: 4 }),
    share: fc.double({ min: 0.3, max: 0.7, noNaN: true }),
  });
  const costOf = (found: Divided): number =>
    found.kind === 'divided' ? found.division.cost : Number.POSITIVE_INFINITY;
  const runs = { numRuns: 60, seed: 8 };

  test('other names of the sections change nothing', () => {
    fc.assert(
      fc.property(some, ({ seed, count, districts, share }) => {
        const { sections, joints } = layout(count, count + 4, seed, true);
        const random = seeded(seed);
        const names = sections.map((_, at) => ({ at, lot: random() })).sort((a, b) => a.lot - b.lot);
        const named = (section: number): number => names.findIndex(({ at }) => at === section);
        const renamed: DivisionProblem = {
          sections: names.map(({ at }) => ({ traffic: sections[at]?.traffic ?? 0 })),
          joints: joints.toReversed().map((joint) => ({ ...joint, a: named(joint.b), b: named(joint.a) })),
          stages: alike(districts, share),
        };
        const [one, other] = [divide({ sections, joints, stages: alike(districts, share) }), divide(renamed)];
        expect(costOf(other)).toBe(costOf(one));
        if (one.kind === 'divided' && other.kind === 'divided') {
          expect(other.division.busiest).toBeCloseTo(one.division.busiest, 9);
        }
      }),
      runs,
    );
  });

  test('a better stage never makes the best division worse', () => {
    fc.assert(
      fc.property(some, spread(0, 0.3), ({ seed, count, districts, share }, more) => {
        const graph = layout(count, count + 4, seed, true);
        const better = [bearing(share + more), ...alike(districts - 1, share)];
        expect(costOf(divide({ ...graph, stages: better }))).toBeLessThanOrEqual(
          costOf(divide({ ...graph, stages: [bearing(share), ...alike(districts - 1, share)] })),
        );
      }),
      runs,
    );
  });

  test('a joint that may no longer be cut never makes it better', () => {
    fc.assert(
      fc.property(some, fc.nat(), ({ seed, count, districts, share }, lot) => {
        const { sections, joints } = layout(count, count + 4, seed, true);
        const stages = alike(districts, share);
        const forbidden = joints.map((joint, at) =>
          at === lot % joints.length ? { ...joint, gap: 'kept' as const } : joint,
        );
        expect(costOf(divide({ sections, joints: forbidden, stages }))).toBeGreaterThanOrEqual(
          costOf(divide({ sections, joints, stages })),
        );
      }),
      runs,
    );
  });

  test('every way of a choice keeps every rule', () => {
    fc.assert(
      fc.property(some, ({ seed, count, districts, share }) => {
        const problem = { ...layout(count, count + 4, seed, true), stages: alike(districts, share) };
        const choice = atOnce(divisionChoiceInParts(problem));
        for (const way of choice.kind === 'choice' ? choice.ways : []) {
          expect(wrongWith(problem, way.division)).toEqual([]);
        }
      }),
      { numRuns: 20, seed: 8 },
    );
  });
});

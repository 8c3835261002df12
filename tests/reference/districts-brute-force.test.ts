// Divisions against every division looked at one by one, each district judged by the law of what it draws.
import { describe, expect, test } from 'vitest';
import { atOnce } from '../../src/engine/at-once.ts';
import { fewestDistrictsInParts } from '../../src/engine/districts/choices.ts';
import type { DivisionStage } from '../../src/engine/districts/problem.ts';
import type { DivisionProblem } from '../../src/engine/index.ts';
import { atLeast, capacity, districtLoad, divide, judge } from '../../src/engine/index.ts';
import type { Fleet } from '../../src/engine/power/fleet.ts';
import { bearsShare } from '../../src/engine/power/own-districts.ts';
import { layout, wrongWith } from '../divisions.ts';
import { dc, h0, unit } from '../samples.ts';
import { seeded } from '../seeded.ts';
import { cheapestDivision } from './every-division.ts';

/** Whether a stage bears a share and what is always on there: both in one law, moved by so many cells. */
function judgedStage(fleet: Fleet, amps: number): DivisionStage['bears'] {
  const able = capacity(dc(amps), unit(amps));
  return (share, fixedAmps) => {
    const load = districtLoad(share > 0 ? fleet : { ...fleet, trains: [], moving: 0 }, share > 0 ? share : 1);
    const { step, mass } = load.distribution;
    const cells = Math.round(fixedAmps / step);
    expect(Math.abs(cells * step - fixedAmps), 'lies on the grid').toBeLessThan(1e-9);
    const moved = new Float64Array(mass.length + cells);
    moved.set(mass, cells);
    const distribution = { step, mass: moved, ...(load.distribution.spread === true ? { spread: true } : {}) };
    return atLeast(judge({ ...load, distribution, powerUp: 0 }, able).verdict, 'tight');
  };
}

/** A small layout with its doubts: joints that are kept, cut or too near each other, feeds, draws that are always on. */
function small(seed: number, stages: readonly DivisionStage[]): DivisionProblem {
  const random = seeded(seed);
  const count = 9 + Math.floor(random() * 6);
  const { sections, joints } = layout(count, count + 2 + Math.floor(random() * 4), seed, true);
  const gaps = joints.map((joint) => {
    const lot = random();
    if (lot < 0.12) return { ...joint, gap: 'kept' as const };
    return lot < 0.16 ? { ...joint, gap: 'cut' as const } : joint;
  });
  const conflicts = [0, 1, 2].map(
    () => [Math.floor(random() * joints.length), Math.floor(random() * joints.length)] as const,
  );
  return {
    sections: sections.map((section) => ({ ...section, fixedAmps: random() < 0.2 ? 0.2 : 0 })),
    joints: gaps,
    stages: stages.map((stage, at) => (random() < 0.4 ? { ...stage, feeds: [(at * 5) % count] } : stage)),
    conflicts: conflicts.filter(([a, b]) => a !== b),
  };
}

const costOf = (problem: DivisionProblem): number | undefined => {
  const found = divide(problem);
  if (found.kind !== 'divided') return undefined;
  expect(wrongWith(problem, found.division)).toEqual([]);
  expect(found.proof).toEqual({ kind: 'proven' });
  return found.division.cost;
};

describe('the cheapest division of up to 14 sections is the cheapest of all there are', () => {
  const bearing = (share: number): DivisionStage => ({
    bears: (part, fixedAmps) => part + fixedAmps / 4 <= share + 1e-9,
  });
  const [most, half, third] = [bearing(0.75), bearing(0.55), bearing(0.4)];

  test('with limits by share', () => {
    let none = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const stages = [
        [most, half],
        [half, half],
        [half, third, third],
        [most, third, half],
        [third, third, third, third],
      ];
      const problem = small(seed, stages[seed % stages.length] ?? []);
      const expected = cheapestDivision(problem);
      if (expected === undefined) none++;
      expect(costOf(problem), `layout ${seed}`).toBe(expected);
    }
    expect(none, 'layouts without a division').toBeGreaterThan(5);
    expect(none, 'layouts without a division').toBeLessThan(45);
  });

  test('and so many districts as it takes at least: with one fewer there is none, by looking at every one', () => {
    const counts = new Set<number>();
    for (let seed = 301; seed <= 330; seed++) {
      const stages = seed % 2 === 0 ? [half, half, third, third] : [most, third, third];
      const problem = { ...small(seed, []), stages };
      const { districts, divided } = atOnce(fewestDistrictsInParts(problem));
      const expected = stages.findIndex(
        (_, at) => cheapestDivision({ ...problem, stages: stages.slice(0, at + 1) }) !== undefined,
      );
      expect(divided.kind === 'divided' ? districts : 0, `layout ${seed}`).toBe(expected + 1);
      if (divided.kind === 'divided') {
        const here = { ...problem, stages: stages.slice(0, districts) };
        expect(wrongWith(here, divided.division), `layout ${seed}`).toEqual([]);
      }
      counts.add(expected + 1);
    }
    expect(counts.size).toBeGreaterThan(2);
  });

  test('with stages judged by what trains there draw', () => {
    const fleet = h0(8, 2, 6);
    const stages = [3, 2].map((amps): DivisionStage => ({ bears: judgedStage(fleet, amps) }));
    const own = [3, 2].map((amps): DivisionStage => ({ bears: bearsShare(fleet, capacity(dc(amps), unit(amps))) }));
    for (let seed = 201; seed <= 206; seed++) {
      const problem = small(seed, own);
      const feeds = problem.stages.map((stage) => stage.feeds);
      const judged = { ...problem, stages: stages.map((stage, at) => ({ ...stage, feeds: feeds[at] })) };
      expect(costOf(problem), `layout ${seed}`).toBe(cheapestDivision(judged));
    }
  });
});

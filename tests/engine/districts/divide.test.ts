// Dividing a layout, as somebody with a saw in the hand would ask of it.
import { describe, expect, test } from 'vitest';
import { atOnce } from '../../../src/engine/at-once.ts';
import { divisionChoiceInParts, fewestDistrictsInParts } from '../../../src/engine/districts/choices.ts';
import { deepen } from '../../../src/engine/districts/deepen.ts';
import { divideInParts } from '../../../src/engine/districts/divide.ts';
import { orderOf } from '../../../src/engine/districts/order.ts';
import type { Divided, DivisionStage } from '../../../src/engine/districts/problem.ts';
import { Search } from '../../../src/engine/districts/search.ts';
import { MOST_DIVIDED, wholeOf } from '../../../src/engine/districts/whole.ts';
import type { Division, DivisionProblem } from '../../../src/engine/index.ts';
import { capacity, divide } from '../../../src/engine/index.ts';
import { bearsShare } from '../../../src/engine/power/own-districts.ts';
import { alike, bearing, grid, layout, link, wrongWith } from '../../divisions.ts';
import { dc, h0, unit } from '../../samples.ts';

const divisionChoice = (problem: DivisionProblem) => atOnce(divisionChoiceInParts(problem));
const fewestDistricts = (problem: DivisionProblem, more?: DivisionStage) =>
  atOnce(fewestDistrictsInParts(problem, more));

/** A ring of so many sections with the same traffic. */
const ring = (count: number): Pick<DivisionProblem, 'sections' | 'joints'> => ({
  sections: Array.from({ length: count }, () => ({ traffic: 1 })),
  joints: Array.from({ length: count }, (_, at) => link(at, (at + 1) % count)),
});

function division(found: Divided): Division {
  if (found.kind !== 'divided') throw new Error(`It is ${found.kind}`);
  expect(found.proof).toEqual({ kind: 'proven' });
  return found.division;
}

const because = (found: Divided): readonly string[] =>
  found.kind === 'impossible' ? found.because.map(({ kind }) => kind) : [found.kind];

describe('an oval', () => {
  test('in two districts takes two gaps, as far apart as they can be', () => {
    const { cuts, shares, evenness } = division(divide({ ...ring(8), stages: alike(2) }));
    expect(cuts).toHaveLength(2);
    expect(shares).toEqual([0.5, 0.5]);
    expect(evenness).toBe('good');
  });

  test('with a larger and a smaller stage gives the larger one more of the traffic', () => {
    const fleet = h0(6, 0, 6);
    const stages = [3, 2].map((amps) => ({ bears: bearsShare(fleet, capacity(dc(amps), unit(amps))) }));
    const { shares } = division(divide({ ...ring(10), stages }));
    expect(shares[0] ?? 0).toBeGreaterThan(0.5);
  });

  test('of two stages that each bear everything gives the stronger one the busier half', () => {
    const odd = ring(9);
    for (const [first, second] of [
      [3, 2],
      [2, 3],
    ] as const) {
      const stages = [first, second].map((usable) => ({ ...bearing(1), usable }));
      const { shares } = division(divide({ ...odd, stages }));
      expect(shares[first > second ? 0 : 1]).toBeCloseTo(5 / 9, 9);
    }
  });

  test('of two stages gives the busier half to the one that bears more of it, though the other has more amperes', () => {
    const stages = [
      { ...bearing(1), usable: 1 },
      { ...bearing(0.9), usable: 5 },
    ];
    for (const [both, more] of [[stages, 0] as const, [stages.toReversed(), 1] as const])
      expect(division(divide({ ...ring(9), stages: both })).shares[more]).toBeCloseTo(5 / 9, 9);
  });

  test('gives a stage no less than it is to carry, though the other would be less full with the busier part', () => {
    // Even use is 10.3 and 9.7 of twenty, three tenths of that 3.1 and 2.9: the three that are left are enough for the second alone.
    const first: DivisionStage = { bears: (share, amps) => share <= 1 - amps + 1e-9 };
    const two = {
      sections: [{ traffic: 17, fixedAmps: 0.1 }, { traffic: 3 }],
      joints: [link(0, 1)],
      stages: [first, bearing(0.95)],
    };
    expect(division(divide(two, { least: 0.3 })).parts).toEqual([[0], [1]]);
    expect(division(divide(two)).parts).toEqual([[1], [0]]);
  });

  test('tells of each district what its own stage bears', () => {
    const { most, shares } = division(divide({ ...ring(10), stages: [bearing(0.8), bearing(0.3)] }));
    expect(most.map((one) => Number(one.toFixed(2)))).toEqual([0.8, 0.3]);
    expect(shares[0] ?? 0).toBeGreaterThan(shares[1] ?? 1);
  });

  test('is cut on the plain straight, not in the tunnel', () => {
    const oval = ring(8);
    const joints = oval.joints.map((joint, at) => ({ ...joint, cost: at === 1 || at === 5 ? 1 : 2.5 }));
    expect(division(divide({ ...oval, joints, stages: alike(2) })).cuts).toEqual([1, 5]);
  });

  test('in one district takes no gap', () => {
    expect(division(divide({ ...ring(8), stages: alike(1) })).cuts).toEqual([]);
  });
});

test('where nothing runs yet, every division is as even as another, and has the fewest gaps', () => {
  const sections = Array.from({ length: 4 }, () => ({ traffic: 0 }));
  const found = division(divide({ sections, joints: [link(0, 1, 3), link(1, 2, 2), link(2, 3, 3)], stages: alike(2) }));
  expect(found).toMatchObject({ cuts: [1], cost: 2, shares: [0, 0], most: [1, 1], busiest: 1, evenness: 'good' });
  // Nor is any nearer to even where none is possible.
  const row = { sections: sections.slice(1), joints: [link(0, 1), link(1, 2)], stages: alike(3) };
  const none = divide({ ...row, conflicts: [[0, 1]] });
  expect(none).toMatchObject({ kind: 'impossible', because: [{ kind: 'near' }] });
  expect(none).not.toHaveProperty('nearest');
});

describe('what somebody wants of a division', () => {
  test('a section with feeders of a stage belongs to it', () => {
    const stages = [
      { ...bearing(0.6), feeds: [0] },
      { ...bearing(0.6), feeds: [1] },
    ];
    const { parts } = division(divide({ ...ring(8), stages }));
    expect(parts[0]).toContain(0);
    expect(parts[1]).toContain(1);
  });

  test('a joint that cannot be gapped stays joined', () => {
    const oval = ring(6);
    const joints = oval.joints.map((joint, at) => (at % 3 === 0 ? joint : { ...joint, gap: 'kept' as const }));
    expect(division(divide({ ...oval, joints, stages: alike(2) })).cuts).toEqual([0, 3]);
  });

  test('two gaps that a train would span are not both made', () => {
    const oval = ring(4);
    const free = division(divide({ ...oval, stages: alike(2) })).cuts;
    expect(free).toHaveLength(2);
    const [one = 0, other = 0] = free;
    const found = division(divide({ ...oval, stages: alike(2), conflicts: [[one, other]] }));
    expect(found.cuts).not.toEqual(free);
    expect(wrongWith({ ...oval, stages: alike(2), conflicts: [[one, other]] }, found)).toEqual([]);
  });

  test('a gap that is there in any case costs nothing more', () => {
    const oval = ring(6);
    const joints = oval.joints.map((joint, at) => ({ ...joint, cost: at === 2 ? 0 : 1 }));
    const found = division(divide({ ...oval, joints, stages: alike(2) }));
    expect(found.cuts).toContain(2);
    expect(found.cost).toBe(1);
  });

  test('draws that are always on take room from the trains', () => {
    const oval = ring(8);
    const sections = oval.sections.map((section, at) => ({ ...section, fixedAmps: at < 2 ? 0.5 : 0 }));
    const stages = alike(2).map(() => ({ bears: (share: number, amps: number) => share + amps / 4 <= 0.63 }));
    const joints = oval.joints.map((joint, at) => (at === 0 ? { ...joint, gap: 'kept' as const } : joint));
    const { parts, shares } = division(divide({ ...oval, sections, joints, stages }));
    const lit = parts.findIndex((part) => part.includes(0) && part.includes(1));
    expect(shares[lit]).toBe(0.375);
  });
});

describe('few gaps or even use', () => {
  // A bridge near one end, and a ladder of three ways near the middle.
  const sections = [6, 5, 2, 2, 2, 5].map((traffic) => ({ traffic }));
  const joints = [link(0, 1), link(1, 2), link(1, 3), link(1, 4), link(2, 5), link(3, 5), link(4, 5)];

  test('the choice goes from the fewest gaps to the most even use, and none is worse in both', () => {
    const choice = divisionChoice({ sections, joints, stages: alike(2) });
    if (choice.kind !== 'choice') throw new Error(choice.kind);
    const told = choice.ways.map(({ division: { cost, busiest } }) => [cost, Number(busiest.toFixed(3))]);
    expect(told).toEqual([
      [1, 1.455],
      [3, 1],
    ]);
  });

  test('is no choice where the more even way costs more than four times a fair one, or than four gaps on plain track', () => {
    const costs = (plain: number, awkward: number, fair = 4) => {
      const row = [fair, 5 - fair, 5].map((traffic) => ({ traffic }));
      const choice = divisionChoice({
        sections: row,
        joints: [link(0, 1, plain), link(1, 2, awkward)],
        stages: alike(2),
      });
      return choice.kind === 'choice' ? choice.ways.map(({ division: { cost } }) => cost) : [];
    };
    expect(costs(1, 4)).toEqual([1, 4]);
    expect(costs(1, 4.1)).toEqual([1]);
    expect(costs(2, 8)).toEqual([2, 8]);
    expect(costs(2, 8.1)).toEqual([2]);
    expect(costs(0.5, 4)).toEqual([0.5, 4]);
    // A poor one is no measure: somebody may have to have the even one.
    expect(costs(1, 9, 1.5)).toEqual([1, 9]);
  });
});

test('there are five ways at most to choose from, though more even ones would be left', () => {
  // A row of forty; the nearer a gap lies to its middle, the more it costs. Of two stages each is worth having from a tenth of the traffic on.
  const joints = Array.from({ length: 39 }, (_, at) => link(at, at + 1, 1 + 0.02 * Math.min(at, 38 - at)));
  const choice = divisionChoice({ sections: ring(40).sections, joints, stages: alike(2) });
  const busiest = choice.kind === 'choice' ? choice.ways.map(({ division: one }) => Math.round(one.busiest * 20)) : [];
  // Of forty the busier district has 36, then 30 (a third of what lies above 20 less, 30.7), 26 (26.7), 24 and 22 (22.7).
  expect(busiest).toEqual([36, 30, 26, 24, 22]);
});

test('where nothing can be divided there is nothing to choose from, and it says why', () => {
  expect(divisionChoice({ ...ring(6), stages: alike(2, 0.4) })).toMatchObject({
    kind: 'impossible',
    because: [{ kind: 'too-much' }],
  });
});

test('each further way is worth its gaps: nearer to even use by a third of what the one before lacks, and by a fiftieth at least', () => {
  let further = 0;
  for (let seed = 1; seed <= 20; seed++) {
    const choice = divisionChoice({ ...layout(12, 16, seed), stages: alike(2) });
    const busiest = choice.kind === 'choice' ? choice.ways.map(({ division: one }) => one.busiest) : [];
    for (const [at, one] of busiest.slice(1).entries()) {
      const before = busiest[at] ?? 0;
      expect(one, `layout ${seed}`).toBeLessThanOrEqual(Math.max(1, before - Math.max(0.02, (before - 1) / 3)) + 0.002);
      further++;
    }
  }
  expect(further).toBeGreaterThan(5);
});

describe('a loop whose gaps are there in any case', () => {
  // A line of four stretches, and a loop at its end.
  const withLoop = (ofLoop: number) => [4, 4, 4, 4, ofLoop].map((traffic) => ({ traffic }));
  const joints = [link(0, 1), link(1, 2), link(2, 3), link(3, 4, 0), link(3, 4, 0)];

  test('with next to no traffic is never all that a stage has: five to one is no good division', () => {
    // common practice, no source
    const choice = divisionChoice({ sections: withLoop(1), joints, stages: alike(2) });
    const told =
      choice.kind === 'choice' ? choice.ways.map(({ division: { cost, evenness } }) => [cost, evenness]) : [];
    expect(told).toEqual([[1, 'good']]);
  });

  test('is one way to divide that costs nothing, and the choice goes on to the even ones', () => {
    const choice = divisionChoice({ sections: withLoop(4), joints, stages: alike(2) });
    const told =
      choice.kind === 'choice' ? choice.ways.map(({ division: { cost, evenness } }) => [cost, evenness]) : [];
    expect(told).toEqual([
      [0, 'poor'],
      [1, 'good'],
    ]);
  });
});

describe('how many districts it takes', () => {
  test('the smallest number of stages that bear it', () => {
    const found = fewestDistricts({ ...ring(9), stages: alike(1, 0.4) }, alike(1, 0.4)[0]);
    expect(found.districts).toBe(3);
    expect(division(found.divided).cuts).toHaveLength(3);
  });

  test('a stage with feeders on the track has its district, even where the first would bear everything', () => {
    const stages = [bearing(1), { ...bearing(1), feeds: [3] }, bearing(1)];
    const found = fewestDistricts({ ...ring(9), stages });
    expect(found.districts).toBe(2);
    expect(division(found.divided).parts[1]).toContain(3);
    expect(fewestDistricts({ ...ring(9), stages: alike(3) }).districts).toBe(1);
  });

  test('each of which has something to carry, where that can be: a loop with hardly any traffic is none', () => {
    const sections = [4, 4, 4, 4, 1].map((traffic) => ({ traffic }));
    const joints = [link(0, 1), link(1, 2), link(2, 3), link(3, 4, 0), link(3, 4, 0)];
    const found = fewestDistricts({ sections, joints, stages: alike(2, 0.95) });
    expect(found.districts).toBe(2);
    const { shares, cost } = division(found.divided);
    expect(Math.min(...shares)).toBeGreaterThan(0.4);
    expect(cost).toBe(1);
  });

  test('no more than there are sections', () => {
    const found = fewestDistricts({ ...ring(3), stages: alike(1, 0.2) }, alike(1, 0.2)[0]);
    expect([found.districts, found.divided.kind]).toEqual([3, 'impossible']);
  });

  test('those that are there and not one more', () => {
    const found = fewestDistricts({ ...ring(9), stages: alike(2, 0.4) });
    expect([found.districts, because(found.divided)]).toEqual([2, ['too-much']]);
  });
});

describe('where there is none it says why', () => {
  const oval = ring(6);

  test('all stages together bear too little, and the most even one is shown', () => {
    const found = divide({ ...oval, stages: alike(2, 0.4) });
    expect(found).toMatchObject({ kind: 'impossible', because: [{ kind: 'too-much', bearable: 4 / 6 }] });
    expect(found.kind === 'impossible' ? found.nearest?.shares : undefined).toEqual([0.5, 0.5]);
  });

  test('one stretch is more than any stage bears', () => {
    const sections = [{ traffic: 9 }, { traffic: 1 }, { traffic: 1 }, { traffic: 1 }];
    expect(divide({ sections, joints: ring(4).joints, stages: alike(2, 0.6) })).toMatchObject({
      because: [{ kind: 'one-section', section: 0 }],
    });
  });

  test('fewer sections than districts; nothing at all', () => {
    expect(because(divide({ ...ring(2), stages: alike(3) }))).toEqual(['few-sections']);
    expect(because(divide({ sections: [], joints: [], stages: alike(1) }))).toEqual(['few-sections']);
  });

  test('stretches that nothing joins, one of each named', () => {
    const sections = Array.from({ length: 4 }, () => ({ traffic: 1 }));
    expect(divide({ sections, joints: [link(0, 1)], stages: alike(2) })).toMatchObject({
      because: [{ kind: 'islands', sections: [0, 2, 3] }],
    });
    expect(division(divide({ sections, joints: [link(0, 1), link(2, 3)], stages: alike(2) })).cuts).toEqual([]);
  });

  test('feeders of two stages on one stretch', () => {
    const stages = alike(2).map((stage) => ({ ...stage, feeds: [3] }));
    expect(divide({ ...oval, stages })).toMatchObject({ because: [{ kind: 'feeds', sections: [3] }] });
  });

  test('joints that may not be cut', () => {
    const joints = oval.joints.map((joint, at) => (at === 0 ? joint : { ...joint, gap: 'kept' as const }));
    const found = divide({ ...oval, joints, stages: alike(2, 0.6) });
    expect(because(found)).toEqual(['kept']);
  });

  test('of joints that may not be cut those are named that a division would cut, beside the gap that is there', () => {
    // A row of four; the first joint is cut already, and dear where it is not. Three districts take one gap more.
    const gaps = ['cut', 'kept', 'kept'] as const;
    const joints = gaps.map((gap, at) => ({ ...link(at, at + 1, gap === 'cut' ? 9 : 1), gap }));
    const sections = [4, 1, 1, 4].map((traffic) => ({ traffic }));
    const found = divide({ sections, joints, stages: alike(3, 0.5) });
    const named = found.kind === 'impossible' ? found.because : [];
    expect(named).toHaveLength(1);
    expect(named[0]).toMatchObject({ kind: 'kept', joints: [expect.any(Number)] });
  });

  test('gaps too near each other, where nothing else can be cut', () => {
    const joints = oval.joints.map((joint, at) => (at < 2 ? joint : { ...joint, gap: 'kept' as const }));
    expect(because(divide({ ...oval, joints, stages: alike(2), conflicts: [[0, 1]] }))).toContain('near');
  });

  test('a balance that no division has, with the best there is', () => {
    const sections = [5, 1, 1, 1].map((traffic) => ({ traffic }));
    const found = divide({ sections, joints: ring(4).joints, stages: alike(2) }, { tolerance: 0.05 });
    expect(because(found)).toEqual(['tolerance']);
    expect(found.kind === 'impossible' ? found.nearest?.shares.toSorted() : undefined).toEqual([0.375, 0.625]);
  });

  test('feeds that give a stage more than it bears, and no more where they do not', () => {
    const line = (of: readonly number[]) => ({
      sections: [5, 5, 1, 1].map((traffic) => ({ traffic })),
      joints: [link(0, 1), link(1, 2), link(2, 3)],
      stages: [{ ...bearing(0.6), feeds: of }, bearing(0.6)],
    });
    expect(divide(line([0, 1]))).toMatchObject({ kind: 'impossible', because: [{ kind: 'feeds', sections: [0, 1] }] });
    expect(division(divide(line([0]))).parts).toEqual([[0], [1, 2, 3]]);
  });

  test('feeds of two stages on stretches that no gap may part: those with feeds are named, not what lies between', () => {
    const kept = (a: number, b: number) => ({ ...link(a, b), gap: 'kept' as const });
    const fed = (one: number, other: number) =>
      divide({
        sections: ring(5).sections,
        joints: [link(0, 1), kept(1, 2), kept(2, 3), link(3, 4)],
        stages: [one, other].map((at) => ({ ...bearing(0.8), feeds: [at] })),
      });
    expect(fed(1, 3)).toMatchObject({ because: [{ kind: 'feeds', sections: [1, 3] }] });
    expect(division(fed(0, 2)).parts).toEqual([[0], [1, 2, 3, 4]]);
  });

  test('two gaps that are there in any case and lie too near each other, though a third pair does not', () => {
    const gaps = ['cut', 'free', 'cut', 'free'] as const;
    const joints = ring(4).joints.map((joint, at) => ({ ...joint, gap: gaps[at] ?? 'free' }));
    const conflicts = [
      [0, 1],
      [0, 2],
    ] as const;
    expect(divide({ ...ring(4), joints, stages: alike(2), conflicts })).toMatchObject({
      because: [{ kind: 'near', joints: [0, 2] }],
    });
  });

  test('gaps too near each other are named where a division makes both, others are not', () => {
    const row = { sections: ring(3).sections, joints: [link(0, 1), link(1, 2)] };
    const conflicts = [[0, 1]] as const;
    expect(divide({ ...row, stages: alike(3), conflicts })).toMatchObject({
      because: [{ kind: 'near', joints: [0, 1] }],
    });
    const longer = { sections: ring(4).sections, joints: [...row.joints, { ...link(2, 3), gap: 'kept' as const }] };
    const found = divide({ ...longer, stages: alike(3), conflicts: [...conflicts, [1, 2]] });
    expect(found).toMatchObject({ because: expect.arrayContaining([{ kind: 'near', joints: [0, 1] }]) });
  });

  test('a use that no division is without', () => {
    expect(because(divide({ ...oval, stages: alike(2) }, { fullest: 0.4 }))).toEqual(['tolerance']);
    expect(division(divide({ ...oval, stages: alike(2) }, { fullest: 0.5 })).shares).toEqual([0.5, 0.5]);
  });

  test('one stretch that the weaker of two stages does not bear is no reason: the stronger one has it', () => {
    const row = { sections: [{ traffic: 4 }, { traffic: 1 }], joints: [link(0, 1)] };
    for (const stages of [
      [bearing(0.8), bearing(0.2)],
      [bearing(0.2), bearing(0.8)],
    ])
      expect(division(divide({ ...row, stages })).cuts).toEqual([0]);
  });

  test('just what the stages bear is not too much, of all nor of one stretch', () => {
    const two = { sections: [{ traffic: 1 }, { traffic: 1 }], joints: [link(0, 1)] };
    expect(division(divide({ ...two, stages: alike(2, 0.5) })).busiest).toBe(1);
    expect(because(divide({ ...two, stages: [bearing(0.4), bearing(0.5)] }))).toContain('too-much');
  });

  test('stages that bear nothing at all have no most even division either', () => {
    const found = divide({ ...oval, stages: [{ bears: () => false }, { bears: () => false }] });
    expect(because(found)).toContain('too-much');
    expect(found.kind === 'impossible' ? found.nearest : found.kind).toBeUndefined();
  });

  test.each([
    ['no stage', { ...oval, stages: [] }],
    ['a joint to nowhere', { ...oval, joints: [link(0, 77)], stages: alike(2) }],
    ['traffic that is no number', { ...oval, sections: [{ traffic: Number.NaN }], stages: alike(1) }],
    ['more stages than are divided', { ...ring(20), stages: alike(MOST_DIVIDED.stages + 1) }],
  ])('%s is refused', (_, problem) => {
    expect(() => divide(problem)).toThrow(RangeError);
  });
});

describe('a layout too large to be looked through', () => {
  test('gives what it found, and says what no division costs less than', () => {
    const whole = wholeOf({ ...grid(6), stages: alike(4) }, { tolerance: 0 });
    const dividing = deepen(whole, { mostStates: 300 });
    let turn = dividing.next();
    while (turn.done !== true) turn = dividing.next();
    expect(turn.value.proven).toBe(false);
    expect(turn.value.atLeast).toBeLessThanOrEqual(12);
  });

  test('is given up after so many states, and what no division costs less than is told of what was looked at', () => {
    const dividing = (mostWork: number) => {
      const working = deepen(wholeOf({ ...grid(4), stages: alike(4) }, { tolerance: 0 }), { mostWork });
      let turn = working.next();
      while (turn.done !== true) turn = working.next();
      return turn.value;
    };
    const [soon, whole] = [dividing(1), dividing(1e9)];
    expect(soon).toMatchObject({ proven: false });
    expect(soon.kept).toBeUndefined();
    expect(whole.proven).toBe(true);
    expect(whole.kept).toBeDefined();
    expect(soon.atLeast).toBeGreaterThan(0);
  });

  test('is told as found and no more where room was short, or as not found where time was: with what none costs less than', () => {
    const problem = { ...grid(4), stages: alike(4) };
    const whole = wholeOf(problem, { tolerance: 0 });
    const sought = (limits: { readonly mostWork?: number; readonly mostStates?: number }) =>
      atOnce(new Search(problem, whole, { order: orderOf(whole), ...limits }).run());
    const best = division(divide(problem, { tolerance: 0 })).cost;
    const soon = sought({ mostWork: 1 });
    expect(soon.kind).toBe('not-found');
    const cramped = sought({ mostStates: 20 });
    const proof = cramped.kind === 'divided' ? cramped.proof : undefined;
    expect(proof?.kind).toBe('found');
    for (const atLeast of [soon.kind === 'not-found' ? soon.atLeast : 0, proof?.kind === 'found' ? proof.atLeast : 0]) {
      expect(atLeast).toBeGreaterThan(0);
      expect(atLeast).toBeLessThanOrEqual(best);
    }
  });

  test('is told in what gaps cost: twice as awkward ones, and none costs less than twice as much', () => {
    const bound = (awkward: number): number => {
      const { sections, joints } = grid(4);
      const problem = { sections, joints: joints.map((one) => ({ ...one, cost: awkward })), stages: alike(4) };
      const whole = wholeOf(problem, { tolerance: 0 });
      const found = atOnce(new Search(problem, whole, { order: orderOf(whole), mostStates: 20 }).run());
      return found.kind === 'divided' && found.proof.kind === 'found' ? found.proof.atLeast : 0;
    };
    expect(bound(1)).toBeGreaterThan(1);
    expect(bound(2)).toBe(2 * bound(1));
    expect(bound(1.5)).toBe(1.5 * bound(1));
  });

  test('tells how far it is, and can be stopped', () => {
    const seen: number[] = [];
    const dividing = divideInParts({ ...layout(60, 88, 3), stages: alike(4) }, { tolerance: 0.03 });
    for (let turn = dividing.next(); turn.done !== true && seen.length < 5; turn = dividing.next()) {
      expect(turn.value.done).toBeGreaterThanOrEqual(0);
      expect(turn.value.done).toBeLessThanOrEqual(1);
      seen.push(turn.value.cost);
    }
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
    expect(seen).toHaveLength(5);
  });
});
